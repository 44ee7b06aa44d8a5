package paperbark.output.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Bytes of a document as they grow. For one thread alone: the stream of the library locks itself
 * for every byte, which takes longer than to write it.
 */
final class Buffer extends OutputStream {
    private static final long UNITS = 10_000;
    private static final long HUNDREDTHS = 100;

    // Times this and so many bits to the right is a tenth: a processor divides slowly.
    private static final long TENTH = 0xCCCC_CCCDL;
    private static final int TENTH_BITS = 35;

    private byte[] bytes;
    private int count;

    Buffer() {
        this(1024);
    }

    /** A buffer for about so many bytes. */
    Buffer(int size) {
        bytes = new byte[size];
    }

    @Override
    public void write(int letter) {
        room(1);
        bytes[count++] = (byte) letter;
    }

    @Override
    public void write(byte[] from, int start, int length) {
        room(length);
        System.arraycopy(from, start, bytes, count, length);
        count += length;
    }

    private void room(int more) {
        if (count + more > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, count + more));
        }
    }

    /** How many bytes there are. */
    int size() {
        return count;
    }

    /** Takes all bytes away. */
    void reset() {
        count = 0;
    }

    /** The bytes, which are the caller's own. */
    byte[] toByteArray() {
        return Arrays.copyOf(bytes, count);
    }

    /** Writes the bytes elsewhere. */
    void to(OutputStream out) throws IOException {
        out.write(bytes, 0, count);
    }

    /** Adds what another buffer holds. */
    Buffer all(Buffer other) {
        write(other.bytes, 0, other.count);
        return this;
    }

    /**
     * Adds all bytes of a stream.
     *
     * @param about how many they are
     */
    Buffer all(InputStream from, long about) throws IOException {
        room((int) about + 1);
        for (int read = 0; read >= 0; ) {
            room(1);
            read = from.read(bytes, count, bytes.length - count);
            count += Math.max(0, read);
        }
        return this;
    }

    /** The bytes as letters, one each. */
    @Override
    public String toString() {
        return new String(bytes, 0, count, StandardCharsets.ISO_8859_1);
    }

    /** Adds plain text, a byte a letter. */
    Buffer text(String text) {
        int length = text.length();
        room(length);
        for (int i = 0; i < length; i++) {
            bytes[count + i] = (byte) text.charAt(i);
        }
        count += length;
        return this;
    }

    /** Adds a whole number. */
    Buffer number(long number) {
        if (number < 0 || number > Integer.MAX_VALUE) {
            return text(Long.toString(number));
        }
        int digits = 1;
        for (long ten = 10; number >= ten; ten *= 10) {
            digits++;
        }
        room(digits);
        count += digits;
        long rest = number;
        for (int i = 1; i <= digits; i++) {
            long tenth = rest * TENTH >>> TENTH_BITS;
            bytes[count - i] = (byte) ('0' + rest - tenth * 10);
            rest = tenth;
        }
        return this;
    }

    /** Adds a length, given in {@link Unit}s, in points and as short as it can be written. */
    Buffer length(long value) {
        return decimal(value, UNITS);
    }

    /** Adds a length in the unit of the layout, to a hundredth of it. */
    Buffer layout(long value) {
        return Unit.isWhole(value)
                ? number(value / Unit.OF_THE_LAYOUT)
                : decimal(Math.round(value * HUNDREDTHS / (double) Unit.OF_THE_LAYOUT), HUNDREDTHS);
    }

    /** Adds a number of parts, of which a power of ten make one, as short as it can be written. */
    private Buffer decimal(long value, long one) {
        long whole = Math.abs(value) / one;
        long part = Math.abs(value) % one;
        if (value < 0) {
            write('-');
        }
        if (whole > 0 || part == 0) {
            number(whole);
        }
        if (part > 0) {
            write('.');
        }
        for (long unit = one / 10; part > 0; unit /= 10) {
            write((int) ('0' + part / unit));
            part %= unit;
        }
        return this;
    }

    /** Adds glyph numbers, two bytes each, as a string in brackets that names them. */
    Buffer string(byte[] glyphs) {
        write('(');
        for (int i = 0; i + 1 < glyphs.length; i += 2) {
            int glyph = (glyphs[i] & 0xFF) << 8 | glyphs[i + 1] & 0xFF;
            int code = Codes.of(glyph);
            if (!Codes.isLetter(glyph)) {
                escaped(code >> 8);
            }
            escaped(code & 0xFF);
        }
        write(')');
        return this;
    }

    private void escaped(int letter) {
        if (letter == '\r') {
            text("\\r");
            return;
        }
        if (letter == '(' || letter == ')' || letter == '\\') {
            write('\\');
        }
        write(letter);
    }

    /** Adds bytes as a string of hexadecimal digits. */
    Buffer hex(byte[] string) {
        write('<');
        for (byte b : string) {
            write(Character.forDigit(b >> 4 & 15, 16));
            write(Character.forDigit(b & 15, 16));
        }
        write('>');
        return this;
    }

    /** The last byte, or 0 of an empty buffer. */
    int last() {
        return count == 0 ? 0 : bytes[count - 1];
    }
}
