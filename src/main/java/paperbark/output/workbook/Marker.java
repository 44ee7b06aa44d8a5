package paperbark.output.workbook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTColor;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.output.workbook.CellFinder.Spot;

/**
 * Colours cells by their gravest finding and writes a comment on each, the gravest first while
 * there are not too many; all else stays.
 */
final class Marker {
    // Of 255: lighter letters than this cannot be read on our fills.
    private static final int LIGHT = 150;

    /**
     * Each comment costs some ten kilobytes, and more time the more there are; nobody reads more of
     * them, and the list of findings has them all.
     */
    static final int MOST_COMMENTS = 1000;

    private record Mark(int style, Fill fill) {}

    private record Marked(Spot spot, Severity worst, List<Finding> findings) {}

    private final XSSFWorkbook workbook;
    private final Comments comments;
    private final Map<Mark, XSSFCellStyle> styles = new HashMap<>();

    Marker(XSSFWorkbook workbook) {
        this.workbook = workbook;
        this.comments = new Comments(workbook);
    }

    /**
     * Marks the cells.
     *
     * @param isHere whether a cell is in memory and not written by somebody else, who colours it
     */
    void mark(Map<Spot, List<Finding>> byCell, Predicate<Spot> isHere) {
        List<Marked> all = new ArrayList<>();
        byCell.forEach(
                (spot, findings) -> {
                    Severity worst = worst(findings);
                    if (isHere.test(spot)) {
                        XSSFCell cell = cell(workbook.getSheetAt(spot.sheet()), spot.address());
                        cell.setCellStyle(filled(cell.getCellStyle(), Fill.of(worst)));
                    }
                    all.add(new Marked(spot, worst, findings));
                });
        all.stream()
                .sorted(Comparator.comparing(Marked::worst, Comparator.reverseOrder()))
                .limit(MOST_COMMENTS)
                .forEach(
                        marked ->
                                comments.add(
                                        workbook.getSheetAt(marked.spot().sheet()),
                                        marked.spot().address(),
                                        marked.findings()));
    }

    /** The gravest of them. */
    static Severity worst(List<Finding> findings) {
        return findings.stream()
                .map(Finding::severity)
                .max(Comparator.naturalOrder())
                .orElseThrow();
    }

    private static XSSFCell cell(XSSFSheet sheet, CellAddress address) {
        XSSFRow row = sheet.getRow(address.getRow());
        if (row == null) {
            row = sheet.createRow(address.getRow());
        }
        XSSFCell cell = row.getCell(address.getColumn());
        if (cell == null) {
            cell = row.createCell(address.getColumn());
            // A cell that was never typed into looks as its row or column says.
            if (row.getRowStyle() != null) {
                cell.setCellStyle(row.getRowStyle());
            } else if (sheet.getColumnStyle(address.getColumn()) != null) {
                cell.setCellStyle(sheet.getColumnStyle(address.getColumn()));
            }
        }
        return cell;
    }

    /** The style in that colour. */
    XSSFCellStyle filled(XSSFCellStyle own, Fill fill) {
        return styles.computeIfAbsent(
                new Mark(own.getIndex(), fill),
                key -> {
                    XSSFCellStyle style = workbook.createCellStyle();
                    style.cloneStyleFrom(own);
                    fill.on(style);
                    if (isLight(own.getFont())) {
                        style.setFont(dark(own.getFont()));
                    }
                    return style;
                });
    }

    private boolean isLight(XSSFFont font) {
        if (font.getCTFont().sizeOfColorArray() == 0) {
            return false;
        }
        // A copy, because looking a theme's colour up writes it down.
        XSSFColor color =
                XSSFColor.from(
                        (CTColor) font.getCTFont().getColorArray(0).copy(),
                        workbook.getStylesSource().getIndexedColors());
        if (workbook.getTheme() != null) {
            workbook.getTheme().inheritFromThemeAsRequired(color);
        }
        byte[] rgb = color.getRGB();
        if (rgb == null || rgb.length < 3) {
            return false;
        }
        int red = rgb[0] & 0xFF;
        int green = rgb[1] & 0xFF;
        int blue = rgb[2] & 0xFF;
        return (red * 30 + green * 59 + blue * 11) / 100 > LIGHT;
    }

    private XSSFFont dark(XSSFFont light) {
        XSSFFont font = workbook.createFont();
        font.setFontName(light.getFontName());
        font.setFontHeight(light.getFontHeight());
        font.setBold(light.getBold());
        font.setItalic(light.getItalic());
        font.setColor(new XSSFColor(new byte[] {0, 0, 0}));
        return font;
    }
}
