package paperbark.sheet;

import static paperbark.finding.FindingCode.SCRIPTS_MIXED;
import static paperbark.finding.FindingCode.TEXT_CLEANED;

import java.lang.Character.UnicodeScript;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Text without what the eye cannot see: compatibility form (NFKC), without invisible and illegal
 * characters, every run of spaces and line breaks one space. Accents stay.
 *
 * @param text the cleaned text
 * @param troubles what somebody should know about the cleaning
 */
record CleanText(String text, List<CellTrouble> troubles) {
    /** Greek letters used as signs of units and differences, as in kΩ, ΔT and µm. */
    private static final String UNIT_SIGNS = "\u03BC\u03A9\u0394";

    private static final Pattern SPACES = Pattern.compile(" {2,}");

    static CleanText of(String raw) {
        if (isPlain(raw)) {
            return new CleanText(raw, List.of());
        }
        StringBuilder kept = new StringBuilder(raw.length());
        raw.codePoints()
                .map(c -> isSpace(c) ? ' ' : c)
                .filter(c -> !isInvisible(c))
                .forEach(kept::appendCodePoint);
        boolean removed = kept.length() < raw.length();
        String normal = Normalizer.normalize(kept, Normalizer.Form.NFKC);
        StringBuilder spaced = new StringBuilder(normal.length());
        normal.codePoints().map(c -> isSpace(c) ? ' ' : c).forEach(spaced::appendCodePoint);
        String text = SPACES.matcher(spaced).replaceAll(" ").strip();
        List<CellTrouble> troubles = new ArrayList<>();
        if (removed) {
            troubles.add(
                    new CellTrouble(
                            TEXT_CLEANED, "Invisible characters were taken out of the text.", ""));
        }
        Garbled.word(raw).map(Garbled::trouble).ifPresent(troubles::add);
        mixedWord(text).map(CleanText::mixed).ifPresent(troubles::add);
        return new CleanText(text, List.copyOf(troubles));
    }

    /** Most cells are: they need no second look. */
    private static boolean isPlain(String raw) {
        char last = ' ';
        for (int i = 0; i < raw.length(); i++) {
            char c = raw.charAt(i);
            if (c < ' ' || c > '~' || (c == ' ' && last == ' ')) {
                return false;
            }
            last = c;
        }
        return raw.isEmpty() || last != ' ';
    }

    private static boolean isSpace(int c) {
        return Character.isSpaceChar(c) || (c >= '\t' && c <= '\r') || c == 0x85;
    }

    private static boolean isInvisible(int c) {
        int type = Character.getType(c);
        return type == Character.FORMAT
                || type == Character.CONTROL
                || type == Character.SURROGATE
                || (c & 0xFFFE) == 0xFFFE;
    }

    private static Optional<String> mixedWord(String text) {
        if (text.chars().allMatch(c -> c < 0x370)) {
            return Optional.empty();
        }
        for (String word : text.split(" ")) {
            boolean lookalike = word.codePoints().anyMatch(CleanText::isLookalike);
            if (lookalike && word.codePoints().anyMatch(CleanText::isOurs)) {
                return Optional.of(word);
            }
        }
        return Optional.empty();
    }

    private static boolean isLookalike(int c) {
        UnicodeScript script = UnicodeScript.of(c);
        return (script == UnicodeScript.CYRILLIC || script == UnicodeScript.GREEK)
                && Character.isLetter(c)
                && UNIT_SIGNS.indexOf(c) < 0;
    }

    private static boolean isOurs(int c) {
        return (c >= '0' && c <= '9')
                || (Character.isLetter(c) && UnicodeScript.of(c) == UnicodeScript.LATIN);
    }

    private static CellTrouble mixed(String word) {
        int letter = word.codePoints().filter(CleanText::isLookalike).findFirst().orElseThrow();
        String alphabet = UnicodeScript.of(letter) == UnicodeScript.GREEK ? "Greek" : "Cyrillic";
        return new CellTrouble(
                SCRIPTS_MIXED,
                "The letter \"%s\" in this word is %s, not Latin."
                        .formatted(Character.toString(letter), alphabet),
                "Type the word again instead of pasting it.",
                Optional.of(word));
    }
}
