package paperbark.output.pdf;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/** Finds what an object holds in its text, as {@link ObjectText} writes it, and reads no more. */
final class Skim {
    private Skim() {}

    /** What lies under a name in a dictionary, without the space before it. */
    static Optional<PackReader.Piece> value(PackReader.Piece dictionary, String name) {
        byte[] wanted = name.getBytes(StandardCharsets.ISO_8859_1);
        byte[] text = dictionary.text();
        int at = dictionary.from() + 2;
        while (text[at] == '/') {
            int key = at + 1;
            int behind = wordEnd(text, key, dictionary.to());
            int from = text[behind] == ' ' ? behind + 1 : behind;
            at = end(text, from, dictionary.to());
            if (Arrays.equals(text, key, behind, wanted, 0, wanted.length)) {
                return Optional.of(new PackReader.Piece(text, from, at));
            }
        }
        return Optional.empty();
    }

    /** Where the value ends that begins at a place. */
    static int end(byte[] text, int from, int to) {
        int at = from;
        int depth = 0;
        do {
            int c = text[at];
            if (c == '[' || c == '<' && text[at + 1] == '<') {
                depth++;
                at += c == '[' ? 1 : 2;
            } else if (c == ']' || c == '>') {
                depth--;
                at += c == ']' ? 1 : 2;
            } else if (c == '<') {
                at = stringEnd(text, at);
            } else if (c == '/') {
                at = wordEnd(text, at + 1, to);
            } else if (depth == 0) {
                at = wordEnd(text, at, to);
                return Moving.isReference(text, at, to) ? at + Moving.BEHIND_LENGTH : at;
            } else {
                at++;
            }
        } while (depth > 0);
        return at;
    }

    private static int stringEnd(byte[] text, int from) {
        int at = from;
        while (text[at] != '>') {
            at++;
        }
        return at + 1;
    }

    private static int wordEnd(byte[] text, int from, int to) {
        int at = from;
        while (at < to && !isBehindWord(text[at])) {
            at++;
        }
        return at;
    }

    private static boolean isBehindWord(int c) {
        return c == ' ' || c == '/' || c == '[' || c == ']' || c == '<' || c == '>';
    }

    /** Whether a value is a reference. */
    static boolean isReference(PackReader.Piece value) {
        return value.text()[value.to() - 1] == 'R' && isDigit(value.text()[value.from()]);
    }

    /** The whole number that a piece begins with. */
    static int number(PackReader.Piece piece) {
        int number = 0;
        for (int at = piece.from(); at < piece.to() && isDigit(piece.text()[at]); at++) {
            number = number * 10 + piece.text()[at] - '0';
        }
        return number;
    }

    private static boolean isDigit(int c) {
        return c >= '0' && c <= '9';
    }
}
