package paperbark.ledger;

import java.util.Map;

/**
 * Seals each entry with a digest over all its rows and the seal before it, so that a changed,
 * missing or added row is found. The database's own check finds torn pages, not changed values.
 */
final class Chain {
    private final Sql sql;
    private final Records records;

    Chain(Sql sql) {
        this(sql, new Records(sql));
    }

    /** For a ledger that may be of an older schema. */
    Chain(Sql sql, Records records) {
        this.sql = sql;
        this.records = records;
    }

    /** Seals the newest entry, whose rows are all there. */
    void seal(long seq) {
        EntryRecord entry = records.one(seq).orElseThrow();
        EntryRecord sealed =
                EntryRecordBuilder.builder(entry).rowsSha256(Seals.rows(entry)).build();
        sql.run(
                "UPDATE entry SET rows_sha256 = ?, chain_sha256 = ? WHERE seq = ?",
                sealed.rowsSha256(),
                Seals.of(sealed),
                seq);
    }

    /**
     * Recomputes every seal.
     *
     * @throws LedgerException naming the first entry that is not as it was written
     */
    void verify() {
        long newest = sql.number("SELECT max(seq) FROM entry");
        if (sql.number("SELECT count(*) FROM entry") != newest) {
            throw sql.changed("entry");
        }
        if (sql.number("SELECT count(*) FROM office") != 1) {
            throw sql.changed("office");
        }
        for (long first = 1; first <= newest; first += Records.AT_ONCE) {
            verify(first, Math.min(first + Records.AT_ONCE - 1, newest));
        }
        strays();
        active();
        if (records.schema() > 1) {
            new Forgetting(sql).prove(SealedTable.personal(records.schema()));
        }
    }

    private void verify(long first, long last) {
        Map<Long, String> seals = records.seals(first - 1, last);
        Map<Long, String> rows = records.rowDigests(first, last);
        long expected = first;
        for (EntryRecord head : records.heads(first, last)) {
            EntryRecord entry = head.sealedUpon(seals.getOrDefault(expected - 1, ""));
            if (entry.seq() != expected
                    || !entry.rowsSha256().equals(rows.get(expected))
                    || !Seals.of(entry).equals(seals.get(expected))) {
                throw sql.changed(entry.name());
            }
            expected++;
        }
        if (expected <= last) {
            throw sql.changed("entry " + expected);
        }
    }

    /** Rows that no entry tells of are covered by no seal. */
    private void strays() {
        for (SealedTable table : SealedTable.of(records.schema())) {
            if (sql.number(table.straysQuery()) > 0) {
                throw sql.changed(table.name());
            }
        }
    }

    private void active() {
        long strays =
                sql.number(
                        "SELECT count(*) FROM claim c LEFT JOIN withdrawal w ON w.claim = c.id"
                                + " WHERE (c.active = 1) = (w.claim IS NOT NULL)");
        strays +=
                sql.number(
                        "SELECT count(*) FROM serial s JOIN claim c ON c.id = s.claim"
                                + " WHERE s.active <> c.active");
        strays +=
                sql.number(
                        "SELECT count(*) FROM entry e LEFT JOIN progress p ON p.entry = e.seq"
                                + " WHERE (e.kind = 'batch') = (p.entry IS NULL)");
        if (strays > 0) {
            throw sql.changed("what is active");
        }
    }
}
