package paperbark.value;

import java.util.Optional;

/** Digits as offices write them: with spaces, hyphens or dots between. */
final class Digits {
    private Digits() {}

    /**
     * The ASCII digits of the text without spaces, hyphens and dots; empty when anything else is in
     * it.
     */
    static Optional<String> of(String text) {
        String digits = text.replaceAll("[ .-]", "");
        return digits.matches("[0-9]+") ? Optional.of(digits) : Optional.empty();
    }

    static int at(String digits, int index) {
        return digits.charAt(index) - '0';
    }
}
