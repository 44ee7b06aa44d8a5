package paperbark.output.workbook;

import java.util.EnumMap;
import java.util.Map;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFComment;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.firm.ColumnGuide.Holds;

/** How sheets look that people type into: headings, notes above them, cells ready to be filled. */
final class FormLook {
    private static final byte[] ACCENT = {(byte) 0x1F, (byte) 0x5C, (byte) 0x6B};
    private static final byte[] WHITE = {(byte) 0xFF, (byte) 0xFF, (byte) 0xFF};
    private static final byte[] GREY = {(byte) 0x6B, (byte) 0x75, (byte) 0x78};
    private static final byte[] RULE = {(byte) 0xC4, (byte) 0xCF, (byte) 0xD2};

    private final XSSFWorkbook workbook;
    private final XSSFCellStyle heading;
    private final XSSFCellStyle example;
    private final XSSFCellStyle title;
    private final XSSFCellStyle fixed;
    private final Map<Holds, XSSFCellStyle> open = new EnumMap<>(Holds.class);
    private final Map<Holds, XSSFCellStyle> quoted = new EnumMap<>(Holds.class);

    FormLook(XSSFWorkbook workbook) {
        this.workbook = workbook;
        workbook.getFontAt(0).setFontName("Arial");
        workbook.getFontAt(0).setFontHeightInPoints((short) 10);
        heading = workbook.createCellStyle();
        heading.setFillForegroundColor(new XSSFColor(ACCENT.clone()));
        heading.setFillPattern(FillPatternType.SOLID_FOREGROUND);
        heading.setFont(font(WHITE, true, false, 10));
        heading.setWrapText(true);
        heading.setVerticalAlignment(VerticalAlignment.BOTTOM);
        example = text(font(GREY, false, true, 10), false);
        title = workbook.createCellStyle();
        title.setFont(font(ACCENT, true, false, 14));
        fixed = text(font(GREY, false, false, 10), true);
    }

    private XSSFFont font(byte[] colour, boolean bold, boolean italic, int points) {
        XSSFFont font = workbook.createFont();
        font.setFontName("Arial");
        font.setFontHeightInPoints((short) points);
        font.setBold(bold);
        font.setItalic(italic);
        font.setColor(new XSSFColor(colour.clone()));
        return font;
    }

    private XSSFCellStyle text(XSSFFont font, boolean locked) {
        XSSFCellStyle style = workbook.createCellStyle();
        style.setFont(font);
        style.setDataFormat(workbook.createDataFormat().getFormat("@"));
        style.setLocked(locked);
        style.setWrapText(locked);
        style.setVerticalAlignment(VerticalAlignment.TOP);
        return style;
    }

    /** A heading, which is locked where the sheet is protected. */
    XSSFCellStyle heading() {
        return heading;
    }

    /** A cell of an example row. */
    XSSFCellStyle example() {
        return example;
    }

    /** The title of a sheet. */
    XSSFCellStyle title() {
        return title;
    }

    /** Text that stands there for people and is not theirs to change. */
    XSSFCellStyle fixed() {
        return fixed;
    }

    /** A cell to type into. */
    XSSFCellStyle open(Holds holds) {
        return open.computeIfAbsent(holds, h -> style(h, false));
    }

    /** The same where it holds text that a spreadsheet would run. */
    XSSFCellStyle quoted(Holds holds) {
        return quoted.computeIfAbsent(holds, h -> style(h, true));
    }

    private XSSFCellStyle style(Holds holds, boolean marked) {
        XSSFCellStyle style = workbook.createCellStyle();
        style.setDataFormat(workbook.createDataFormat().getFormat(format(holds)));
        style.setLocked(false);
        style.setQuotePrefixed(marked);
        style.setVerticalAlignment(VerticalAlignment.TOP);
        style.setBorderBottom(BorderStyle.HAIR);
        style.setBottomBorderColor(new XSSFColor(RULE.clone()));
        return style;
    }

    private static String format(Holds holds) {
        return switch (holds) {
            case DAY -> "d mmm yyyy";
            case NUMBER -> "General";
            case MONEY -> "0.00##";
            default -> "@";
        };
    }

    /** A note that shows while the mouse is over a cell. */
    static void note(XSSFSheet sheet, XSSFCell cell, String text) {
        XSSFDrawing drawing = sheet.createDrawingPatriarch();
        int column = cell.getColumnIndex();
        int row = cell.getRowIndex();
        XSSFClientAnchor anchor =
                drawing.createAnchor(0, 0, 0, 0, column + 1, row + 1, column + 4, row + 6);
        XSSFComment comment = drawing.createCellComment(anchor);
        comment.setAddress(new CellAddress(row, column));
        comment.setString(text);
        cell.setCellComment(comment);
    }

    /**
     * Locks the headings; rows can be added, deleted, sorted and filtered all the same, and there
     * is no password.
     */
    static void lock(XSSFSheet sheet) {
        sheet.enableLocking();
        sheet.lockFormatCells(false);
        sheet.lockFormatColumns(false);
        sheet.lockFormatRows(false);
        sheet.lockInsertRows(false);
        sheet.lockDeleteRows(false);
        sheet.lockInsertColumns(false);
        sheet.lockSort(false);
        sheet.lockAutoFilter(false);
        sheet.lockObjects(false);
    }
}
