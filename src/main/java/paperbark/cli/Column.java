package paperbark.cli;

/**
 * Text in a column of lines of the console, for lists that may have 100,000 lines: a format says
 * the same in several times the time.
 */
final class Column {
    private Column() {}

    /** Text at the left of a column; longer text makes it wider. */
    static String left(Object text, int width) {
        String all = text.toString();
        return all + blanks(all, width);
    }

    /** The same at the right. */
    static String right(Object text, int width) {
        String all = text.toString();
        return blanks(all, width) + all;
    }

    private static String blanks(String text, int width) {
        return " ".repeat(Math.max(0, width - text.length()));
    }
}
