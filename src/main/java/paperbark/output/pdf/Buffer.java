package paperbark.output.pdf;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** Bytes of a document as they grow. */
final class Buffer extends ByteArrayOutputStream {
    private static final long UNITS = 10_000;
    private static final long HUNDREDTHS = 100;

    Buffer() {
        this(1024);
    }

    /** A buffer for about so many bytes. */
    Buffer(int size) {
        super(size);
    }

    /** Adds plain text. */
    Buffer text(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        write(bytes, 0, bytes.length);
        return this;
    }

    /** Adds a whole number. */
    Buffer number(long number) {
        return text(Long.toString(number));
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
    Buffer hex(byte[] bytes) {
        write('<');
        for (byte b : bytes) {
            write(Character.forDigit(b >> 4 & 15, 16));
            write(Character.forDigit(b & 15, 16));
        }
        write('>');
        return this;
    }

    /** The last byte, or 0 of an empty buffer. */
    int last() {
        return count == 0 ? 0 : buf[count - 1];
    }
}
