package paperbark.ledger;

import java.util.List;

/**
 * Brings a ledger of an older schema to this program's, whole or not at all: every entry is proved,
 * taken out, and put into the new tables.
 */
final class Migration {
    private final Database database;
    private final Sql sql;
    private final int from;

    Migration(Database database, Sql sql, int from) {
        this.database = database;
        this.sql = sql;
        this.from = from;
    }

    /**
     * Does it, within a transaction that the caller holds.
     *
     * @throws LedgerException when the old ledger is not as it was written
     */
    void run() {
        Records before = new Records(sql, from);
        new Chain(sql, before).verify();
        LedgerId office = before.office();
        List<EntryRecord> entries = before.all();
        List<EntryProgress.Came> came = new EntryProgress(sql).all(from);
        drop();
        database.tables(sql, office);
        new RecordWriter(sql).addAll(entries);
        new EntryProgress(sql).bringBack(came);
        new Chain(sql).verify();
    }

    /** Each table before those that it refers to. */
    private void drop() {
        List<SealedTable> tables = SealedTable.of(from);
        for (int i = tables.size() - 1; i >= 0; i--) {
            sql.run("DROP TABLE " + tables.get(i).name());
        }
        List.of("progress", "entry", "office").forEach(table -> sql.run("DROP TABLE " + table));
    }
}
