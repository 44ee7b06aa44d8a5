package paperbark.output.workbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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

    private FindingsSheet() {}

    /**
     * Adds the list; its rows leave memory as they are written.
     *
     * @param workbook whose other sheets are in memory
     * @param notes sentences to be read before the list
     */
    static void add(
            SXSSFWorkbook workbook, List<Finding> findings, Spots spots, List<String> notes) {
        List<Told> told = Told.of(findings);
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
        XSSFWorkbook base = workbook.getXSSFWorkbook();
        String name = free(base, table.title());
        Map<String, Placement> places = Placement.of(Map.of(name, List.of(table.withNotes(all))));
        new SheetWriter(workbook, places).write(name);
        XSSFSheet sheet = base.getSheet(name);
        SheetSetup.print(sheet, "Findings");
        SheetSetup.headings(sheet, places.get(table.name()), false);
    }

    private static String free(XSSFWorkbook workbook, String wanted) {
        String name = wanted;
        for (int i = 2; workbook.getSheet(name) != null; i++) {
            name = String.format(Locale.ROOT, "%s %d", wanted, i);
        }
        return name;
    }
}
