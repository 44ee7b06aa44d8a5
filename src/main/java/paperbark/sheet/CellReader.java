package paperbark.sheet;

import static paperbark.finding.FindingCode.CELL_UNREADABLE;
import static paperbark.finding.FindingCode.DATE_OUT_OF_RANGE;
import static paperbark.finding.FindingCode.DIGITS_LOST;
import static paperbark.finding.FindingCode.FORMULA_ERROR;
import static paperbark.finding.FindingCode.FORMULA_EXTERNAL;
import static paperbark.finding.FindingCode.FORMULA_NOT_CALCULATED;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.xssf.usermodel.XSSFCell;

/**
 * Reads what is stored in the cells of one workbook, never what is displayed.
 *
 * @param sharedTexts how many texts the workbook's table of shared texts holds
 * @param from1904 whether the workbook counts its days from 1904
 */
record CellReader(int sharedTexts, boolean from1904) {
    /** A spreadsheet keeps 15 digits; further ones are noise of binary fractions. */
    private static final MathContext DIGITS = new MathContext(15);

    private static final BigDecimal FIRST_OF_16_DIGITS = BigDecimal.TEN.pow(15);

    /** 1 March 1900 counted from 1900; before it spreadsheet programs disagree by a day. */
    private static final int FIRST_SURE_DAY = 61;

    private static final int LAST_YEAR = 9999;

    /** One cell; whatever is wrong with it becomes its trouble and not its neighbours'. */
    Cell read(org.apache.poi.ss.usermodel.Cell stored) {
        int column = stored.getColumnIndex() + 1;
        String address = stored.getAddress().formatAsString();
        try {
            return value(stored, column, address);
        } catch (RuntimeException e) {
            return unusable(column, address, "", unreadable());
        }
    }

    private Cell value(org.apache.poi.ss.usermodel.Cell stored, int column, String address) {
        if (stored instanceof XSSFCell cell) {
            StoredXml xml = new StoredXml(cell);
            if (xml.hasStrayText()) {
                return unusable(column, address, "", unreadable());
            }
            if (xml.isNotCalculated()) {
                return unusable(column, address, "", notCalculated());
            }
            if (xml.missesValue()) {
                return unusable(column, address, "", valueless());
            }
            if (xml.isIsoDate()) {
                return xml.isoDate()
                        .map(day -> date(column, address, day))
                        .orElseGet(() -> unusable(column, address, "", unreadable()));
            }
            if (xml.missesText(sharedTexts)) {
                return unusable(column, address, "", damaged());
            }
        }
        Cell cell = simple(stored, column, address);
        return StoredFormula.refersElsewhere(stored) ? with(cell, external()) : cell;
    }

    private Cell simple(org.apache.poi.ss.usermodel.Cell stored, int column, String address) {
        CellType type = stored.getCellType();
        if (type == CellType.FORMULA) {
            type = stored.getCachedFormulaResultType();
        }
        return switch (type) {
            case STRING ->
                    TextCell.of(column, address, stored.getRichStringCellValue().getString());
            case NUMERIC ->
                    number(
                            stored.getNumericCellValue(),
                            isDate(stored.getCellStyle()),
                            column,
                            address);
            case BOOLEAN -> truth(stored.getBooleanCellValue(), column, address);
            case ERROR -> {
                String error = errorText(stored);
                yield unusable(column, address, error, error(error));
            }
            default -> Cell.blank(column, address);
        };
    }

    private static Cell truth(boolean value, int column, String address) {
        return cell(column, address, Cell.Kind.BOOLEAN, value ? "yes" : "no");
    }

    /**
     * A cell without a formula, as the file holds it.
     *
     * @param type the standard's word
     * @param value empty where nothing is stored; of a shared text the text itself
     */
    Cell plain(String type, Optional<String> value, boolean date, int column, String address) {
        try {
            return switch (type) {
                case "s", "b" ->
                        value.filter(v -> !v.isBlank() || type.equals("s"))
                                .map(
                                        v ->
                                                type.equals("s")
                                                        ? TextCell.of(column, address, v)
                                                        : truth(isTrue(v), column, address))
                                .orElseGet(() -> unusable(column, address, "", valueless()));
                case "str", "inlineStr" -> TextCell.of(column, address, value.orElse(""));
                case "d" ->
                        StoredXml.isoDate(value.orElse(""))
                                .map(day -> date(column, address, day))
                                .orElseGet(() -> unusable(column, address, "", unreadable()));
                case "n" ->
                        value.isEmpty()
                                ? Cell.blank(column, address)
                                : number(
                                        value.get().isEmpty() ? 0 : Double.parseDouble(value.get()),
                                        date,
                                        column,
                                        address);
                default -> unusable(column, address, "", unreadable());
            };
        } catch (RuntimeException e) {
            return unusable(column, address, "", unreadable());
        }
    }

    private static boolean isTrue(String stored) {
        return stored.strip().equals("1") || stored.strip().equalsIgnoreCase("true");
    }

    /** A cell whose shared text the file does not hold. */
    static Cell textless(int column, String address) {
        return unusable(column, address, "", damaged());
    }

    private Cell number(double stored, boolean date, int column, String address) {
        BigDecimal exact = new BigDecimal(Double.toString(stored));
        if (date) {
            return date(stored, exact, column, address);
        }
        boolean lost = exact.abs().compareTo(FIRST_OF_16_DIGITS) >= 0;
        BigDecimal number = lost ? exact : exact.round(DIGITS);
        String text = number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
        return new Cell(
                column,
                address,
                Cell.Kind.NUMBER,
                text,
                Optional.of(new BigDecimal(text)),
                Optional.empty(),
                lost ? List.of(digitsLost()) : List.of());
    }

    /** Whether numbers of that style are days. */
    static boolean isDate(CellStyle style) {
        return style != null
                && DateUtil.isADateFormat(style.getDataFormat(), style.getDataFormatString());
    }

    private Cell date(double stored, BigDecimal days, int column, String address) {
        int first = from1904 ? 0 : FIRST_SURE_DAY;
        if (days.compareTo(BigDecimal.valueOf(first)) >= 0
                && days.compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) < 0) {
            LocalDate day = DateUtil.getLocalDateTime(stored, from1904).toLocalDate();
            if (day.getYear() <= LAST_YEAR) {
                return date(column, address, day);
            }
        }
        return unusable(column, address, days.stripTrailingZeros().toPlainString(), noDay());
    }

    private static Cell date(int column, String address, LocalDate day) {
        return new Cell(
                column,
                address,
                Cell.Kind.DATE,
                day.toString(),
                Optional.empty(),
                Optional.of(day),
                List.of());
    }

    private static String errorText(org.apache.poi.ss.usermodel.Cell stored) {
        return stored instanceof XSSFCell cell
                ? cell.getErrorCellString()
                : FormulaError.forInt(stored.getErrorCellValue()).getString();
    }

    private static Cell cell(int column, String address, Cell.Kind kind, String text) {
        return new Cell(column, address, kind, text, Optional.empty(), Optional.empty(), List.of());
    }

    private static Cell unusable(int column, String address, String text, CellTrouble trouble) {
        return with(cell(column, address, Cell.Kind.UNUSABLE, text), trouble);
    }

    /** The same cell with one more trouble. */
    static Cell with(Cell cell, CellTrouble trouble) {
        List<CellTrouble> troubles = new ArrayList<>(cell.troubles());
        troubles.add(trouble);
        return CellBuilder.builder(cell).troubles(troubles).build();
    }

    private static CellTrouble unreadable() {
        return new CellTrouble(
                CELL_UNREADABLE, "The cell's value cannot be read.", "Type the value again.");
    }

    private static CellTrouble damaged() {
        return new CellTrouble(
                CELL_UNREADABLE,
                "The cell's text is missing from the file, which is damaged.",
                "Type the text again and save the workbook.");
    }

    private static CellTrouble valueless() {
        return new CellTrouble(
                CELL_UNREADABLE,
                "The cell's value is missing from the file, which is damaged.",
                "Type the value again and save the workbook.");
    }

    /** The same cell where the file holds another of the same address. */
    static Cell doubled(Cell cell) {
        return unusable(
                cell.column(),
                cell.address(),
                cell.text(),
                new CellTrouble(
                        CELL_UNREADABLE,
                        "The file holds this cell twice, and it is not clear which value is meant.",
                        "Type the value again and save the workbook."));
    }

    private static CellTrouble notCalculated() {
        return new CellTrouble(
                FORMULA_NOT_CALCULATED,
                "The cell holds a formula that was never calculated.",
                "Open the workbook in the spreadsheet program, let it calculate, and save it.");
    }

    private static CellTrouble error(String error) {
        return new CellTrouble(
                FORMULA_ERROR,
                "The cell shows the error " + error + ".",
                "Mend the formula, or type the value.");
    }

    private static CellTrouble external() {
        return new CellTrouble(
                FORMULA_EXTERNAL,
                "The formula takes its value from another workbook.",
                "Compare the value with the other workbook, or type it.");
    }

    private static CellTrouble digitsLost() {
        return new CellTrouble(
                DIGITS_LOST,
                "The number has more than 15 digits, and the spreadsheet kept only the first 15.",
                "Format the column as text and type the number again.");
    }

    private static CellTrouble noDay() {
        return new CellTrouble(
                DATE_OUT_OF_RANGE,
                "The cell is formatted as a date, but its number is no day from March 1900 to 9999.",
                "Type the date again.");
    }
}
