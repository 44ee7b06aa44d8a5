package paperbark.output.workbook;

import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.Hyperlink;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Severity;
import paperbark.output.table.FormulaText;
import paperbark.output.table.Table;
import paperbark.output.table.TableCell;
import paperbark.output.table.TableColumn;
import paperbark.output.table.Value;
import paperbark.output.workbook.Styles.Look;
import paperbark.output.workbook.Styles.Part;

/** Writes tables on a sheet, one below the other. */
final class SheetWriter {
    private static final float POINTS_A_LINE = 13;
    // No row may be higher than this, or a reader could never scroll to its end.
    private static final float HIGHEST = 400;

    private final Workbook workbook;
    private final Styles styles;
    private final Map<String, Placement> places;

    /** A writer on a workbook whose rows leave memory as they are written, from top to bottom. */
    SheetWriter(SXSSFWorkbook workbook, Map<String, Placement> places) {
        this(workbook, workbook.getXSSFWorkbook(), places);
    }

    /** A writer on a workbook held in memory. */
    SheetWriter(XSSFWorkbook workbook, Map<String, Placement> places) {
        this(workbook, workbook, places);
    }

    private SheetWriter(Workbook workbook, XSSFWorkbook styled, Map<String, Placement> places) {
        this.workbook = workbook;
        this.styles = new Styles(styled);
        this.places = places;
    }

    /** Makes the sheet of that name with all tables placed on it. */
    Sheet write(String name) {
        Sheet sheet = workbook.createSheet(name);
        List<Placement> here =
                places.values().stream().filter(p -> p.sheet().equals(name)).toList();
        widths(sheet, here);
        here.forEach(place -> write(sheet, place));
        return sheet;
    }

    private static void widths(Sheet sheet, List<Placement> here) {
        int columns = here.stream().mapToInt(p -> p.table().columns().size()).max().orElse(0);
        for (int i = 0; i < columns; i++) {
            int at = i;
            int width =
                    here.stream()
                            .map(p -> p.table().columns())
                            .filter(c -> c.size() > at)
                            .mapToInt(c -> c.get(at).widthCharacters())
                            .max()
                            .orElse(10);
            sheet.setColumnWidth(i, width * 256);
        }
    }

    private void write(Sheet sheet, Placement place) {
        Table table = place.table();
        Row title = sheet.createRow(place.titleRow());
        text(title, 0, table.title(), Look.of(Part.TITLE));
        title.setHeightInPoints(24);
        notes(sheet, place);
        Row headings = sheet.createRow(place.headingRow());
        for (int i = 0; i < table.columns().size(); i++) {
            TableColumn column = table.columns().get(i);
            Look look = Look.of(Part.HEADING);
            text(headings, i, column.heading(), column.kind().isNumber() ? look.toRight() : look);
        }
        height(headings, table, i -> table.columns().get(i).heading());
        int row = place.firstRow();
        for (List<TableCell> cells : table.rows()) {
            write(sheet.createRow(row++), cells, place, Part.VALUE);
        }
        if (table.rows().isEmpty()) {
            sheet.createRow(row);
        }
        row = place.lastRow() + 1;
        for (List<TableCell> cells : table.footers()) {
            write(sheet.createRow(row++), cells, place, Part.TOTAL);
        }
    }

    private void notes(Sheet sheet, Placement place) {
        Table table = place.table();
        int width = table.columns().stream().mapToInt(TableColumn::widthCharacters).sum();
        int row = place.titleRow() + 1;
        for (String note : table.notes()) {
            Row line = sheet.createRow(row);
            text(line, 0, note, Look.of(Part.NOTE));
            if (table.columns().size() > 1) {
                sheet.addMergedRegion(
                        new CellRangeAddress(row, row, 0, table.columns().size() - 1));
            }
            line.setHeightInPoints(POINTS_A_LINE * Wrapping.lines(note, width) + 4);
            row++;
        }
    }

    private void write(Row row, List<TableCell> cells, Placement place, Part part) {
        for (int i = 0; i < cells.size(); i++) {
            TableCell cell = cells.get(i);
            boolean severity = place.table().columns().get(i).key().equals("severity");
            Look look = Look.of(part, cell.value());
            if (severity && part == Part.VALUE) {
                look = look.filled(fill(cell.value().shown()));
            }
            if (cell.target().isPresent()) {
                look = look.asLink();
            }
            Cell made = put(row, i, cell.value(), look);
            cell.formula().ifPresent(f -> formula(made, f, cell.value(), place));
            cell.target().ifPresent(t -> link(made, t));
        }
        // Only words are wrapped; numbers have room in their column.
        height(
                row,
                place.table(),
                i -> cells.get(i).value() instanceof Value.Text t ? t.text() : "");
    }

    private static void height(Row row, Table table, IntFunction<String> text) {
        int lines = 1;
        for (int i = 0; i < table.columns().size(); i++) {
            // Indents take two characters; most letters are narrower than the digits that count.
            int column = table.columns().get(i).widthCharacters();
            int width = column < 24 ? column - 2 : column - 2 + column / 8;
            lines = Math.max(lines, Wrapping.lines(text.apply(i), width));
        }
        row.setHeightInPoints(Math.min(HIGHEST, POINTS_A_LINE * lines + 3));
    }

    private static Fill fill(String word) {
        for (Severity severity : Severity.values()) {
            if (severity.word().equals(word)) {
                return Fill.of(severity);
            }
        }
        return Fill.NOTE;
    }

    private Cell put(Row row, int column, Value value, Look look) {
        if (value instanceof Value.Text || value instanceof Value.Flag) {
            return text(row, column, value.shown(), look);
        }
        Cell cell = row.createCell(column);
        cell.setCellStyle(styles.of(look));
        if (value instanceof Value.Day day) {
            cell.setCellValue(day.day());
        } else if (!(value instanceof Value.Blank)) {
            cell.setCellValue(value.amount().doubleValue());
        }
        return cell;
    }

    private Cell text(Row row, int column, String text, Look look) {
        Cell cell = row.createCell(column);
        cell.setCellStyle(styles.of(FormulaText.is(text) ? look.asQuoted() : look));
        cell.setCellValue(Texts.stored(text));
        return cell;
    }

    // The formula first: the value that follows is kept beside it as its cached result.
    private void formula(Cell cell, String formula, Value value, Placement place) {
        cell.setCellFormula(place.resolve(formula, cell.getRowIndex(), places));
        cell.setCellValue(
                value instanceof Value.Day day
                        ? DateUtil.getExcelDate(day.day())
                        : value.amount().doubleValue());
    }

    private void link(Cell cell, String target) {
        Hyperlink link = workbook.getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
        link.setAddress(target);
        cell.setHyperlink(link);
    }
}
