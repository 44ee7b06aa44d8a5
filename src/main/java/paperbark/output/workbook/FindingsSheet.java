package paperbark.output.workbook;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Finding;
import paperbark.output.table.FindingsTable;
import paperbark.output.table.Table;

/** Adds the list of all findings to a workbook, each linked to its cell. */
final class FindingsSheet {
    private FindingsSheet() {}

    static void add(XSSFWorkbook workbook, List<Finding> findings, Spots spots) {
        Table table = FindingsTable.of(findings, finding -> spots.link(finding.place()));
        String name = free(workbook, table.title());
        Map<String, Placement> places = Placement.of(Map.of(name, List.of(table)));
        new SheetWriter(workbook, places).write(name);
        XSSFSheet sheet = workbook.getSheet(name);
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
