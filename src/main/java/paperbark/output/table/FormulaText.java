package paperbark.output.table;

import java.util.regex.Pattern;

/** Text that a spreadsheet would run as a formula. */
public final class FormulaText {
    private static final Pattern BEGINNING = Pattern.compile("[=+\\-@\\t\\r\\n＝＋－＠]");

    private FormulaText() {}

    /** Whether somebody who types or edits the text in a cell would make a formula of it. */
    public static boolean is(String text) {
        return BEGINNING.matcher(text).lookingAt();
    }
}
