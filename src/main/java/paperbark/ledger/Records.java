package paperbark.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Takes entries out of a ledger as they are, and puts them into another. */
final class Records {
    private static final String ENTRY =
            "SELECT seq, kind, name, source_name, source_sha256, day, at, program, detail_sha256,"
                    + " rows_sha256 FROM entry WHERE ";

    private final Sql sql;

    Records(Sql sql) {
        this.sql = sql;
    }

    LedgerId office() {
        return sql.first(
                        "SELECT id, made_at FROM office",
                        r -> new LedgerId(r.getString(1), r.getString(2)))
                .orElseThrow();
    }

    List<EntryRecord> all() {
        return sql.list(ENTRY + "? > 0 ORDER BY seq", this::record, 1);
    }

    List<EntryRecord> ofKind(String kind) {
        return sql.list(ENTRY + "kind = ? ORDER BY seq", this::record, kind);
    }

    EntryRecord newest() {
        return sql.first(ENTRY + "seq = (SELECT max(seq) FROM entry) AND ? > 0", this::record, 1)
                .orElseThrow();
    }

    private EntryRecord record(ResultSet r) throws SQLException {
        long seq = r.getLong(1);
        return new EntryRecord(
                seq,
                r.getString(2),
                r.getString(3),
                r.getString(4),
                r.getString(5),
                r.getString(6),
                r.getString(7),
                r.getString(8),
                r.getString(9),
                new Chain(sql).before(seq),
                r.getString(10),
                rows(seq));
    }

    private Map<String, List<List<String>>> rows(long seq) {
        Map<String, List<List<String>>> rows = new HashMap<>();
        for (SealedTable table : SealedTable.ALL) {
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
     * Puts an entry behind the others.
     *
     * @throws LedgerException when it does not belong there
     */
    void add(EntryRecord entry) {
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
        if (entry.kind().equals("batch")) {
            sql.run("INSERT INTO progress VALUES (?, ?, 'published')", entry.seq(), entry.name());
        }
        // What the entry withdraws goes first: a serial is active once at any moment.
        Set<String> withdrawn =
                entry.rows().get("withdrawal").stream()
                        .map(row -> row.get(0))
                        .collect(Collectors.toSet());
        withdrawn.forEach(this::withdraw);
        SealedTable.ALL.forEach(table -> insert(entry, table, withdrawn));
        new Chain(sql).seal(entry.seq());
        if (!newest().addsTheSame(entry)) {
            throw new LedgerException(
                    "Entry "
                            + entry.seq()
                            + " of the ledger, \""
                            + entry.name()
                            + "\", does not fit behind the one before.",
                    "Bring back the published batches and advices as they were.");
        }
    }

    private void insert(EntryRecord entry, SealedTable table, Set<String> withdrawn) {
        for (List<String> row : entry.rows().get(table.name())) {
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
