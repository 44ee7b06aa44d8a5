package paperbark.output.pdf;

import java.io.IOException;

/** Copies the text of an object with the numbers of those that it refers to exchanged. */
final class Moving {
    private static final byte[] BEHIND = {' ', '0', ' ', 'R'};
    static final int BEHIND_LENGTH = BEHIND.length;

    /** The new number of an object. */
    interface Numbers {
        /** The number that takes the place of an old one. */
        int of(int old) throws IOException;
    }

    private Moving() {}

    /** Adds the text with new numbers; strings in it are hexadecimal digits. */
    static void copy(PackReader.Piece piece, Numbers numbers, Buffer out) throws IOException {
        byte[] text = piece.text();
        int at = piece.from();
        int copied = at;
        while (at < piece.to()) {
            int c = text[at];
            if (c == '<' && text[at + 1] != '<') {
                while (text[at] != '>') {
                    at++;
                }
            } else if (c == '<') {
                at++;
            } else if (c >= '0' && c <= '9') {
                int from = at;
                int number = 0;
                for (; at < piece.to() && text[at] >= '0' && text[at] <= '9'; at++) {
                    number = number * 10 + text[at] - '0';
                }
                if (isReference(text, at, piece.to())) {
                    out.write(text, copied, from - copied);
                    out.number(numbers.of(number));
                    copied = at;
                    at += BEHIND.length;
                }
                continue;
            }
            at++;
        }
        out.write(text, copied, piece.to() - copied);
    }

    /** Whether what follows a number makes it a reference. */
    static boolean isReference(byte[] text, int at, int to) {
        if (at + BEHIND.length > to) {
            return false;
        }
        for (int i = 0; i < BEHIND.length; i++) {
            if (text[at + i] != BEHIND[i]) {
                return false;
            }
        }
        return true;
    }
}
