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
        StringBuilder digits = new StringBuilder(text.length());
        for (char c : text.toCharArray()) {
            if (c >= '0' && c <= '9') {
                digits.append(c);
            } else if (c != ' ' && c != '.' && c != '-') {
                return Optional.empty();
            }
        }
        return digits.isEmpty() ? Optional.empty() : Optional.of(digits.toString());
    }

    static int at(String digits, int index) {
        return digits.charAt(index) - '0';
    }
}
