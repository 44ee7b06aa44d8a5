package paperbark.output.pdf;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.apache.pdfbox.cos.COSName;

/**
 * What short texts stand for: the same few stand on all pages, and are not made anew each time.
 * Safe for use by several threads, none of which waits for another.
 */
final class Remembered<T> {
    /** Operators. */
    static final Remembered<String> WORDS =
            new Remembered<>(
                    (text, from, to) ->
                            new String(text, from, to - from, StandardCharsets.ISO_8859_1));

    /** Names without escapes in them. */
    static final Remembered<COSName> NAMES =
            new Remembered<>(
                    (text, from, to) ->
                            COSName.getPDFName(
                                    new String(text, from, to - from, StandardCharsets.UTF_8)));

    // A power of two; a page has some hundred.
    private static final int PLACES = 1024;

    private final Object[] entries = new Object[PLACES];
    private final Making<T> making;

    /** Makes something of a part of a text. */
    interface Making<T> {
        /** What the text from one place to another stands for; nothing changes it. */
        T of(byte[] text, int from, int to);
    }

    private record Entry(byte[] text, Object made) {}

    Remembered(Making<T> making) {
        this.making = making;
    }

    /** What the text from one place to another stands for. */
    // An entry is of T: nothing else is put in.
    @SuppressWarnings("unchecked")
    T of(byte[] text, int from, int to) {
        int hash = 0;
        for (int i = from; i < to; i++) {
            hash = 31 * hash + text[i];
        }
        int place = (hash ^ hash >>> 10) & PLACES - 1;
        Entry known = (Entry) entries[place];
        if (known != null && Arrays.equals(known.text(), 0, known.text().length, text, from, to)) {
            return (T) known.made();
        }
        T made = making.of(text, from, to);
        entries[place] = new Entry(Arrays.copyOfRange(text, from, to), made);
        return made;
    }
}
