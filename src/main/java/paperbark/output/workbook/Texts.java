package paperbark.output.workbook;

import java.util.regex.Pattern;
import org.apache.poi.ss.SpreadsheetVersion;

/** Text on its way into a cell. */
final class Texts {
    // Spreadsheets read _x0041_ as an escaped character, so the underscore itself is escaped.
    private static final Pattern ESCAPE = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");
    private static final int LONGEST = SpreadsheetVersion.EXCEL2007.getMaxTextLength();

    private Texts() {}

    /** The text as a cell stores it, cut where a cell could not hold it. */
    static String stored(String text) {
        String escaped = ESCAPE.matcher(text).replaceAll("_x005F_");
        return escaped.length() <= LONGEST ? escaped : escaped.substring(0, LONGEST - 1) + "…";
    }
}
