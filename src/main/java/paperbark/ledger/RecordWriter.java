package paperbark.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Puts entries that were taken out of a ledger into another. */
final class RecordWriter {
    private final Sql sql;
    private final Records records;

    RecordWriter(Sql sql) {
        this.sql = sql;
        this.records = new Records(sql);
    }

    /**
     * Puts entries into a ledger that has none. Those of an older schema are lifted.
     *
     * @param entries from the first to the last
     * @throws LedgerException when one does not belong there
     */
    void addAll(List<EntryRecord> entries) {
        String seal = Seals.beginning(records.office());
        int before = 0;
        for (EntryRecord entry : entries) {
            // Seals of an older schema follow each other only as long as nothing newer is between.
            boolean follows =
                    before != 0 && before != entry.schema() || entry.before().equals(seal);
            if (entry.schema() < records.schema()
                    && !(follows && Seals.rows(entry).equals(entry.rowsSha256()))) {
                throw misfit(entry);
            }
            add(entry);
            before = entry.schema();
            seal = Seals.of(entry);
        }
    }

    private void add(EntryRecord told) {
        EntryRecord entry = OlderEntry.lifted(told);
        sql.run(
                "INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, '', '')",
                entry.seq(),
                entry.kind(),
                entry.name(),
                entry.sourceName(),
                entry.sourceSha256(),
                entry.day(),
                entry.at(),
                entry.program(),
                entry.detailSha256());
        new EntryProgress(sql).begin(entry);
        // What the entry withdraws goes first: a serial is active once at any moment.
        Set<String> withdrawn =
                entry.rows().get("withdrawal").stream()
                        .map(row -> row.get(0))
                        .collect(Collectors.toSet());
        withdrawn.forEach(this::withdraw);
        SealedTable.of(records.schema()).forEach(table -> insert(entry, table, withdrawn));
        if (!entry.rows().get("forgotten").isEmpty()) {
            new Forgetting(sql).empty();
        }
        new Chain(sql).seal(entry.seq());
        if (told.schema() == records.schema() && !records.newest().addsTheSame(told)) {
            throw misfit(told);
        }
    }

    private static LedgerException misfit(EntryRecord entry) {
        return new LedgerException(
                "Entry "
                        + entry.seq()
                        + " of the ledger, \""
                        + entry.name()
                        + "\", does not fit behind the one before.",
                "Bring back the published batches and advices as they were.");
    }

    private void insert(EntryRecord entry, SealedTable table, Set<String> withdrawn) {
        List<Object[]> rows = new ArrayList<>();
        for (List<String> row : entry.rows(table)) {
            List<Object> values = new ArrayList<>(List.of(entry.seq()));
            values.addAll(row);
            if (table.canBeWithdrawn()) {
                values.add(withdrawn.contains(row.get(0)) ? 0 : 1);
            }
            rows.add(values.toArray());
        }
        sql.runAll(table.insert(), rows);
    }

    private void withdraw(String claim) {
        sql.run("UPDATE claim SET active = 0 WHERE id = ?", claim);
        sql.run("UPDATE serial SET active = 0 WHERE claim = ?", claim);
    }
}
