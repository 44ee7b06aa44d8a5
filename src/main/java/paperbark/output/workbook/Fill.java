package paperbark.output.workbook;

import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import paperbark.finding.Severity;

/** The colours of severities: also in grey the graver is clearly the darker. */
enum Fill {
    NOTE(0xE3, 0xEE, 0xF5),
    CHECK(0xFF, 0xD5, 0x66),
    STOP(0xEE, 0x84, 0x6A);

    private final byte[] rgb;

    Fill(int red, int green, int blue) {
        this.rgb = new byte[] {(byte) red, (byte) green, (byte) blue};
    }

    static Fill of(Severity severity) {
        return switch (severity) {
            case NOTE -> NOTE;
            case CHECK -> CHECK;
            case STOP -> STOP;
        };
    }

    void on(XSSFCellStyle style) {
        style.setFillForegroundColor(new XSSFColor(rgb.clone()));
        style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
    }
}
