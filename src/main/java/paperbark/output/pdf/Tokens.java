package paperbark.output.pdf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNull;
import org.apache.pdfbox.cos.COSString;

/**
 * Takes the text of objects and page contents apart (ISO 32000-1, 7.2 and 7.3), as this program and
 * its libraries write it: without comments.
 */
final class Tokens {
    private final byte[] text;
    private final int end;
    private int at;

    /** The text from one place to another. */
    Tokens(byte[] text, int from, int end) {
        this.text = text;
        this.at = from;
        this.end = end;
    }

    /** Where the next token begins, behind white space. */
    int at() {
        while (at < end && isSpace(text[at])) {
            at++;
        }
        return at;
    }

    boolean hasNext() {
        return at() < end;
    }

    /** Where the last token ended. */
    int here() {
        return at;
    }

    /** Where the content of a stream begins, the dictionary being behind. */
    int behindStreamWord() {
        word();
        return at + 1;
    }

    /** Whether an object follows, and no operator. */
    boolean isObject() {
        int c = text[at()];
        return isNumber(c) || c == '/' || c == '(' || c == '<' || c == '[';
    }

    /** Whether a number follows. */
    boolean isNumber() {
        return isNumber(text[at()]);
    }

    /** The operator that follows. */
    String word() {
        int from = at();
        while (at < end && !isSpace(text[at]) && !isDelimiter(text[at])) {
            at++;
        }
        return Remembered.WORDS.of(text, from, at);
    }

    /** The object that follows; a reference is a {@link Ref}. */
    COSBase object() {
        int c = text[at()];
        if (c == '/') {
            return name();
        }
        if (c == '(') {
            return new COSString(bracketed());
        }
        if (c == '<') {
            return text[at + 1] == '<' ? dictionary() : new COSString(hex());
        }
        if (c == '[') {
            return array();
        }
        return isNumber(c) ? numberOrReference() : constant();
    }

    private COSBase constant() {
        String word = word();
        return switch (word) {
            case "true" -> COSBoolean.TRUE;
            case "false" -> COSBoolean.FALSE;
            case "null" -> COSNull.NULL;
            default -> throw new IllegalStateException("no object: " + word);
        };
    }

    private COSName name() {
        int from = ++at;
        boolean plain = true;
        for (; at < end && !isSpace(text[at]) && !isDelimiter(text[at]); at++) {
            plain &= text[at] != '#';
        }
        return plain ? Remembered.NAMES.of(text, from, at) : COSName.getPDFName(unescaped(from));
    }

    /** The name from a place to where its token ended. */
    private String unescaped(int from) {
        Buffer bytes = new Buffer(at - from);
        for (int i = from; i < at; i++) {
            if (text[i] == '#') {
                int high = Character.digit(text[++i], 16);
                bytes.write(high << 4 | Character.digit(text[++i], 16));
            } else {
                bytes.write(text[i]);
            }
        }
        return new String(bytes.toByteArray(), StandardCharsets.UTF_8);
    }

    private COSDictionary dictionary() {
        at += 2;
        COSDictionary dictionary = new COSDictionary();
        while (text[at()] != '>') {
            COSName key = name();
            dictionary.setItem(key, object());
        }
        at += 2;
        return dictionary;
    }

    private COSArray array() {
        at++;
        List<COSBase> values = new ArrayList<>();
        while (text[at()] != ']') {
            values.add(object());
        }
        at++;
        return new COSArray(values);
    }

    private COSBase numberOrReference() {
        int from = at;
        while (at < end && isNumber(text[at])) {
            if (text[at++] == '.') {
                return real(from);
            }
        }
        long number = whole(from);
        int behind = at;
        if (hasNext() && Character.isDigit(text[at])) {
            while (at < end && Character.isDigit(text[at])) {
                at++;
            }
            if (hasNext() && text[at] == 'R') {
                at++;
                return new Ref((int) number);
            }
        }
        at = behind;
        return COSInteger.get(number);
    }

    private COSFloat real(int from) {
        while (at < end && isNumber(text[at])) {
            at++;
        }
        return new COSFloat(
                Float.parseFloat(new String(text, from, at - from, StandardCharsets.US_ASCII)));
    }

    /** The whole number from a place to where its token ended. */
    private long whole(int from) {
        boolean signed = text[from] == '-' || text[from] == '+';
        long value = 0;
        for (int i = signed ? from + 1 : from; i < at; i++) {
            value = value * 10 + text[i] - '0';
        }
        return text[from] == '-' ? -value : value;
    }

    /** The number that follows. */
    double real() {
        int c = text[at()];
        boolean negative = c == '-';
        at += negative || c == '+' ? 1 : 0;
        long value = 0;
        double unit = 1;
        boolean behindPoint = false;
        for (; at < end && isNumber(text[at]); at++) {
            if (text[at] == '.') {
                behindPoint = true;
            } else {
                value = value * 10 + text[at] - '0';
                unit *= behindPoint ? 10 : 1;
            }
        }
        return (negative ? -value : value) / unit;
    }

    private byte[] hex() {
        at++;
        Buffer bytes = new Buffer(64);
        int high = -1;
        for (; text[at] != '>'; at++) {
            int digit = Character.digit(text[at], 16);
            if (digit >= 0 && high < 0) {
                high = digit;
            } else if (digit >= 0) {
                bytes.write(high << 4 | digit);
                high = -1;
            }
        }
        at++;
        if (high >= 0) {
            bytes.write(high << 4);
        }
        return bytes.toByteArray();
    }

    private byte[] bracketed() {
        int from = ++at;
        int depth = 0;
        for (; text[at] != ')' || depth > 0; at++) {
            int c = text[at];
            if (c == '\\') {
                return bracketed(from, depth);
            }
            depth += c == '(' ? 1 : c == ')' ? -1 : 0;
        }
        return Arrays.copyOfRange(text, from, at++);
    }

    /** The same with escapes from here on. */
    private byte[] bracketed(int from, int open) {
        Buffer bytes = new Buffer(2 * (at - from) + 16);
        bytes.write(text, from, at - from);
        int depth = open;
        for (; text[at] != ')' || depth > 0; at++) {
            int c = text[at];
            if (c == '\\') {
                bytes.write(escaped());
                continue;
            }
            depth += c == '(' ? 1 : c == ')' ? -1 : 0;
            bytes.write(c);
        }
        at++;
        return bytes.toByteArray();
    }

    private int escaped() {
        int c = text[++at];
        if (c >= '0' && c <= '7') {
            int value = 0;
            int to = Math.min(at + 3, end);
            for (; at < to && text[at] >= '0' && text[at] <= '7'; at++) {
                value = value * 8 + text[at] - '0';
            }
            at--;
            return value;
        }
        return switch (c) {
            case 'n' -> '\n';
            case 'r' -> '\r';
            case 't' -> '\t';
            case 'b' -> '\b';
            case 'f' -> '\f';
            default -> c;
        };
    }

    private static boolean isNumber(int c) {
        return c >= '0' && c <= '9' || c == '-' || c == '.' || c == '+';
    }

    private static boolean isSpace(int c) {
        return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == 0 || c == '\f';
    }

    private static boolean isDelimiter(int c) {
        return c == '/' || c == '<' || c == '>' || c == '[' || c == ']' || c == '(' || c == ')';
    }
}
