package paperbark.value;

import java.util.Locale;
import java.util.regex.Pattern;

/** Names and keys of tables as they are compared: whatever their case and spacing. */
public final class NameKey {
    private static final Pattern SPACES = Pattern.compile("\\s+");

    private NameKey() {}

    /**
     * The name as compared: without outer spaces, each run of white space one space, lower case.
     */
    public static String of(String name) {
        String bare = name.strip();
        String spaced = isSpaced(bare) ? bare : SPACES.matcher(bare).replaceAll(" ");
        return spaced.toLowerCase(Locale.ROOT);
    }

    /** Nearly all names are, and tables are asked for them thousands of times. */
    private static boolean isSpaced(String bare) {
        for (int i = 0; i < bare.length(); i++) {
            char c = bare.charAt(i);
            boolean again = c == ' ' && bare.charAt(i + 1) == ' ';
            if (again || (c >= '\t' && c <= '\r')) {
                return false;
            }
        }
        return true;
    }
}
