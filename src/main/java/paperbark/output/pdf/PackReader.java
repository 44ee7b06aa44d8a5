package paperbark.output.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/** The objects of a document that {@link PackWriter} wrote, found without reading all of it. */
final class PackReader {
    private static final COSName PARTS = COSName.getPDFName(DocumentWriter.PARTS);
    private static final int TAIL = 64;
    private static final int ROW = DocumentWriter.ROW;

    private final byte[] pdf;
    private final COSDictionary trailer;
    private final byte[] places;
    private final Map<Integer, Group> groups = new HashMap<>();

    /** Objects that were packed together. */
    private record Group(byte[] text, int[] starts) {}

    /** A piece of the document. */
    record Piece(byte[] text, int from, int to) {}

    private PackReader(byte[] pdf, COSDictionary trailer, byte[] places) {
        this.pdf = pdf;
        this.trailer = trailer;
        this.places = places;
    }

    /**
     * Opens a document.
     *
     * @throws IOException when it is none that this program wrote in this way
     */
    static PackReader of(byte[] pdf) throws IOException {
        int tail = Math.max(0, pdf.length - TAIL);
        String end = new String(pdf, tail, pdf.length - tail, StandardCharsets.ISO_8859_1);
        int at = end.lastIndexOf("startxref\n");
        int stop = end.indexOf('\n', at + 10);
        if (at < 0 || stop < 0) {
            throw new IOException("another program wrote it");
        }
        try {
            Tokens tokens =
                    new Tokens(pdf, Integer.parseInt(end.substring(at + 10, stop)), pdf.length);
            tokens.object();
            tokens.object();
            tokens.word();
            COSDictionary trailer = (COSDictionary) tokens.object();
            if (!trailer.containsKey(PARTS)) {
                throw new IOException("another program wrote it");
            }
            return new PackReader(pdf, trailer, places(inflated(pdf, tokens.behindStreamWord())));
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

    private static byte[] inflated(byte[] pdf, int from) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new InflaterInputStream(new ByteArrayInputStream(pdf, from, pdf.length - from))
                .transferTo(out);
        return out.toByteArray();
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

    /** The object with a number; of a stream its dictionary. */
    COSBase object(int number) throws IOException {
        Piece piece = text(number);
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
            Tokens tokens = new Tokens(pdf, where, pdf.length);
            tokens.object();
            tokens.object();
            tokens.word();
            int from = tokens.at();
            tokens.object();
            return new Piece(pdf, from, tokens.here());
        }
        Group group = group(where);
        int index = (places[number * ROW + 5] & 0xFF) << 8 | places[number * ROW + 6] & 0xFF;
        // Each object ends with a line feed.
        return new Piece(group.text(), group.starts()[index], group.starts()[index + 1] - 1);
    }

    /** The content of a stream as it lies there. */
    byte[] body(int number) throws IOException {
        Piece dictionary = text(number);
        Tokens tokens = new Tokens(pdf, dictionary.to(), pdf.length);
        int from = tokens.behindStreamWord();
        int length = ((COSDictionary) object(number)).getInt(COSName.LENGTH);
        return Arrays.copyOfRange(pdf, from, from + length);
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
            COSDictionary says = (COSDictionary) object(number);
            Piece dictionary = text(number);
            int from = new Tokens(pdf, dictionary.to(), pdf.length).behindStreamWord();
            byte[] text = inflated(pdf, from);
            int count = says.getInt(COSName.N);
            int first = says.getInt(COSName.FIRST);
            int[] starts = new int[count + 1];
            Tokens heads = new Tokens(text, 0, first);
            for (int i = 0; i < count; i++) {
                heads.real();
                starts[i] = first + (int) heads.real();
            }
            starts[count] = text.length;
            known = new Group(text, starts);
            groups.put(number, known);
        }
        return known;
    }
}
