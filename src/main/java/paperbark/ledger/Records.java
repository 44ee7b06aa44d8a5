package paperbark.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The entries of a ledger as they lie in it: what was entered, in the order of work, and the seals
 * that prove it.
 */
public final class Records {
    private static final String ENTRY =
            "SELECT seq, kind, name, source_name, source_sha256, day, at, program, detail_sha256,"
                    + " rows_sha256 FROM entry WHERE ";

    /** So many entries are read at once: each question to a server takes its time to travel. */
    static final int AT_ONCE = 50;

    private static final int SHOWN = 16;

    /** What the ledger says to an entry that lies elsewhere too. */
    public enum Knows {
        /** It has the same. */
        SAME,
        /** It has another one in its place. */
        OTHERWISE,
        /** It ends before it. */
        NOTHING
    }

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

    /** Everything that was ever entered. */
    public List<EntryRecord> all() {
        return entries("? > 0 ORDER BY seq", 1);
    }

    /** What was entered before a certain entry. */
    public List<EntryRecord> before(long seq) {
        return between(1, seq - 1);
    }

    /** Everything but the batches, which have folders of their own. */
    public List<EntryRecord> withoutFolder() {
        return entries("kind <> 'batch' ORDER BY seq");
    }

    List<EntryRecord> between(long first, long last) {
        return entries("seq BETWEEN ? AND ? ORDER BY seq", first, last);
    }

    /** The same without their rows and what they are sealed upon. */
    List<EntryRecord> heads(long first, long last) {
        return sql.list(ENTRY + "seq BETWEEN ? AND ? ORDER BY seq", this::head, first, last);
    }

    /**
     * The digests over the rows of entries by their numbers, as {@link Seals#rows} makes them of
     * one; none for an entry with a cell that has no value.
     */
    Map<Long, String> rowDigests(long first, long last) {
        Map<Long, RowsDigest> digests = new HashMap<>();
        for (long seq = first; seq <= last; seq++) {
            digests.put(seq, new RowsDigest());
        }
        for (SealedTable table : SealedTable.of(schema)) {
            digests.values().forEach(RowsDigest::table);
            sql.each(table.coveredQuery(), r -> digested(r, digests), first, last);
        }
        Map<Long, String> hex = new HashMap<>();
        digests.forEach((seq, digest) -> hex.put(seq, digest.hex()));
        return hex;
    }

    private static void digested(ResultSet r, Map<Long, RowsDigest> digests) throws SQLException {
        byte[] row = r.getBytes(2);
        RowsDigest digest = digests.get(r.getLong(1));
        if (row == null) {
            digests.remove(r.getLong(1));
        } else if (digest != null) {
            digest.row(row);
        }
    }

    Optional<EntryRecord> one(long seq) {
        return entries("seq = ?", seq).stream().findFirst();
    }

    /** The entry of that name, such as a batch's, as it is now. */
    public Optional<EntryRecord> named(String name) {
        return entries("name = ?", name).stream().findFirst();
    }

    /**
     * Holds an entry that lies elsewhere too against the one here; its rows were proved by then.
     */
    public Knows knows(EntryRecord told) {
        String here = seal(told.seq());
        if (here.isEmpty()) {
            return Knows.NOTHING;
        }
        boolean same =
                told.schema() == schema
                        ? Seals.rows(told).equals(told.rowsSha256()) && Seals.of(told).equals(here)
                        : one(told.seq()).orElseThrow().merged(told).isPresent();
        return same ? Knows.SAME : Knows.OTHERWISE;
    }

    /** Whether everything up to the end of a copy is here as the copy has it. */
    public Knows knows(Records copy) {
        String here = seal(copy.newestSeq());
        if (here.isEmpty()) {
            return Knows.NOTHING;
        }
        return here.equals(copy.end()) ? Knows.SAME : Knows.OTHERWISE;
    }

    /** The seals of all entries by their numbers. */
    public Map<Long, String> seals() {
        return seals(1, Long.MAX_VALUE);
    }

    /** The newest entry's number and the beginning of its seal, for people and paper. */
    public String lastSeal() {
        return "entry "
                + newestSeq()
                + ", seal "
                + end().substring(0, SHOWN).replaceAll("(.{4})(?=.)", "$1 ");
    }

    /** The number of the newest entry; 0 while there is none. */
    public long newestNumber() {
        return newestSeq();
    }

    /** The moment of the newest entry, in UTC; empty while there is none. */
    public Optional<String> newestAt() {
        return sql.first("SELECT at FROM entry ORDER BY seq DESC LIMIT 1", r -> r.getString(1));
    }

    /** The day of the newest entry; empty while there is none. */
    public Optional<LocalDate> newestDay() {
        return sql.first(
                "SELECT day FROM entry ORDER BY seq DESC LIMIT 1",
                r -> LocalDate.parse(r.getString(1)));
    }

    /** The seal of the newest entry; the office's own where there is none. */
    String end() {
        return seal(newestSeq());
    }

    /** The seal that the newest entry is sealed upon. */
    String beforeEnd() {
        return seal(newestSeq() - 1);
    }

    private String seal(long seq) {
        return seals(seq, seq).getOrDefault(seq, "");
    }

    private long newestSeq() {
        return sql.number("SELECT max(seq) FROM entry");
    }

    EntryRecord newest() {
        return one(newestSeq()).orElseThrow();
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
}
