package paperbark.batch;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.firm.ColumnGuide;
import paperbark.firm.TableGuide;
import paperbark.firm.TableRows;
import paperbark.job.Job;
import paperbark.output.workbook.TablesWorkbook;

/**
 * Names that a register has and the firm's tables lack, as after a firm's first list: told once,
 * and collected on sheets that can be completed and added to the tables.
 *
 * @param byTable by table, then by name with its rows in the register
 */
public record NamesToAdd(Map<String, Map<Named, Set<Integer>>> byTable) {
    /** The workbook's name. */
    public static final String NAME = "names-to-add.xlsx";

    /** Fewer names are told one by one: they are rather slips. */
    private static final int FEWEST = 4;

    private static final Map<FindingCode, String> TABLES =
            Map.of(
                    FindingCode.MAKER_UNKNOWN,
                    "makers",
                    FindingCode.MODEL_UNKNOWN,
                    "products",
                    FindingCode.PERSON_UNKNOWN,
                    "people",
                    FindingCode.SELLER_UNKNOWN,
                    "sellers",
                    FindingCode.BUYER_UNKNOWN,
                    "buyers");

    /**
     * A name.
     *
     * @param name as the register has it
     * @param maker of a model, its maker; else empty
     */
    public record Named(String name, String maker) {}

    /** What the tables lack; empty where that is little. */
    static Optional<NamesToAdd> of(List<Job> jobs, List<Finding> findings) {
        Map<String, Map<Named, Set<Integer>>> all = new LinkedHashMap<>();
        for (String table : List.of("people", "makers", "products", "sellers", "buyers")) {
            all.put(table, new LinkedHashMap<>());
        }
        for (Finding finding : findings) {
            String table = TABLES.getOrDefault(finding.code(), "");
            if (!table.isEmpty() && !table.equals("products")) {
                put(all.get(table), new Named(finding.seen(), ""), finding.place().rowNumber());
            }
        }
        for (Job job : jobs) {
            Optional<String> maker = job.heater().makerName();
            Optional<String> model = job.heater().model();
            if (maker.isPresent() && model.isPresent() && job.heater().product().isEmpty()) {
                put(all.get("products"), new Named(model.get(), maker.get()), job.origin().row());
            }
        }
        all.values().removeIf(Map::isEmpty);
        int names = all.values().stream().mapToInt(Map::size).sum();
        return names < FEWEST ? Optional.empty() : Optional.of(new NamesToAdd(all));
    }

    private static void put(Map<Named, Set<Integer>> names, Named named, int row) {
        Named known =
                names.keySet().stream()
                        .filter(n -> key(n).equals(key(named)))
                        .findFirst()
                        .orElse(named);
        names.computeIfAbsent(known, n -> new TreeSet<>()).add(row);
    }

    private static String key(Named named) {
        return (named.maker() + "|" + named.name())
                .replaceAll("\\s+", " ")
                .toLowerCase(Locale.ROOT);
    }

    /** The one finding that stands for those of each row. */
    Finding finding(String register) {
        String counts =
                byTable.entrySet().stream()
                        .map(e -> e.getKey() + ": " + e.getValue().size())
                        .collect(Collectors.joining(", "));
        return Finding.of(
                FindingCode.NAMES_UNKNOWN,
                new Place.InFile(register),
                "Many names of the register are in none of your tables ("
                        + counts
                        + "); "
                        + NAME
                        + " beside the result has them all with the number of their jobs.",
                "Complete its sheets, and add them with: tables PATH --add "
                        + NAME
                        + ". Until then the jobs are held as each row says.");
    }

    /** The workbook: for each table its lacking names, ready to be completed. */
    byte[] workbook() {
        List<TableRows> tables = new ArrayList<>();
        byTable.forEach(
                (table, names) -> {
                    List<String> headings =
                            new ArrayList<>(
                                    TableGuide.of(table).columns().stream()
                                            .map(ColumnGuide::heading)
                                            .toList());
                    headings.add("note");
                    TableRows rows = new TableRows(table, headings, List.of());
                    for (Map.Entry<Named, Set<Integer>> name : names.entrySet()) {
                        rows = rows.plus(row(table, name.getKey(), name.getValue()));
                    }
                    tables.add(rows);
                });
        return TablesWorkbook.plain(tables, Map.of());
    }

    private static Map<String, String> row(String table, Named named, Set<Integer> rows) {
        Map<String, String> row = new LinkedHashMap<>();
        boolean model = table.equals("products");
        row.put(model ? "model" : TableGuide.of(table).columns().get(0).heading(), named.name());
        if (model) {
            row.put("maker", named.maker());
        }
        int first = rows.iterator().next();
        row.put(
                "note",
                "in "
                        + rows.size()
                        + (rows.size() == 1 ? " row" : " rows")
                        + ", first in row "
                        + first);
        return row;
    }
}
