package paperbark.ledger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Columns of a table that never change once written, but for those that may be emptied.
 *
 * @param name of the table
 * @param columns the columns, without that of the entry
 * @param open those of them that may be emptied; another column holds their seal
 * @param order columns that the rows of an entry are ordered by
 */
record SealedTable(String name, List<String> columns, List<String> open, String order) {
    private static final String SAID = "\u001f";

    /** What a version of a job tells of a person; the last column is the seal. */
    static final SealedTable PERSONAL = personal("site_key", "print_key", "prints", "salt");

    private static final SealedTable PERSONAL_2 = personal("site_key", "facts", "salt");

    private static final SealedTable SALE =
            of(
                    "sale",
                    "job_key, version, installed_on, price_cents, gst_cents",
                    "job_key, version");
    private static final List<SealedTable> REST =
            List.of(
                    of(
                            "serial",
                            "claim, place, scheme, seen, serial_key, lookalike_key",
                            "claim, place"),
                    of("withdrawal", "claim, reason", "claim"),
                    of("line", "id, line_key, source_row, day, cents, reference", "id"),
                    of(
                            "matched",
                            "line, claim, kind, day, cents, how, reason, buyer_reference",
                            "line, claim"));
    private static final List<SealedTable> SCHEMA_1 =
            before(
                    REST,
                    of(
                            "job",
                            "job_key, version, reference, source_row, outcome, pack, facts",
                            "job_key, version"),
                    SALE,
                    of(
                            "claim",
                            "id, job_key, version, reference, scheme, buyer, certificates, installed_on,"
                                    + " lodge_by, site_key, expected_cents, owner_cents, gst_cents, due",
                            "id"));
    private static final List<SealedTable> SCHEMA_2 = fromSecond(PERSONAL_2, List.of());
    private static final SealedTable WITHDRAWN =
            of("withdrawn", "job_key, version, reason", "job_key, version");
    private static final SealedTable PAPER =
            of("paper", "job_key, version, kind, says", "job_key, version, kind");
    private static final List<SealedTable> SCHEMA_3 =
            fromSecond(PERSONAL, List.of(WITHDRAWN, PAPER));
    private static final List<SealedTable> SCHEMA_4 =
            fromSecond(
                    PERSONAL,
                    List.of(
                            WITHDRAWN,
                            PAPER,
                            of(
                                    "scanned",
                                    "place, job_key, version, kind, page, pages, blank",
                                    "place")));

    private static List<SealedTable> fromSecond(SealedTable personal, List<SealedTable> ofJobs) {
        return before(
                Stream.concat(ofJobs.stream(), REST.stream()).toList(),
                of(
                        "job",
                        "job_key, version, reference, source_row, outcome, pack, installed_on,"
                                + " warranty_until",
                        "job_key, version"),
                personal,
                of("forgotten", "job_key, version", "job_key, version"),
                SALE,
                of(
                        "claim",
                        "id, job_key, version, reference, scheme, buyer, certificates, installed_on,"
                                + " lodge_by, expected_cents, owner_cents, gst_cents, due",
                        "id"));
    }

    private static SealedTable personal(String... open) {
        List<String> columns = new ArrayList<>(List.of("job_key", "version"));
        columns.addAll(List.of(open));
        columns.add("seal");
        return new SealedTable("personal", columns, List.of(open), "job_key, version");
    }

    /** What a version of a job tells of a person, by the schema, from the second on. */
    static SealedTable personal(int schema) {
        return schema == 2 ? PERSONAL_2 : PERSONAL;
    }

    /**
     * Everything of an entry that never changes; each table after those that it refers to.
     *
     * @param schema that of the ledger
     */
    static List<SealedTable> of(int schema) {
        return switch (schema) {
            case 1 -> SCHEMA_1;
            case 2 -> SCHEMA_2;
            case 3 -> SCHEMA_3;
            default -> SCHEMA_4;
        };
    }

    private static SealedTable of(String name, String columns, String order) {
        return new SealedTable(name, List.of(columns.split(", *")), List.of(), order);
    }

    private static List<SealedTable> before(List<SealedTable> rest, SealedTable... first) {
        return Stream.concat(Stream.of(first), rest.stream()).toList();
    }

    /** The place of a column, from 0. */
    int at(String column) {
        return columns.indexOf(column);
    }

    /** The cells of a row that the seal of the entry covers. */
    List<String> covered(List<String> row) {
        if (open.isEmpty()) {
            return row;
        }
        List<String> covered = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            if (!open.contains(columns.get(i))) {
                covered.add(row.get(i));
            }
        }
        return covered;
    }

    /**
     * Asks for what the seals cover of the rows of a range of entries: the entry's number, and the
     * cells as one text.
     */
    String coveredQuery() {
        return "SELECT entry, "
                + Seals.joined(covered(columns))
                + " FROM "
                + name
                + " WHERE entry BETWEEN ? AND ? ORDER BY entry, "
                + order;
    }

    /**
     * A row of which the seal is still to come, with it: the digest that stands in the seal of the
     * entry for what may be emptied. Without the salt, which goes first, nobody can try it out.
     */
    List<String> sealed(List<String> row) {
        List<String> whole = new ArrayList<>(row);
        whole.add(
                DigestUtils.sha256Hex(
                        said().stream()
                                .map(column -> row.get(at(column)))
                                .collect(Collectors.joining(SAID))));
        return whole;
    }

    /** What the seal of a row is made of, in that order. */
    private List<String> said() {
        return Stream.concat(
                        Stream.of("salt"), open.stream().filter(column -> !column.equals("salt")))
                .toList();
    }

    /**
     * Asks for the seals of all rows that are not emptied, each behind what it is made of. A salt
     * without a value is none that was emptied, and the database takes the rule against it for
     * kept.
     */
    String saidQuery() {
        return "SELECT "
                + String.join(" || '" + SAID + "' || ", said())
                + ", seal FROM "
                + name
                + " WHERE CASE WHEN salt = '' THEN 0 ELSE 1 END = 1";
    }

    /** Whether nothing is left in a row but its seal. */
    boolean isEmptied(List<String> row) {
        return open.stream().allMatch(c -> row.get(at(c)).isEmpty());
    }

    /**
     * Asks for the rows of entries, each with the entry's number before it.
     *
     * @param howMany entries
     */
    String query(int howMany) {
        return "SELECT entry, "
                + String.join(", ", columns)
                + " FROM "
                + name
                + " WHERE entry IN ("
                + String.join(", ", Collections.nCopies(howMany, "?"))
                + ") ORDER BY entry, "
                + order;
    }

    /** Counts the rows of entries that are not there. */
    String straysQuery() {
        return "SELECT (SELECT count(*) FROM "
                + name
                + " WHERE entry < 1) + (SELECT count(*) FROM "
                + name
                + " WHERE entry > (SELECT coalesce(max(seq), 0) FROM entry))";
    }

    /** Adds a row: the entry's number, the columns, then whether it is active. */
    String insert() {
        return "INSERT INTO "
                + name
                + " (entry, "
                + String.join(", ", columns)
                + (canBeWithdrawn() ? ", active" : "")
                + ") VALUES (?, "
                + String.join(", ", Collections.nCopies(columns.size(), "?"))
                + (canBeWithdrawn() ? ", ?" : "")
                + ")";
    }

    /** Whether the rows, which begin with the claim, stop being active with it. */
    boolean canBeWithdrawn() {
        return name.equals("claim") || name.equals("serial");
    }
}
