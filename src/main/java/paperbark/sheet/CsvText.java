package paperbark.sheet;

import static paperbark.finding.FindingCode.ENCODING_GUESSED;
import static paperbark.finding.FindingCode.ENCODING_UNREADABLE;
import static paperbark.finding.FindingCode.FILE_MAY_BE_CUT;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.finding.Finding;
import paperbark.finding.Place;

/**
 * The bytes of a CSV file as text. The first bytes may name the encoding; else it is UTF-8 if every
 * byte agrees, else Windows-1252 with a finding.
 *
 * @param text without byte order mark
 * @param charset the encoding
 * @param mark how many bytes of byte order mark there are
 * @param findings at most the guess
 */
record CsvText(String text, Charset charset, int mark, List<Finding> findings) {
    private static final Charset WINDOWS = Charset.forName("windows-1252");
    private static final Pattern ACCENTED_WORD =
            Pattern.compile("[^\\s,;\"]*[^\\x00-\\x7F\\s][^\\s,;\"]*");

    private enum Mark {
        UTF_8(StandardCharsets.UTF_8, 0xEF, 0xBB, 0xBF),
        UTF_16_LOW_FIRST(StandardCharsets.UTF_16LE, 0xFF, 0xFE),
        UTF_16_HIGH_FIRST(StandardCharsets.UTF_16BE, 0xFE, 0xFF);

        private final Charset charset;
        private final int[] bytes;

        Mark(Charset charset, int... bytes) {
            this.charset = charset;
            this.bytes = bytes;
        }

        private boolean begins(byte[] content) {
            for (int i = 0; i < bytes.length; i++) {
                if (content.length <= i || (content[i] & 0xFF) != bytes[i]) {
                    return false;
                }
            }
            return true;
        }
    }

    static CsvText of(String file, byte[] content) throws Refused {
        for (Mark mark : Mark.values()) {
            if (mark.begins(content)) {
                Optional<String> text = decode(content, mark.bytes.length, mark.charset);
                return new CsvText(whole(file, text), mark.charset, mark.bytes.length, List.of());
            }
        }
        Optional<String> text = decode(content, 0, StandardCharsets.UTF_8);
        if (text.isPresent()) {
            return new CsvText(whole(file, text), StandardCharsets.UTF_8, 0, List.of());
        }
        refuseCut(file, content);
        String guessed = whole(file, decode(content, 0, WINDOWS));
        return new CsvText(guessed, WINDOWS, 0, List.of(guess(file, guessed)));
    }

    /** Another text in the same encoding, with a byte order mark where there was one. */
    byte[] encode(String other) {
        return ((mark > 0 ? "\ufeff" : "") + other).getBytes(charset);
    }

    private static Optional<String> decode(byte[] content, int from, Charset charset) {
        try {
            return Optional.of(
                    charset.newDecoder()
                            .onMalformedInput(CodingErrorAction.REPORT)
                            .onUnmappableCharacter(CodingErrorAction.REPORT)
                            .decode(ByteBuffer.wrap(content, from, content.length - from))
                            .toString());
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }

    /** UTF-8 throughout, with accents, but for half a character at the end: a copy cut short. */
    private static void refuseCut(String file, byte[] content) throws Refused {
        for (int lost = 1; lost <= 3 && lost < content.length; lost++) {
            byte[] front = Arrays.copyOf(content, content.length - lost);
            Optional<String> text = decode(front, 0, StandardCharsets.UTF_8);
            if (text.isPresent() && text.get().length() < front.length) {
                throw Refused.because(
                        FILE_MAY_BE_CUT,
                        new Place.InFile(file),
                        "The file ends in the middle of a character.",
                        "Wait until it is copied, or export it again.");
            }
        }
    }

    /** Zero bytes are UTF-16 without its mark, or the unwritten end of a copy. */
    private static String whole(String file, Optional<String> text) throws Refused {
        if (text.isEmpty() || text.get().indexOf('\0') >= 0) {
            throw Refused.because(
                    ENCODING_UNREADABLE,
                    new Place.InFile(file),
                    "The bytes of the file are not text in a known encoding.",
                    "Save it again as \"CSV UTF-8\", or as .xlsx.");
        }
        return text.get();
    }

    private static Finding guess(String file, String text) {
        Matcher word = ACCENTED_WORD.matcher(text);
        boolean found = word.find();
        String seen = found ? word.group() : "";
        int line = 1 + CsvScan.lineBreaks(text, 0, found ? word.start() : 0);
        return Finding.of(
                        ENCODING_GUESSED,
                        new Place.InRow(file, "", line),
                        "The file is not UTF-8; it was read as Windows-1252, the old Windows encoding.",
                        "Compare the word shown with the original; if it differs, save the file as \"CSV UTF-8\".")
                .seeing(seen);
    }
}
