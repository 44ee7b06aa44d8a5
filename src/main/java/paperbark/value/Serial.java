package paperbark.value;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A serial number as read off the plate.
 *
 * @param seen as written, without outer spaces
 * @param key for comparing: compatibility form, upper case, without spaces and hyphens
 */
public record Serial(String seen, String key) {
    private static final Pattern SCIENTIFIC =
            Pattern.compile("[0-9](\\.[0-9]+)?[eE][+-]?[0-9]{1,3}");
    private static final Pattern APART = Pattern.compile("[\\s\\p{Cf}\\-‐-―]");
    private static final Pattern FORM = Pattern.compile("(?=.*\\p{Nd})[\\p{L}\\p{Nd}./_]{3,40}");

    /**
     * Reads a serial of 3 to 40 letters, digits, spaces, hyphens, dots and slashes. One without any
     * digit is a remark such as {@code TBA} or {@code n/a}.
     */
    public static Parsed<Serial> parse(String text) {
        String seen = text.strip();
        if (SCIENTIFIC.matcher(seen).matches() && (seen.contains(".") || seen.contains("+"))) {
            return Parsed.bad(
                    "The spreadsheet turned the serial into a rounded number and its last digits are gone.",
                    "Format the column as text and type the serial again from the plate.");
        }
        String key = Normalizer.normalize(seen, Normalizer.Form.NFKC).toUpperCase(Locale.ROOT);
        key = APART.matcher(key).replaceAll("");
        if (!FORM.matcher(key).matches()) {
            return Parsed.bad(
                    "The text is not a serial number of 3 to 40 letters and digits, with a digit among them.",
                    "Read the serial off the plate again.");
        }
        return Parsed.ok(new Serial(seen, key));
    }

    /** As written. */
    @Override
    public String toString() {
        return seen;
    }
}
