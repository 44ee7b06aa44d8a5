package paperbark.ledger;

import java.util.List;

/** How far entries have come that need something done on the disk once they are in the ledger. */
final class Progress {
    private final Sql sql;

    Progress(Sql sql) {
        this.sql = sql;
    }

    /**
     * Where a rebuilt entry is taken to have come: batches lie where people see them, and whatever
     * was to be forgotten is looked for again.
     */
    void begin(EntryRecord entry) {
        if (!entry.kind().equals("advice")) {
            sql.run(
                    "INSERT INTO progress VALUES (?, '', ?, ?)",
                    entry.seq(),
                    entry.kind().equals("batch") ? entry.name() : "",
                    entry.kind().equals("batch") ? "published" : "committed");
        }
    }

    /** Notes how far an entry has come. */
    void note(String name, String state) {
        sql.run(
                "UPDATE progress SET state = ? WHERE entry = (SELECT seq FROM entry WHERE name = ?)",
                state,
                name);
    }

    /** Batches of an output folder that were taken in and may still be hidden there. */
    List<Ledger.Unpublished> unpublished(String place) {
        return sql.list(
                "SELECT e.name, p.staged, e.detail_sha256 FROM progress p JOIN entry e ON e.seq = p.entry"
                        + " WHERE p.state = 'committed' AND e.kind = 'batch' AND p.place IN (?, '')"
                        + " ORDER BY e.seq",
                r -> new Ledger.Unpublished(r.getString(1), r.getString(2), r.getString(3)),
                place);
    }

    /** Notes that the files of an output folder tell nothing more of a forgotten job. */
    void forgotten(String jobKey, String place) {
        sql.run(
                "UPDATE progress SET state = 'filed' WHERE place IN (?, '') AND entry IN"
                        + " (SELECT entry FROM forgotten WHERE job_key = ?)",
                place,
                jobKey);
    }
}
