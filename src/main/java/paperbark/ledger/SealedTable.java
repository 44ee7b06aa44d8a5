package paperbark.ledger;

import java.util.Collections;
import java.util.List;

/**
 * Columns of a table that never change once written.
 *
 * @param name of the table
 * @param columns the columns, without that of the entry
 * @param order columns that the rows of an entry are ordered by
 */
record SealedTable(String name, List<String> columns, String order) {
    /** Everything of an entry that never changes; each table after those that it refers to. */
    static final List<SealedTable> ALL =
            List.of(
                    of(
                            "job",
                            "job_key, version, reference, source_row, outcome, pack, facts",
                            "job_key, version"),
                    of(
                            "sale",
                            "job_key, version, installed_on, price_cents, gst_cents",
                            "job_key, version"),
                    of(
                            "claim",
                            "id, job_key, version, reference, scheme, buyer, certificates, installed_on,"
                                    + " lodge_by, site_key, expected_cents, owner_cents, gst_cents, due",
                            "id"),
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

    private static SealedTable of(String name, String columns, String order) {
        return new SealedTable(name, List.of(columns.split(", *")), order);
    }

    /** Asks for the rows of an entry. */
    String query() {
        return "SELECT "
                + String.join(", ", columns)
                + " FROM "
                + name
                + " WHERE entry = ? ORDER BY "
                + order;
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
