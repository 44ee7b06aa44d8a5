package paperbark.output.workbook;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.output.table.Value;

/** The cell styles of our own sheets, each made once. */
final class Styles {
    private static final byte[] ACCENT = {(byte) 0x1F, (byte) 0x5C, (byte) 0x6B};
    private static final byte[] RULE = {(byte) 0xC4, (byte) 0xCF, (byte) 0xD2};
    private static final byte[] WHITE = {(byte) 0xFF, (byte) 0xFF, (byte) 0xFF};

    /** The part that a cell plays in its sheet. */
    enum Part {
        TITLE,
        NOTE,
        HEADING,
        VALUE,
        TOTAL
    }

    /**
     * What tells two styles apart.
     *
     * @param part the cell's part
     * @param format number format; empty for general
     * @param right whether it stands at the right
     * @param quoted whether its text must be marked as text
     * @param linked whether it is a link
     * @param fill severity colour
     */
    record Look(
            Part part,
            String format,
            boolean right,
            boolean quoted,
            boolean linked,
            Optional<Fill> fill) {

        static Look of(Part part) {
            return new Look(part, "", false, false, false, Optional.empty());
        }

        static Look of(Part part, Value value) {
            boolean right =
                    value instanceof Value.Whole
                            || value instanceof Value.Amount
                            || value instanceof Value.Price;
            return new Look(part, format(value), right, false, false, Optional.empty());
        }

        private static String format(Value value) {
            if (value instanceof Value.Amount) {
                return "$#,##0.00;-$#,##0.00";
            }
            if (value instanceof Value.Price) {
                return "$#,##0.00##";
            }
            if (value instanceof Value.Day) {
                return "d mmm yyyy";
            }
            return value instanceof Value.Whole ? "#,##0" : "@";
        }

        Look toRight() {
            return new Look(part, format, true, quoted, linked, fill);
        }

        Look asQuoted() {
            return new Look(part, format, right, true, linked, fill);
        }

        Look asLink() {
            return new Look(part, format, right, quoted, true, fill);
        }

        Look filled(Fill colour) {
            return new Look(part, format, right, quoted, linked, Optional.of(colour));
        }
    }

    private final XSSFWorkbook workbook;
    private final Map<Look, XSSFCellStyle> made = new HashMap<>();
    private final Map<Look, XSSFFont> fonts = new HashMap<>();

    Styles(XSSFWorkbook workbook) {
        this.workbook = workbook;
    }

    XSSFCellStyle of(Look look) {
        return made.computeIfAbsent(look, this::make);
    }

    private XSSFCellStyle make(Look look) {
        XSSFCellStyle style = workbook.createCellStyle();
        style.setFont(font(look));
        style.setVerticalAlignment(VerticalAlignment.TOP);
        style.setWrapText(look.part != Part.TITLE);
        if (look.right) {
            style.setAlignment(HorizontalAlignment.RIGHT);
        } else {
            style.setAlignment(HorizontalAlignment.LEFT);
        }
        if (look.part == Part.HEADING || look.part == Part.VALUE || look.part == Part.TOTAL) {
            style.setIndention((short) 1);
        }
        if (!look.format.isEmpty()) {
            style.setDataFormat(workbook.createDataFormat().getFormat(look.format));
        }
        style.setQuotePrefixed(look.quoted);
        look.fill.ifPresent(fill -> fill.on(style));
        ruled(style, look.part);
        return style;
    }

    private static void ruled(XSSFCellStyle style, Part part) {
        switch (part) {
            case HEADING -> {
                style.setFillForegroundColor(new XSSFColor(ACCENT.clone()));
                style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
                style.setVerticalAlignment(VerticalAlignment.BOTTOM);
            }
            case VALUE -> {
                style.setBorderBottom(BorderStyle.THIN);
                style.setBottomBorderColor(new XSSFColor(RULE.clone()));
            }
            case TOTAL -> {
                style.setBorderTop(BorderStyle.MEDIUM);
                style.setTopBorderColor(new XSSFColor(ACCENT.clone()));
            }
            default -> {}
        }
    }

    private XSSFFont font(Look look) {
        Look key = new Look(look.part, "", false, false, look.linked, Optional.empty());
        return fonts.computeIfAbsent(key, this::makeFont);
    }

    private XSSFFont makeFont(Look look) {
        XSSFFont font = workbook.createFont();
        font.setFontName("Arial");
        font.setFontHeightInPoints((short) (look.part == Part.TITLE ? 15 : 10));
        font.setBold(look.part != Part.VALUE && look.part != Part.NOTE);
        if (look.part == Part.HEADING) {
            font.setColor(new XSSFColor(WHITE.clone()));
        } else if (look.part == Part.TITLE || look.linked) {
            font.setColor(new XSSFColor(ACCENT.clone()));
        }
        if (look.linked) {
            font.setUnderline(XSSFFont.U_SINGLE);
        }
        return font;
    }
}
