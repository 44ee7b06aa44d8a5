package paperbark.sheet;

import java.util.Locale;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;

/** What the text of a formula tells. Formulas are never calculated here. */
final class StoredFormula {
    private static final Pattern SUM = Pattern.compile("\\+?(SUM|SUBTOTAL)\\(.*\\)");

    /**
     * A workbook in brackets before a sheet's exclamation mark: [1]Sheet!A1 or '[1]My sheet'!A1.
     * Brackets after a name are a column of a table in this workbook.
     */
    private static final Pattern OTHER_WORKBOOK =
            Pattern.compile(
                    "'file:[^']*'|'[^'\\[]*\\[[^\\[\\]]+\\][^']*'!"
                            + "|(?<![\\p{L}\\p{N}_.\\]])\\[[^\\[\\]]+\\][^\\s'!()+*/,;&<>=^\\[\\]-]*!");

    private StoredFormula() {}

    static boolean isSum(Cell cell) {
        return SUM.matcher(text(cell).toUpperCase(Locale.ROOT).strip()).matches();
    }

    static boolean refersElsewhere(Cell cell) {
        return OTHER_WORKBOOK.matcher(text(cell)).find();
    }

    private static String text(Cell cell) {
        try {
            return cell.getCellType() == CellType.FORMULA ? cell.getCellFormula() : "";
        } catch (RuntimeException e) {
            // The library cannot write out every formula; the stored result stands without it.
            return "";
        }
    }
}
