package paperbark.output.workbook;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Row.MissingCellPolicy;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.output.table.FormulaText;
import paperbark.output.workbook.PlainRows.PlainRow;

/**
 * A workbook made of rows of text; each stands in the row, or on the line, that it had. The rows
 * beyond the first thousand leave memory as they are written.
 */
final class PlainBook {
    private static final int NARROWEST = 8;
    private static final int WIDEST = 40;

    /** So many rows are in memory; those beyond are written as a stream. */
    static final int ROWS_IN_MEMORY = 1000;

    private final PlainRows rows;
    private final XSSFWorkbook workbook = FreshBook.make();
    private final XSSFCellStyle plain;
    private final XSSFCellStyle quoted;

    PlainBook(PlainRows rows) {
        this.rows = rows;
        workbook.getFontAt(0).setFontName("Arial");
        workbook.getFontAt(0).setFontHeightInPoints((short) 10);
        XSSFSheet sheet =
                workbook.createSheet(
                        WorkbookUtil.createSafeSheetName(
                                rows.sheet().isEmpty()
                                        ? rows.file().replaceFirst("\\.[^.]*$", "")
                                        : rows.sheet(),
                                '-'));
        plain = style(workbook, false);
        quoted = style(workbook, true);
        for (PlainRow record : first()) {
            write(record, sheet.createRow(record.line() - 1));
        }
        widths(sheet, rows.records());
    }

    private List<PlainRow> first() {
        return rows.records().subList(0, Math.min(ROWS_IN_MEMORY, rows.records().size()));
    }

    private List<PlainRow> rest() {
        return rows.records().subList(first().size(), rows.records().size());
    }

    /** The workbook with its first rows. */
    XSSFWorkbook workbook() {
        return workbook;
    }

    /** Whether there are rows beyond those in memory. */
    boolean hasMore() {
        return !rest().isEmpty();
    }

    /** Whether a row, from 0, is among those beyond. */
    boolean isBeyond(int row) {
        return !rest().isEmpty() && row >= rest().get(0).line() - 1;
    }

    /** The first column of each row beyond, all from 0. */
    Map<Integer, Integer> firstColumns() {
        Map<Integer, Integer> columns = new HashMap<>();
        for (PlainRow record : rest()) {
            int column = 0;
            while (column < record.fields().size() && record.fields().get(column).isEmpty()) {
                column++;
            }
            columns.put(record.line() - 1, column);
        }
        return columns;
    }

    /**
     * Writes the rows beyond.
     *
     * @param fills the colours of marked cells there
     */
    void writeRest(SXSSFSheet sheet, Map<CellAddress, Fill> fills, Marker marker) {
        NavigableMap<Integer, Map<Integer, Fill>> byRow = new TreeMap<>();
        fills.forEach(
                (address, fill) ->
                        byRow.computeIfAbsent(address.getRow(), r -> new TreeMap<>())
                                .put(address.getColumn(), fill));
        Map<Integer, PlainRow> records = new HashMap<>();
        rest().forEach(record -> records.put(record.line() - 1, record));
        SortedSet<Integer> numbers = new TreeSet<>(records.keySet());
        numbers.addAll(byRow.keySet());
        for (int number : numbers) {
            Map<Integer, Fill> marked = byRow.getOrDefault(number, Map.of());
            Row row = sheet.createRow(number);
            write(records.getOrDefault(number, new PlainRow(number + 1, List.of())), row);
            marked.forEach(
                    (column, fill) -> {
                        Cell cell = row.getCell(column, MissingCellPolicy.CREATE_NULL_AS_BLANK);
                        cell.setCellStyle(marker.filled((XSSFCellStyle) cell.getCellStyle(), fill));
                    });
        }
    }

    private void write(PlainRow record, Row row) {
        for (int i = 0; i < record.fields().size(); i++) {
            String field = record.fields().get(i);
            if (!field.isEmpty()) {
                Cell cell = row.createCell(i);
                cell.setCellStyle(FormulaText.is(field) ? quoted : plain);
                cell.setCellValue(Texts.stored(field));
            }
        }
    }

    private static XSSFCellStyle style(XSSFWorkbook workbook, boolean quoted) {
        XSSFCellStyle style = workbook.createCellStyle();
        style.setDataFormat(workbook.createDataFormat().getFormat("@"));
        style.setQuotePrefixed(quoted);
        return style;
    }

    private static void widths(XSSFSheet sheet, List<PlainRow> records) {
        int columns = records.stream().mapToInt(r -> r.fields().size()).max().orElse(0);
        int[] longest = new int[columns];
        for (PlainRow record : records) {
            for (int i = 0; i < record.fields().size(); i++) {
                longest[i] = Math.max(longest[i], record.fields().get(i).length());
            }
        }
        for (int i = 0; i < columns; i++) {
            sheet.setColumnWidth(i, Math.max(NARROWEST, Math.min(WIDEST, longest[i] + 2)) * 256);
        }
    }
}
