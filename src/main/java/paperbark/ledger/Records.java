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

    /** So many entries are read at once: each question to a server takes its time to travel. */
    static final int AT_ONCE = 50;

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
        return entries("? > 0 ORDER BY seq", 1);
    }

    List<EntryRecord> allBut(String kind) {
        return entries("kind <> ? ORDER BY seq", kind);
    }

    List<EntryRecord> between(long first, long last) {
        return entries("seq BETWEEN ? AND ? ORDER BY seq", first, last);
    }

    Optional<EntryRecord> one(long seq) {
        return entries("seq = ?", seq).stream().findFirst();
    }

    Optional<EntryRecord> named(String name) {
        return entries("name = ?", name).stream().findFirst();
    }

    /**
     * Holds an entry that lies elsewhere too against the one here; its rows were proved by then.
     */
    Ledger.Knows knows(EntryRecord told) {
        String here = seals(told.seq(), told.seq()).getOrDefault(told.seq(), "");
        if (here.isEmpty()) {
            return Ledger.Knows.NOTHING;
        }
        boolean same =
                told.schema() == schema
                        ? Seals.rows(told).equals(told.rowsSha256()) && Seals.of(told).equals(here)
                        : one(told.seq()).orElseThrow().merged(told).isPresent();
        return same ? Ledger.Knows.SAME : Ledger.Knows.OTHERWISE;
    }

    EntryRecord newest() {
        return one(sql.number("SELECT max(seq) FROM entry")).orElseThrow();
    }

    /** The seals of entries by their numbers; before the first one it is the office's own. */
    Map<Long, String> seals(long first, long last) {
        Map<Long, String> seals = new HashMap<>();
        if (first == 0) {
            seals.put(0L, Seals.beginning(office()));
        }
        sql.list(
                "SELECT seq, chain_sha256 FROM entry WHERE seq BETWEEN ? AND ?",
                r -> seals.put(r.getLong(1), r.getString(2)),
                first,
                last);
        return seals;
    }

    private List<EntryRecord> entries(String condition, Object... parameters) {
        List<EntryRecord> heads = sql.list(ENTRY + condition, this::head, parameters);
        List<EntryRecord> all = new ArrayList<>();
        for (int from = 0; from < heads.size(); from += AT_ONCE) {
            all.addAll(whole(heads.subList(from, Math.min(from + AT_ONCE, heads.size()))));
        }
        return all;
    }

    private EntryRecord head(ResultSet r) throws SQLException {
        return new EntryRecord(
                schema,
                r.getLong(1),
                r.getString(2),
                r.getString(3),
                r.getString(4),
                r.getString(5),
                r.getString(6),
                r.getString(7),
                r.getString(8),
                r.getString(9),
                "",
                r.getString(10),
                Map.of());
    }

    private List<EntryRecord> whole(List<EntryRecord> heads) {
        Object[] numbers = heads.stream().map(EntryRecord::seq).toArray();
        Map<Long, Map<String, List<List<String>>>> rows = new HashMap<>();
        heads.forEach(head -> rows.put(head.seq(), new HashMap<>()));
        for (SealedTable table : SealedTable.of(schema)) {
            rows.values().forEach(tables -> tables.put(table.name(), new ArrayList<>()));
            sql.list(
                    table.query(numbers.length),
                    r ->
                            rows.get(r.getLong(1))
                                    .get(table.name())
                                    .add(cells(r, 2, table.columns().size())),
                    numbers);
        }
        Map<Long, String> seals =
                seals(heads.get(0).seq() - 1, heads.get(heads.size() - 1).seq() - 1);
        return heads.stream()
                .map(
                        head ->
                                EntryRecordBuilder.builder(head)
                                        .schema(schema)
                                        .before(seals.getOrDefault(head.seq() - 1, ""))
                                        .rows(rows.get(head.seq()))
                                        .build())
                .toList();
    }

    /** So many cells of a row from a certain one on, as text. */
    static List<String> cells(ResultSet row, int first, int howMany) throws SQLException {
        List<String> cells = new ArrayList<>();
        for (int i = first; i < first + howMany; i++) {
            cells.add(row.getString(i));
        }
        return List.copyOf(cells);
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
        SealedTable.of(schema).forEach(table -> insert(entry, table, withdrawn));
        if (!entry.rows().get("forgotten").isEmpty()) {
            new Forgetting(sql).empty();
        }
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
