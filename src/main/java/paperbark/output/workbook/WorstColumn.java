package paperbark.output.workbook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToIntFunction;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.formula.SheetNameFormatter;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFHyperlink;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.output.workbook.CellFinder.Spot;
import paperbark.sheet.ColumnMap;

/**
 * A column behind the last one of the register that says of each row what is worst about it, with a
 * link to the line of the list that says more. Behind, and not between: formulas and ranges of the
 * register stay as they are.
 */
final class WorstColumn {
    private static final int WIDTH = 46 * 256;
    private static final int LAST_COLUMN = 16383;

    private final XSSFWorkbook workbook;
    private final Map<Severity, XSSFCellStyle> styles = new HashMap<>();

    WorstColumn(XSSFWorkbook workbook) {
        this.workbook = workbook;
    }

    /**
     * Writes the column on each sheet that has findings about rows.
     *
     * @param byCell the findings by the cell that they mark
     * @param listSheet the sheet of the list
     * @param line the line of the list that a finding stands on, from 1; 0 where it has none
     */
    void write(Map<Spot, List<Finding>> byCell, String listSheet, ToIntFunction<Finding> line) {
        Map<Integer, Map<Integer, List<Finding>>> rows = new TreeMap<>();
        byCell.forEach(
                (spot, findings) ->
                        findings.stream()
                                .filter(f -> f.place().rowNumber() > 0)
                                .forEach(
                                        f ->
                                                rows.computeIfAbsent(
                                                                spot.sheet(), s -> new TreeMap<>())
                                                        .computeIfAbsent(
                                                                spot.address().getRow(),
                                                                r -> new ArrayList<>())
                                                        .add(f)));
        rows.forEach((sheet, own) -> write(workbook.getSheetAt(sheet), own, listSheet, line));
    }

    private void write(
            XSSFSheet sheet,
            Map<Integer, List<Finding>> rows,
            String listSheet,
            ToIntFunction<Finding> line) {
        int column = free(sheet);
        if (column > LAST_COLUMN) {
            return;
        }
        int heading = rows.keySet().iterator().next() - 1;
        for (List<Finding> findings : rows.values()) {
            for (Finding finding : findings) {
                heading = Math.min(heading, CellFinder.headingRow(sheet, finding.place(), heading));
            }
        }
        if (heading >= 0) {
            XSSFRow row = row(sheet, heading);
            XSSFCell cell = row.createCell(column);
            cell.setCellValue(ColumnMap.WORST_FINDING);
            if (column > 0 && row.getCell(column - 1) != null) {
                cell.setCellStyle(row.getCell(column - 1).getCellStyle());
            }
        }
        sheet.setColumnWidth(column, WIDTH);
        rows.forEach((at, findings) -> say(row(sheet, at), column, findings, listSheet, line));
    }

    private void say(
            XSSFRow row,
            int column,
            List<Finding> findings,
            String listSheet,
            ToIntFunction<Finding> line) {
        Finding worst =
                findings.stream().max(Comparator.comparing(Finding::severity)).orElseThrow();
        XSSFCell cell = row.createCell(column);
        String more = findings.size() == 1 ? "" : " (and " + (findings.size() - 1) + " more)";
        cell.setCellValue(Texts.stored(worst.severity().word() + ": " + worst.fact() + more));
        cell.setCellStyle(styles.computeIfAbsent(worst.severity(), this::style));
        int listed = line.applyAsInt(worst);
        if (listed > 0) {
            XSSFHyperlink link =
                    workbook.getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
            link.setAddress(SheetNameFormatter.format(listSheet) + "!A" + listed);
            cell.setHyperlink(link);
        }
    }

    private XSSFCellStyle style(Severity severity) {
        XSSFCellStyle style = workbook.createCellStyle();
        style.setVerticalAlignment(VerticalAlignment.TOP);
        Fill.of(severity).on(style);
        return style;
    }

    private static int free(XSSFSheet sheet) {
        int last = 0;
        for (int r = sheet.getFirstRowNum(); r >= 0 && r <= sheet.getLastRowNum(); r++) {
            XSSFRow row = sheet.getRow(r);
            last = row == null ? last : Math.max(last, row.getLastCellNum());
        }
        return last;
    }

    private static XSSFRow row(XSSFSheet sheet, int index) {
        XSSFRow row = sheet.getRow(index);
        return row == null ? sheet.createRow(index) : row;
    }
}
