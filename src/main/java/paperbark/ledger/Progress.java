package paperbark.ledger;

import java.util.List;

/** How far entries have come that need something done on the disk once they are in the ledger. */
final class Progress {
    private final Sql sql;

    Progress(Sql sql) {
        this.sql = sql;
    }

    /** Batches of a rebuilt ledger lie where people see them. */
    void begin(EntryRecord entry) {
        if (entry.kind().equals("batch")) {
            sql.run(
                    "INSERT INTO progress VALUES (?, '', ?, 'published')",
                    entry.seq(),
                    entry.name());
        }
    }

    /** How far an entry has come, and where the folder of its batch waits. */
    record Came(long seq, String place, String staged, String state) {}

    /**
     * How far every batch has come.
     *
     * @param schema that of the ledger; the first did not know which output folder it was
     */
    List<Came> all(int schema) {
        return sql.list(
                "SELECT entry, "
                        + (schema == 1 ? "''" : "place")
                        + ", staged, state FROM progress ORDER BY entry",
                r -> new Came(r.getLong(1), r.getString(2), r.getString(3), r.getString(4)));
    }

    /** Notes how far batches had come in the ledger that they were taken from. */
    void bringBack(List<Came> came) {
        came.forEach(
                c ->
                        sql.run(
                                "UPDATE progress SET place = ?, staged = ?, state = ? WHERE entry = ?",
                                c.place(),
                                c.staged(),
                                c.state(),
                                c.seq()));
    }

    /** Notes how far an entry has come. */
    void note(String name, String state) {
        sql.run(
                "UPDATE progress SET state = ? WHERE entry = (SELECT seq FROM entry WHERE name = ?)",
                state,
                name);
    }

    /** How far every batch of every output folder has come, oldest first. */
    List<BatchProgress> batches() {
        return sql.list(
                "SELECT e.name, p.place, p.state FROM progress p JOIN entry e ON e.seq = p.entry"
                        + " ORDER BY e.seq",
                r -> new BatchProgress(r.getString(1), r.getString(2), r.getString(3)));
    }

    /** Batches of an output folder that are known to be visible there, oldest first. */
    List<String> published(String place) {
        return sql.list(
                "SELECT e.name FROM progress p JOIN entry e ON e.seq = p.entry"
                        + " WHERE p.state <> 'committed' AND e.kind = 'batch' AND p.place = ?"
                        + " ORDER BY e.seq",
                r -> r.getString(1),
                place);
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
}
