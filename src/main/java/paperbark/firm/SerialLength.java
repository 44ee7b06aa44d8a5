package paperbark.firm;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How many signs a serial has, read off simple forms such as {@code T[0-9]{2}-[0-9]{6}}. */
final class SerialLength {
    private static final Pattern PART =
            Pattern.compile(
                    "(?:\\[\\^?\\]?[^\\]]*\\]|\\\\[dwDW]|\\\\[^A-Za-z0-9]|[^\\\\\\[\\](){}.*+?|^$]|\\.)(?:\\{([0-9]{1,2})\\})?");
    private static final int LONGEST = 24;

    private SerialLength() {}

    /** The length; empty where serials of several lengths have the form, or it is too intricate. */
    static Optional<Integer> of(Pattern form) {
        String rest = form.pattern();
        int length = 0;
        while (!rest.isEmpty()) {
            Matcher part = PART.matcher(rest);
            if (!part.lookingAt()) {
                return Optional.empty();
            }
            length += part.group(1) == null ? 1 : Integer.parseInt(part.group(1));
            rest = rest.substring(part.end());
        }
        return Optional.of(length).filter(n -> n > 0 && n <= LONGEST);
    }
}
