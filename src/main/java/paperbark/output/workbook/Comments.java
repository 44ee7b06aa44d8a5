package paperbark.output.workbook;

import java.util.List;
import java.util.Locale;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.util.Units;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFComment;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTRst;
import paperbark.finding.Finding;
import paperbark.finding.Severity;

/** Writes comments whose box is as large as their text; what somebody else wrote is kept. */
final class Comments {
    private static final String AUTHOR = "Paperbark";
    private static final int WIDTH_PIXELS = 320;
    private static final int CHARACTERS_A_LINE = 46;
    private static final int PIXELS_A_LINE = 17;
    private static final int MARGIN_PIXELS = 14;
    private static final int LAST_COLUMN = 16383;
    private static final int LAST_ROW = 1048575;
    // Below hidden rows, or rows of next to no height, a box would reach down the whole sheet.
    private static final int MOST_ROWS = 200;
    // What spreadsheet programs take where the sheet does not say.
    private static final float USUAL_HEIGHT_POINTS = 15;

    private final XSSFWorkbook workbook;
    private final XSSFFont plain;
    private final XSSFFont bold;

    Comments(XSSFWorkbook workbook) {
        this.workbook = workbook;
        this.plain = font(false);
        this.bold = font(true);
    }

    private XSSFFont font(boolean heavy) {
        XSSFFont font = workbook.createFont();
        font.setFontName("Arial");
        font.setFontHeightInPoints((short) 9);
        font.setBold(heavy);
        return font;
    }

    void add(XSSFSheet sheet, CellAddress address, List<Finding> findings) {
        XSSFComment earlier = sheet.getCellComment(address);
        XSSFRichTextString text = new XSSFRichTextString();
        String author = AUTHOR;
        boolean shown = false;
        if (earlier != null) {
            author = earlier.getAuthor();
            shown = earlier.isVisible();
            text = new XSSFRichTextString((CTRst) earlier.getString().getCTRst().copy());
            text.append("\n\n" + AUTHOR + ":\n", bold);
            // Its box cannot grow, so a larger one takes its place.
            sheet.getRow(address.getRow()).getCell(address.getColumn()).removeCellComment();
        }
        for (int i = 0; i < findings.size(); i++) {
            append(text, findings.get(i), i > 0);
        }
        Comment comment =
                sheet.createDrawingPatriarch()
                        .createCellComment(box(sheet, address, text.getString()));
        comment.setString(text);
        comment.setAuthor(author);
        comment.setVisible(shown);
        comment.setAddress(address);
    }

    private void append(XSSFRichTextString text, Finding finding, boolean further) {
        text.append(
                (further ? "\n\n" : "") + word(finding.severity()) + ": " + finding.code().code(),
                bold);
        text.append("\n" + Texts.stored(finding.fact()), plain);
        if (!finding.remedy().isEmpty()) {
            text.append("\nDo: ", bold);
            text.append(Texts.stored(finding.remedy()), plain);
        }
    }

    private static String word(Severity severity) {
        String word = severity.word();
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }

    /**
     * A box to the right of its cell. It is anchored at the cell itself, because the library takes
     * the anchor's cell for the comment's own at first, and a neighbour may have a comment already.
     */
    private static XSSFClientAnchor box(XSSFSheet sheet, CellAddress address, String text) {
        int fromColumn = address.getColumn();
        int fromRow = address.getRow();
        int across = width(sheet, fromColumn);
        int right = across + WIDTH_PIXELS;
        int column = fromColumn;
        while (column < LAST_COLUMN && right > width(sheet, column)) {
            right -= width(sheet, column++);
        }
        int down = Wrapping.lines(text, CHARACTERS_A_LINE) * PIXELS_A_LINE + MARGIN_PIXELS;
        int row = fromRow;
        int lowest = Math.min(LAST_ROW, fromRow + MOST_ROWS);
        while (row < lowest && down > height(sheet, row)) {
            down -= height(sheet, row++);
        }
        return new XSSFClientAnchor(
                across * Units.EMU_PER_PIXEL,
                0,
                right * Units.EMU_PER_PIXEL,
                down * Units.EMU_PER_PIXEL,
                fromColumn,
                fromRow,
                column,
                row);
    }

    private static int width(XSSFSheet sheet, int column) {
        return sheet.isColumnHidden(column) ? 0 : Math.round(sheet.getColumnWidthInPixels(column));
    }

    private static int height(XSSFSheet sheet, int index) {
        XSSFRow row = sheet.getRow(index);
        if (row != null && row.getZeroHeight()) {
            return 0;
        }
        float points = row == null ? sheet.getDefaultRowHeightInPoints() : row.getHeightInPoints();
        return Units.pointsToPixel(points > 0 ? points : USUAL_HEIGHT_POINTS);
    }
}
