package paperbark.ledger;

import java.util.ArrayList;
import java.util.List;

/** Everything in a ledger as tables of text, for whoever wants to leave or to look. */
public final class Export {
    private static final List<String> TABLES =
            List.of(
                    "office",
                    "entry",
                    "progress",
                    "job",
                    "personal",
                    "forgotten",
                    "withdrawn",
                    "paper",
                    "scanned",
                    "sale",
                    "claim",
                    "serial",
                    "withdrawal",
                    "line",
                    "matched");

    private Export() {}

    /**
     * One table.
     *
     * @param name of the table
     * @param headings its columns
     * @param rows its rows, money in cents, in the order in which they were written
     */
    public record ExportedTable(String name, List<String> headings, List<List<String>> rows) {}

    /** All tables. */
    public static List<ExportedTable> of(Ledger ledger) {
        return TABLES.stream().map(name -> table(ledger.sql(), name)).toList();
    }

    private static ExportedTable table(Sql sql, String name) {
        List<String> headings = sql.columns(name);
        List<List<String>> rows =
                sql.list(
                        "SELECT * FROM " + name + " ORDER BY 1, 2",
                        r -> {
                            List<String> cells = new ArrayList<>();
                            for (int i = 1; i <= headings.size(); i++) {
                                cells.add(r.getString(i));
                            }
                            return cells;
                        });
        return new ExportedTable(name, headings, rows);
    }
}
