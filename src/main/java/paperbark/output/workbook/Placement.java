package paperbark.output.workbook;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.formula.SheetNameFormatter;
import org.apache.poi.ss.util.CellReference;
import paperbark.output.table.Table;

/**
 * Where a table lies; rows count from 0.
 *
 * @param sheet the sheet's name
 * @param table the table
 * @param titleRow row of its title; notes follow
 */
record Placement(String sheet, Table table, int titleRow) {
    private static final Pattern NAMED = Pattern.compile("\\[(?:([A-Za-z]+):|(#))?([a-z-]+)]");

    /** The places of tables that lie one below the other, each sheet from the top. */
    static Map<String, Placement> of(Map<String, List<Table>> sheets) {
        Map<String, Placement> places = new LinkedHashMap<>();
        sheets.forEach(
                (sheet, tables) -> {
                    int row = 0;
                    for (Table table : tables) {
                        Placement place = new Placement(sheet, table, row);
                        places.put(table.name(), place);
                        row = place.afterRow() + 1;
                    }
                });
        return places;
    }

    int headingRow() {
        return titleRow + 1 + table.notes().size();
    }

    int firstRow() {
        return headingRow() + 1;
    }

    /** The last row of values; an empty table keeps one blank row so that its ranges exist. */
    int lastRow() {
        return headingRow() + Math.max(1, table.rows().size());
    }

    int afterRow() {
        return lastRow() + table.footers().size() + 1;
    }

    /** The formula with names turned into cells, as it stands in a row of this table. */
    String resolve(String formula, int row, Map<String, Placement> places) {
        Matcher named = NAMED.matcher(formula);
        StringBuilder out = new StringBuilder();
        while (named.find()) {
            named.appendReplacement(out, Matcher.quoteReplacement(cells(named, row, places)));
        }
        return named.appendTail(out).toString();
    }

    private String cells(Matcher named, int row, Map<String, Placement> places) {
        String key = named.group(3);
        if (named.group(1) != null) {
            return places.get(named.group(1)).range(key, sheet);
        }
        return named.group(2) != null
                ? address(table.column(key), headingRow(), true)
                : address(table.column(key), row, false);
    }

    private String range(String key, String fromSheet) {
        int column = table.column(key);
        String cells = address(column, firstRow(), true) + ":" + address(column, lastRow(), true);
        return sheet.equals(fromSheet) ? cells : SheetNameFormatter.format(sheet) + "!" + cells;
    }

    private static String address(int column, int row, boolean fixed) {
        return new CellReference(row, column, fixed, fixed).formatAsString();
    }
}
