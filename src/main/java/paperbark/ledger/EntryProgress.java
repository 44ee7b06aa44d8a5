package paperbark.ledger;

import java.util.List;

/** How far entries have come that need something done on the disk once they are in the ledger. */
final class EntryProgress {
    private final Sql sql;

    EntryProgress(Sql sql) {
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
}
