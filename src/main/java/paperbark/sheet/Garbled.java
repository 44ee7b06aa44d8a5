package paperbark.sheet;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import paperbark.finding.FindingCode;

/**
 * A word whose letters were lost or misread before the file came here. It is not mended: what was
 * lost is gone, and what was misread may have been misread more than once.
 *
 * @param word the word as it stands in the file
 * @param fact what is wrong with it, one sentence
 */
record Garbled(String word, String fact) {
    private static final char LOST = '\ufffd';
    private static final String USUAL_SIGNS =
            "\u00a0\u00ab\u00b0\u00bb\u2013\u2014\u2018\u2019\u201c\u201d\u2026";

    private static final Charset WINDOWS = Charset.forName("windows-1252");

    /** The first such word of a text. */
    static Optional<Garbled> word(String text) {
        if (text.chars().allMatch(c -> c < 0x80)) {
            return Optional.empty();
        }
        return Arrays.stream(text.split("[ \\t\\r\\n]"))
                .flatMap(word -> of(word).stream())
                .findFirst();
    }

    private static Optional<Garbled> of(String word) {
        if (word.indexOf(LOST) >= 0) {
            return Optional.of(
                    new Garbled(
                            word,
                            "The sign \"\ufffd\" in this word stands for a letter that is lost."));
        }
        return isReadTwice(word)
                ? Optional.of(
                        new Garbled(
                                word, "This word was saved in one encoding and read in another."))
                : Optional.empty();
    }

    CellTrouble trouble() {
        return new CellTrouble(
                FindingCode.TEXT_GARBLED,
                fact,
                "Type the word again, and export as \"CSV UTF-8\" where it came from.",
                Optional.of(word));
    }

    /**
     * Whether UTF-8 bytes were read as Windows-1252. Only a word whose every sign beyond ASCII fits
     * together that way, and then gives letters or the usual signs, counts; names written in
     * earnest never do.
     */
    private static boolean isReadTwice(String word) {
        Optional<byte[]> bytes = bytes(word);
        if (bytes.isEmpty() || word.chars().allMatch(c -> c < 0x80)) {
            return false;
        }
        try {
            String meant =
                    StandardCharsets.UTF_8
                            .newDecoder()
                            .decode(ByteBuffer.wrap(bytes.get()))
                            .toString();
            return meant.chars().filter(c -> c >= 0x80).allMatch(Garbled::isUsual);
        } catch (CharacterCodingException e) {
            return false;
        }
    }

    private static boolean isUsual(int c) {
        return Character.isLetter(c) || USUAL_SIGNS.indexOf(c) >= 0;
    }

    private static Optional<byte[]> bytes(String word) {
        CharsetEncoder windows = WINDOWS.newEncoder();
        ByteBuffer bytes = ByteBuffer.allocate(word.length());
        for (char c : word.toCharArray()) {
            if (c < 0x100) {
                bytes.put((byte) c);
            } else if (windows.canEncode(c)) {
                bytes.put(WINDOWS.encode(CharBuffer.wrap(new char[] {c})).get());
            } else {
                return Optional.empty();
            }
        }
        return Optional.of(bytes.array());
    }
}
