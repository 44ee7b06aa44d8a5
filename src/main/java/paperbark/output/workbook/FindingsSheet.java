package paperbark.output.workbook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Finding;
import paperbark.finding.Told;
import paperbark.output.table.FindingsTable;
import paperbark.output.table.Table;

/** Adds the list of all findings to a workbook, one cause a line, each linked to its first cell. */
final class FindingsSheet {
    // Links stay in memory until the end, and spreadsheet programs call a sheet with more than
    // 65,530
    // of them damaged; the cell is named in words as well.
    private static final int MOST_LINKS = 5_000;

    private final List<Told> told;
    private final String name;
    private final Map<String, Placement> places;

    /**
     * The list as it will stand in the workbook.
     *
     * @param notes sentences to be read before the list
     */
    FindingsSheet(
            XSSFWorkbook workbook, List<Finding> findings, CellFinder spots, List<String> notes) {
        told = Told.of(findings);
        Set<Finding> linked =
                told.stream().limit(MOST_LINKS).map(Told::first).collect(Collectors.toSet());
        Table table =
                FindingsTable.told(
                        told,
                        finding ->
                                linked.contains(finding)
                                        ? spots.link(finding.place())
                                        : Optional.empty());
        List<String> all = new ArrayList<>(table.notes());
        all.addAll(notes);
        name = free(workbook, table.title());
        places = Placement.of(Map.of(name, List.of(table.withNotes(all))));
    }

    /** The name of the sheet. */
    String name() {
        return name;
    }

    /** The line of a finding, from 1; 0 for those too far down to be linked. */
    ToIntFunction<Finding> lines() {
        int first = places.values().iterator().next().firstRow() + 1;
        Map<Finding, Integer> lines = new HashMap<>();
        for (int i = 0; i < Math.min(MOST_LINKS, told.size()); i++) {
            int line = first + i;
            told.get(i).all().forEach(f -> lines.putIfAbsent(f, line));
        }
        return finding -> lines.getOrDefault(finding, 0);
    }

    /**
     * Adds the list; its rows leave memory as they are written.
     *
     * @param workbook over the one that the list was laid out for, whose sheets are in memory
     */
    void addTo(SXSSFWorkbook workbook) {
        new SheetWriter(workbook, places).write(name);
        setUp(workbook.getXSSFWorkbook().getSheet(name));
    }

    /** Adds the list to the workbook that it was laid out for; its rows stay in memory. */
    void addTo(XSSFWorkbook workbook) {
        new SheetWriter(workbook, places).write(name);
        setUp(workbook.getSheet(name));
    }

    /** Whether its rows may stay in memory. */
    boolean isShort() {
        return told.size() <= PlainBook.ROWS_IN_MEMORY;
    }

    private void setUp(XSSFSheet sheet) {
        SheetSetup.print(sheet, "Findings");
        SheetSetup.headings(sheet, places.values().iterator().next(), false);
    }

    private static String free(XSSFWorkbook workbook, String wanted) {
        String name = wanted;
        for (int i = 2; workbook.getSheet(name) != null; i++) {
            name = String.format(Locale.ROOT, "%s %d", wanted, i);
        }
        return name;
    }
}
