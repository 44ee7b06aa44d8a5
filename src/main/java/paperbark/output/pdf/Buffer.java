package paperbark.output.pdf;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** Bytes of a document as they grow. */
final class Buffer extends ByteArrayOutputStream {
    private static final long UNITS = 10_000;

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
        long whole = Math.abs(value) / UNITS;
        long part = Math.abs(value) % UNITS;
        if (value < 0) {
            write('-');
        }
        if (whole > 0 || part == 0) {
            number(whole);
        }
        if (part > 0) {
            write('.');
        }
        for (long unit = UNITS / 10; part > 0; unit /= 10) {
            write((int) ('0' + part / unit));
            part %= unit;
        }
        return this;
    }

    /** Adds bytes as a string in brackets. */
    Buffer string(byte[] bytes) {
        write('(');
        for (byte b : bytes) {
            if (b == '\r') {
                text("\\r");
                continue;
            }
            if (b == '(' || b == ')' || b == '\\') {
                write('\\');
            }
            write(b);
        }
        write(')');
        return this;
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
