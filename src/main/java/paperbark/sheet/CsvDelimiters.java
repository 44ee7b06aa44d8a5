package paperbark.sheet;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the fields of a CSV text may be told apart by.
 *
 * @param candidates the delimiters that come into question
 * @param first line by which some programs tell others the delimiter, with its end; empty text
 *     where there is none
 */
record CsvDelimiters(List<Character> candidates, String first) {
    private static final List<Character> USUAL = List.of(',', ';', '\t', '|');

    private static final Pattern NAMED =
            Pattern.compile("\"?[sS][eE][pP]=([^\"\\r\\n])\"?(\\r\\n|\\r|\\n)");

    /** The one that the first line names, or else the usual ones. */
    static CsvDelimiters of(String text) {
        Matcher named = NAMED.matcher(text);
        return named.lookingAt()
                ? new CsvDelimiters(List.of(named.group(1).charAt(0)), named.group())
                : new CsvDelimiters(USUAL, "");
    }

    /** A delimiter as people call it. */
    static String words(char delimiter) {
        return switch (delimiter) {
            case ',' -> "comma";
            case ';' -> "semicolon";
            case '\t' -> "tab";
            default -> "\"" + delimiter + "\"";
        };
    }
}
