package paperbark.output.workbook;

import java.util.HashMap;
import java.util.Map;
import org.apache.poi.hssf.usermodel.HSSFCellStyle;
import org.apache.poi.hssf.usermodel.HSSFFont;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.hssf.util.HSSFColor;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Styles and fonts of an .xls workbook, each carried over once. */
final class OldStyles {
    private final HSSFWorkbook old;
    private final XSSFWorkbook made;
    private final Map<Short, XSSFCellStyle> styles = new HashMap<>();
    private final Map<Integer, XSSFFont> fonts = new HashMap<>();

    OldStyles(HSSFWorkbook old, XSSFWorkbook made) {
        this.old = old;
        this.made = made;
    }

    XSSFCellStyle of(HSSFCellStyle style) {
        return styles.computeIfAbsent(style.getIndex(), i -> copy(style));
    }

    private XSSFCellStyle copy(HSSFCellStyle from) {
        XSSFCellStyle to = made.createCellStyle();
        to.setDataFormat(made.createDataFormat().getFormat(from.getDataFormatString()));
        to.setAlignment(from.getAlignment());
        to.setVerticalAlignment(from.getVerticalAlignment());
        to.setWrapText(from.getWrapText());
        to.setIndention(from.getIndention());
        to.setRotation(from.getRotation());
        to.setLocked(from.getLocked());
        to.setHidden(from.getHidden());
        to.setQuotePrefixed(from.getQuotePrefixed());
        to.setBorderTop(from.getBorderTop());
        to.setBorderBottom(from.getBorderBottom());
        to.setBorderLeft(from.getBorderLeft());
        to.setBorderRight(from.getBorderRight());
        if (from.getFillPattern() != FillPatternType.NO_FILL) {
            to.setFillForegroundColor(color(from.getFillForegroundColorColor()));
            to.setFillPattern(from.getFillPattern());
        }
        to.setFont(font(from.getFont(old)));
        return to;
    }

    private XSSFFont font(HSSFFont from) {
        return fonts.computeIfAbsent(
                from.getIndex(),
                i -> {
                    XSSFFont to = made.createFont();
                    to.setFontName(from.getFontName());
                    to.setFontHeight(from.getFontHeight());
                    to.setBold(from.getBold());
                    to.setItalic(from.getItalic());
                    to.setUnderline(from.getUnderline());
                    to.setStrikeout(from.getStrikeout());
                    HSSFColor color = from.getHSSFColor(old);
                    if (color != null) {
                        to.setColor(color(color));
                    }
                    return to;
                });
    }

    private static XSSFColor color(HSSFColor color) {
        short[] rgb = color.getTriplet();
        return new XSSFColor(new byte[] {(byte) rgb[0], (byte) rgb[1], (byte) rgb[2]});
    }
}
