package paperbark.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Takes entries out of a ledger as they are, and puts them into another. */
final class Records {
    private static final String ENTRY =
            "SELECT seq, kind, name, source_name, source_sha256, day, at, program, detail_sha256,"
                    + " rows_sha256 FROM entry WHERE ";

    private final Sql sql;
    private final int schema;

    Records(Sql sql) {
        this(sql, Schema.VERSION);
    }

    /** For a ledger of an older schema. */
    Records(Sql sql, int schema) {
        this.sql = sql;
        this.schema = schema;
    }

    int schema() {
        return schema;
    }

    LedgerId office() {
        return sql.first(
                        "SELECT id, made_at FROM office",
                        r -> new LedgerId(r.getString(1), r.getString(2)))
                .orElseThrow(() -> sql.changed("office"));
    }

    List<EntryRecord> all() {
        return sql.list(ENTRY + "? > 0 ORDER BY seq", this::record, 1);
    }

    List<EntryRecord> allBut(String kind) {
        return sql.list(ENTRY + "kind <> ? ORDER BY seq", this::record, kind);
    }

    Optional<EntryRecord> one(long seq) {
        return sql.first(ENTRY + "seq = ?", this::record, seq);
    }

    Optional<EntryRecord> named(String name) {
        return sql.first(ENTRY + "name = ?", this::record, name);
    }

    EntryRecord newest() {
        return one(sql.number("SELECT max(seq) FROM entry")).orElseThrow();
    }

    /** The seal of an entry; before the first one it is the office's own. */
    String seal(long seq) {
        return sql.first("SELECT chain_sha256 FROM entry WHERE seq = ?", r -> r.getString(1), seq)
                .orElseGet(() -> Seals.beginning(office()));
    }

    private EntryRecord record(ResultSet r) throws SQLException {
        long seq = r.getLong(1);
        return new EntryRecord(
                schema,
                seq,
                r.getString(2),
                r.getString(3),
                r.getString(4),
                r.getString(5),
                r.getString(6),
                r.getString(7),
                r.getString(8),
                r.getString(9),
                seal(seq - 1),
                r.getString(10),
                rows(seq));
    }

    private Map<String, List<List<String>>> rows(long seq) {
        Map<String, List<List<String>>> rows = new HashMap<>();
        for (SealedTable table : SealedTable.of(schema)) {
            rows.put(
                    table.name(),
                    sql.list(
                            table.query(),
                            r -> {
                                List<String> cells = new ArrayList<>();
                                for (int i = 1; i <= table.columns().size(); i++) {
                                    cells.add(r.getString(i));
                                }
                                return List.copyOf(cells);
                            },
                            seq));
        }
        return rows;
    }

    /**
     * Puts entries into a ledger that has none. Those of an older schema are lifted.
     *
     * @param entries from the first to the last
     * @throws LedgerException when one does not belong there
     */
    void addAll(List<EntryRecord> entries) {
        String seal = Seals.beginning(office());
        int before = 0;
        for (EntryRecord entry : entries) {
            // Seals of an older schema follow each other only as long as nothing newer is between.
            boolean follows =
                    before != 0 && before != entry.schema() || entry.before().equals(seal);
            if (entry.schema() < schema
                    && !(follows && Seals.rows(entry).equals(entry.rowsSha256()))) {
                throw misfit(entry);
            }
            add(entry);
            before = entry.schema();
            seal = Seals.of(entry);
        }
    }

    private void add(EntryRecord told) {
        EntryRecord entry = Lift.of(told);
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
        new Progress(sql).begin(entry);
        // What the entry withdraws goes first: a serial is active once at any moment.
        Set<String> withdrawn =
                entry.rows().get("withdrawal").stream()
                        .map(row -> row.get(0))
                        .collect(Collectors.toSet());
        withdrawn.forEach(this::withdraw);
        SealedTable.of(schema).forEach(table -> insert(entry, table, withdrawn));
        new Forgetting(sql).empty();
        new Chain(sql).seal(entry.seq());
        if (told.schema() == schema && !newest().addsTheSame(told)) {
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
        for (List<String> row : entry.rows(table)) {
            List<Object> values = new ArrayList<>(List.of(entry.seq()));
            values.addAll(row);
            if (table.canBeWithdrawn()) {
                values.add(withdrawn.contains(row.get(0)) ? 0 : 1);
            }
            sql.run(table.insert(), values.toArray());
        }
    }

    private void withdraw(String claim) {
        sql.run("UPDATE claim SET active = 0 WHERE id = ?", claim);
        sql.run("UPDATE serial SET active = 0 WHERE claim = ?", claim);
    }
}
