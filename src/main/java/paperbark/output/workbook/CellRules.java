package paperbark.output.workbook;

import java.util.List;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.DataValidationConstraint.OperatorType;
import org.apache.poi.ss.usermodel.DataValidationConstraint.ValidationType;
import org.apache.poi.ss.usermodel.DataValidationHelper;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import paperbark.firm.ColumnGuide.Holds;

/**
 * What may be typed into the cells of a column, told in the way that spreadsheet programs hold
 * people to it: lists to choose from, days, numbers, lengths.
 */
final class CellRules {
    /** Rows that are ready to be typed in. */
    static final int LAST_ROW = 4999;

    // What a spreadsheet program takes at most in its messages.
    private static final int LONGEST_TITLE = 32;
    private static final int LONGEST_MESSAGE = 250;

    // A drop-down's own text holds no more; what is longer stands on a sheet of lists.
    private static final int LONGEST_CHOICES = 250;

    private static final String EARLIEST = "DATE(1990,1,1)";
    private static final String LATEST = "DATE(2099,12,31)";

    private final XSSFSheet sheet;
    private final DataValidationHelper helper;
    private final ListsSheet lists;

    CellRules(XSSFSheet sheet, ListsSheet lists) {
        this.sheet = sheet;
        this.helper = sheet.getDataValidationHelper();
        this.lists = lists;
    }

    /**
     * Cells that go by one rule.
     *
     * @param firstRow from 0
     * @param lastRow from 0
     * @param column from 0
     */
    record Area(int firstRow, int lastRow, int column) {}

    /** One of these words. */
    void choice(Area area, List<String> words, String title, String note) {
        boolean plain =
                String.join(",", words).length() <= LONGEST_CHOICES
                        && words.stream().noneMatch(w -> w.contains(",") || w.contains("\""));
        DataValidationConstraint constraint =
                plain
                        ? helper.createExplicitListConstraint(words.toArray(String[]::new))
                        : helper.createFormulaListConstraint(lists.range(words));
        put(area, constraint, title, note, "Choose one of the list.");
    }

    /** One of what a formula gives. */
    void oneOf(Area area, String formula, String title, String note) {
        put(
                area,
                helper.createFormulaListConstraint(formula),
                title,
                note,
                "Choose one of the list; the tables have no other.");
    }

    /** Whatever fits a kind of column that needs no list. */
    void kind(Area area, Holds holds, String title, String note) {
        switch (holds) {
            case DAY ->
                    put(
                            area,
                            helper.createDateConstraint(
                                    OperatorType.BETWEEN, EARLIEST, LATEST, "yyyy-mm-dd"),
                            title,
                            note,
                            "Type a day, such as 16/11/2026.");
            case NUMBER, MONEY ->
                    put(
                            area,
                            helper.createDecimalConstraint(
                                    OperatorType.GREATER_OR_EQUAL, "0", null),
                            title,
                            note,
                            "Type a number without a unit and not below zero.");
            case POSTCODE ->
                    put(
                            area,
                            length(OperatorType.EQUAL, "4"),
                            title,
                            note,
                            "Type four digits, a zero at the front too.");
            case PHONE ->
                    put(
                            area,
                            length(OperatorType.GREATER_OR_EQUAL, "6"),
                            title,
                            note,
                            "Type the number with its area code, such as 03 5550 0100.");
            default -> prompt(area, title, note);
        }
    }

    private DataValidationConstraint length(int operator, String letters) {
        return helper.createTextLengthConstraint(operator, letters, null);
    }

    /** Anything may be typed, and the note is shown while it is. */
    private void prompt(Area area, String title, String note) {
        if (!note.isEmpty()) {
            DataValidation validation =
                    helper.createValidation(helper.createCustomConstraint("TRUE"), cells(area));
            validation.createPromptBox(cut(title, LONGEST_TITLE), cut(note, LONGEST_MESSAGE));
            validation.setShowPromptBox(true);
            validation.setEmptyCellAllowed(true);
            sheet.addValidationData(validation);
        }
    }

    private void put(
            Area area,
            DataValidationConstraint constraint,
            String title,
            String note,
            String wrong) {
        DataValidation validation = helper.createValidation(constraint, cells(area));
        validation.setEmptyCellAllowed(true);
        // The library means the opposite for the format it writes here.
        validation.setSuppressDropDownArrow(constraint.getValidationType() == ValidationType.LIST);
        validation.setErrorStyle(DataValidation.ErrorStyle.STOP);
        validation.createErrorBox(cut(title, LONGEST_TITLE), cut(wrong, LONGEST_MESSAGE));
        validation.setShowErrorBox(true);
        if (!note.isEmpty()) {
            validation.createPromptBox(cut(title, LONGEST_TITLE), cut(note, LONGEST_MESSAGE));
            validation.setShowPromptBox(true);
        }
        sheet.addValidationData(validation);
    }

    private static CellRangeAddressList cells(Area area) {
        return new CellRangeAddressList(area.firstRow, area.lastRow, area.column, area.column);
    }

    private static String cut(String text, int longest) {
        return text.length() <= longest ? text : text.substring(0, longest - 1) + "…";
    }
}
