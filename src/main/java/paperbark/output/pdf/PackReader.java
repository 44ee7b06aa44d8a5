package paperbark.output.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/** The objects of a document that {@link PackWriter} wrote, found without reading all of it. */
public final class PackReader {
    private static final COSName PARTS = COSName.getPDFName(DocumentWriter.PARTS);
    private static final int TAIL = 64;

    // How much longer the text of objects is than what it is deflated to.
    private static final int LIKELY = 6;
    private static final int ROW = DocumentWriter.ROW;

    private final byte[] pdf;
    private final COSDictionary trailer;
    private final COSDictionary catalog;
    private final byte[] places;
    private final Map<Integer, Group> groups = new HashMap<>();

    /** Objects that were packed together. */
    private record Group(byte[] text, int[] starts) {}

    /** A piece of the document. */
    record Piece(byte[] text, int from, int to) {
        static final Piece EMPTY = new Piece(new byte[0], 0, 0);

        int length() {
            return to - from;
        }

        /** What is before a place. */
        Piece before(int place) {
            return new Piece(text, from, place);
        }

        /** What is from a place on. */
        Piece behind(int place) {
            return new Piece(text, place, to);
        }
    }

    private PackReader(byte[] pdf, COSDictionary trailer, byte[] places) throws IOException {
        this.pdf = pdf;
        this.trailer = trailer;
        this.places = places;
        this.catalog = (COSDictionary) object(root(COSName.ROOT));
    }

    /**
     * Opens a document that can be added as it is: this program wrote it, and nothing in it acts.
     *
     * @return empty where it has to be written anew
     */
    public static Optional<PackReader> ofStill(byte[] pdf) {
        try {
            return Optional.of(of(pdf)).filter(p -> !p.catalog.containsKey(COSName.ACRO_FORM));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /**
     * Opens a document.
     *
     * @throws IOException when it is none that this program wrote in this way
     */
    private static PackReader of(byte[] pdf) throws IOException {
        int tail = Math.max(0, pdf.length - TAIL);
        String end = new String(pdf, tail, pdf.length - tail, StandardCharsets.ISO_8859_1);
        int at = end.lastIndexOf("startxref\n");
        int stop = end.indexOf('\n', at + 10);
        if (at < 0 || stop < 0) {
            throw new IOException("another program wrote it");
        }
        try {
            int start = Integer.parseInt(end.substring(at + 10, stop));
            Tokens tokens = new Tokens(pdf, start, pdf.length);
            tokens.object();
            tokens.object();
            tokens.word();
            COSDictionary trailer = (COSDictionary) tokens.object();
            if (!trailer.containsKey(PARTS)) {
                throw new IOException("another program wrote it");
            }
            int length = trailer.getInt(COSName.SIZE) * (ROW + 1);
            byte[] rows = Inflated.of(pdf, tokens.behindStreamWord(), length);
            return new PackReader(pdf, trailer, places(rows));
        } catch (RuntimeException e) {
            throw new IOException("another program wrote it", e);
        }
    }

    private static byte[] places(byte[] differences) {
        int rows = differences.length / (ROW + 1);
        byte[] places = new byte[rows * ROW];
        for (int row = 0; row < rows; row++) {
            for (int i = 0; i < ROW; i++) {
                int before = row == 0 ? 0 : places[(row - 1) * ROW + i];
                places[row * ROW + i] = (byte) (differences[row * (ROW + 1) + 1 + i] + before);
            }
        }
        return places;
    }

    /** How many elements, pages and annotations the document begins with: three numbers. */
    int[] parts() {
        COSArray parts = trailer.getCOSArray(PARTS);
        return new int[] {parts.getInt(0), parts.getInt(1), parts.getInt(2)};
    }

    /** The number of an object that the trailer names. */
    int root(COSName name) {
        return ((Ref) trailer.getItem(name)).number();
    }

    boolean isStream(int number) {
        return places[number * ROW] == 1;
    }

    /** What the document begins from. */
    COSDictionary catalog() {
        return catalog;
    }

    /** The object with a number; of a stream its dictionary. */
    COSBase object(int number) throws IOException {
        return object(text(number));
    }

    /** The object of a text. */
    static COSBase object(Piece piece) {
        return new Tokens(piece.text(), piece.from(), piece.to()).object();
    }

    /** What a value stands for: itself, or the object that it refers to. */
    COSBase object(COSBase value) throws IOException {
        return value instanceof Ref ref ? object(ref.number()) : value;
    }

    /** The dictionary below a name, or an empty one. */
    COSDictionary dictionary(COSDictionary of, COSName name) throws IOException {
        return object(of.getItem(name)) instanceof COSDictionary found
                ? found
                : new COSDictionary();
    }

    /** The text of an object; of a stream that of its dictionary. */
    Piece text(int number) throws IOException {
        int where = where(number);
        if (isStream(number)) {
            int from = where;
            while (pdf[from] != '\n') {
                from++;
            }
            return new Piece(pdf, from + 1, Skim.end(pdf, from + 1, pdf.length));
        }
        Group group = group(where);
        int index = (places[number * ROW + 5] & 0xFF) << 8 | places[number * ROW + 6] & 0xFF;
        // Each object ends with a line feed.
        return new Piece(group.text(), group.starts()[index], group.starts()[index + 1] - 1);
    }

    /** What lies under a name, which may be an object of its own. */
    Optional<Piece> held(Piece dictionary, String name) throws IOException {
        Optional<Piece> value = Skim.value(dictionary, name);
        boolean elsewhere = value.isPresent() && Skim.isReference(value.get());
        return elsewhere ? Optional.of(text(Skim.number(value.get()))) : value;
    }

    /** The content of a stream as it lies there. */
    Piece body(Piece dictionary) throws IOException {
        int from = dictionary.to() + DocumentWriter.STREAM.length();
        return new Piece(pdf, from, from + number(dictionary, "Length"));
    }

    private static int number(Piece dictionary, String name) throws IOException {
        return Skim.number(
                Skim.value(dictionary, name)
                        .orElseThrow(() -> new IOException("a stream without " + name)));
    }

    private int where(int number) {
        int where = 0;
        for (int i = 1; i <= 4; i++) {
            where = where << 8 | places[number * ROW + i] & 0xFF;
        }
        return where;
    }

    private Group group(int number) throws IOException {
        Group known = groups.get(number);
        if (known == null) {
            Piece dictionary = text(number);
            Piece body = body(dictionary);
            byte[] text = Inflated.of(pdf, body.from(), LIKELY * (body.to() - body.from()));
            known =
                    new Group(
                            text,
                            starts(text, number(dictionary, "N"), number(dictionary, "First")));
            groups.put(number, known);
        }
        return known;
    }

    /**
     * Where each object begins and the last one ends; before them are pairs of number and place.
     */
    private static int[] starts(byte[] text, int count, int first) {
        int[] starts = new int[count + 1];
        int at = 0;
        for (int i = 0; i < count; i++) {
            while (text[at] != ' ') {
                at++;
            }
            at++;
            int place = 0;
            for (; text[at] != ' '; at++) {
                place = place * 10 + text[at] - '0';
            }
            at++;
            starts[i] = first + place;
        }
        starts[count] = text.length;
        return starts;
    }
}
