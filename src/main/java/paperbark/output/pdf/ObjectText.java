package paperbark.output.pdf;

import java.math.BigDecimal;
import java.util.Map;
import java.util.function.ToIntFunction;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNull;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSString;

/**
 * Writes objects as text, with no space that could be left out (ISO 32000-1, 7.3). Strings go as
 * hexadecimal digits, so that a reference is never mistaken inside one.
 */
final class ObjectText {
    private static final String DELIMITERS = "()<>[]{}/%";
    // Which letters a name may have as they are.
    private static final boolean[] PLAIN = plain();

    private final Buffer out;
    private final ToIntFunction<COSBase> numbers;

    /**
     * A writer.
     *
     * @param numbers the number of an object that is written elsewhere, or 0
     */
    ObjectText(Buffer out, ToIntFunction<COSBase> numbers) {
        this.out = out;
        this.numbers = numbers;
    }

    private static boolean[] plain() {
        boolean[] plain = new boolean['~' + 1];
        for (int c = ' ' + 1; c < plain.length; c++) {
            plain[c] = c != '#' && DELIMITERS.indexOf(c) < 0;
        }
        return plain;
    }

    /** Writes the object itself, and what it holds by number where it has one. */
    void write(COSBase value) {
        if (value instanceof COSDictionary dictionary) {
            dictionary(dictionary);
        } else if (value instanceof COSArray array) {
            array(array);
        } else if (value instanceof COSName name) {
            name(name.getBytes());
        } else if (value instanceof COSString string) {
            out.hex(string.getBytes());
        } else if (value instanceof COSInteger integer) {
            separated();
            out.number(integer.longValue());
        } else if (value instanceof COSFloat number) {
            real(number);
        } else if (value instanceof COSBoolean truth) {
            spaced(Boolean.toString(truth.getValue()));
        } else {
            spaced("null");
        }
    }

    private void held(COSBase value) {
        COSBase direct = value instanceof COSObject object ? object.getObject() : value;
        int number =
                direct instanceof Ref ref
                        ? ref.number()
                        : direct instanceof COSDictionary ? numbers.applyAsInt(direct) : 0;
        if (number > 0) {
            separated();
            out.number(number).text(" 0 R");
        } else {
            write(direct);
        }
    }

    /** The entries of a dictionary, the body of a stream left out. */
    private void dictionary(COSDictionary dictionary) {
        out.text("<<");
        for (Map.Entry<COSName, COSBase> entry : dictionary.entrySet()) {
            if (!isNothing(entry.getValue())) {
                name(entry.getKey().getBytes());
                held(entry.getValue());
            }
        }
        out.text(">>");
    }

    private static boolean isNothing(COSBase value) {
        COSBase direct = value instanceof COSObject object ? object.getObject() : value;
        return direct == null || direct instanceof COSNull;
    }

    private void array(COSArray array) {
        out.write('[');
        for (COSBase value : array) {
            held(value);
        }
        out.write(']');
    }

    private void name(byte[] name) {
        out.write('/');
        if (isPlain(name)) {
            out.write(name, 0, name.length);
            return;
        }
        for (byte b : name) {
            int c = b & 0xFF;
            if (isPlain(c)) {
                out.write(c);
            } else {
                out.text(String.format("#%02X", c));
            }
        }
    }

    private static boolean isPlain(byte[] name) {
        for (byte b : name) {
            if (!isPlain(b & 0xFF)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isPlain(int c) {
        return c < PLAIN.length && PLAIN[c];
    }

    private void real(COSFloat number) {
        spaced(new BigDecimal(Float.toString(number.floatValue())).toPlainString());
    }

    private void spaced(String word) {
        separated();
        out.text(word);
    }

    private void separated() {
        if (DELIMITERS.indexOf(out.last()) < 0) {
            out.write(' ');
        }
    }
}
