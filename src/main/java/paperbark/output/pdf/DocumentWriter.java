package paperbark.output.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;

/**
 * Writes a document from front to back: streams as they come, everything else packed into object
 * streams, and the list of places at the end (ISO 32000-1, 7.5.7 and 7.5.8). What was written is
 * not kept but for its place, so a document may be larger than the memory.
 */
final class DocumentWriter {
    private static final String HEAD = "%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n";

    /** What stands between the dictionary of a stream and its content. */
    static final String STREAM = "stream\n";

    private static final Buffer END = new Buffer().text("\nendstream\nendobj\n");

    /** Tells in the trailer how many elements, pages and annotations have the first numbers. */
    static final String PARTS = "PaperbarkParts";

    // A place is four bytes, so a document has less than two gigabytes.
    static final int ROW = 7;

    private final OutputStream out;
    private final Buffer head = new Buffer();
    private long at;
    private byte[] places = new byte[ROW * 1024];
    private int last;

    // The group of objects that is being packed.
    private final Buffer heads = new Buffer();
    private final Buffer bodies = new Buffer();
    private int packed;
    private int packNumber;

    /** Begins a document. The stream is left open. */
    DocumentWriter(OutputStream out) throws IOException {
        this.out = out;
        raw(new Buffer().text(HEAD));
        // Number 0 is free, as in every document.
        places[5] = places[6] = (byte) 0xFF;
    }

    /** Takes so many numbers in a row, and gives the first. */
    int reserve(int count) {
        int first = last + 1;
        last += count;
        if (places.length < (last + 1) * ROW) {
            places = Arrays.copyOf(places, Math.max(places.length * 2, (last + 1) * ROW));
        }
        return first;
    }

    /** Writes a stream. */
    void stream(int number, Buffer dictionary, byte[] body) throws IOException {
        stream(number, dictionary, new PackReader.Piece(body, 0, body.length));
    }

    /** Writes a stream whose content is a piece of another document. */
    void stream(int number, Buffer dictionary, PackReader.Piece body) throws IOException {
        place(number, 1, at, 0);
        head.reset();
        raw(head.number(number).text(" 0 obj\n").all(dictionary).text(STREAM));
        out.write(body.text(), body.from(), body.length());
        at += body.length();
        raw(END);
    }

    /** Packs an object that is no stream into the group that ends with {@link #endGroup}. */
    void object(int number, Buffer text) {
        if (packed == 0) {
            packNumber = reserve(1);
        }
        place(number, 2, packNumber, packed++);
        heads.number(number).write(' ');
        heads.number(bodies.size()).write(' ');
        bodies.all(text).write('\n');
    }

    /** Writes what was packed since the last group. */
    void endGroup() throws IOException {
        if (packed > 0) {
            int first = heads.size();
            byte[] body = Deflated.of(heads.all(bodies).toByteArray());
            Buffer dictionary = new Buffer();
            dictionary.text("<</Type/ObjStm/N ").number(packed).text("/First ").number(first);
            dictionary.text("/Filter/FlateDecode/Length ").number(body.length).text(">>");
            stream(packNumber, dictionary, body);
            heads.reset();
            bodies.reset();
            packed = 0;
        }
    }

    /**
     * Ends the document.
     *
     * @param root the number of its catalog
     * @param information the number of what it says of itself
     * @param id sixteen bytes
     * @param parts how many elements, pages and annotations have the first numbers; none if empty
     */
    void finish(int root, int information, byte[] id, int[] parts) throws IOException {
        endGroup();
        int number = reserve(1);
        long start = at;
        place(number, 1, start, 0);
        byte[] body = Deflated.of(differences());
        Buffer dictionary = new Buffer();
        dictionary.text("<</Type/XRef/W[1 4 2]/DecodeParms<</Predictor 12/Columns 7>>");
        dictionary.text("/Filter/FlateDecode/Size ").number(last + 1);
        dictionary.text("/Root ").number(root).text(" 0 R/Info ").number(information);
        dictionary.text(" 0 R/ID[").hex(id).hex(id).text("]");
        if (parts.length > 0) {
            dictionary.text("/").text(PARTS).text(Arrays.toString(parts).replace(",", ""));
        }
        dictionary.text("/Length ").number(body.length);
        stream(number, dictionary.text(">>"), body);
        raw(new Buffer().text("startxref\n").number(start).text("\n%%EOF\n"));
    }

    /** Each row as what it differs from the one before, of which little is left when deflated. */
    private byte[] differences() {
        byte[] rows = new byte[(last + 1) * (ROW + 1)];
        for (int row = 0; row <= last; row++) {
            rows[row * (ROW + 1)] = 2;
            for (int i = 0; i < ROW; i++) {
                int before = row == 0 ? 0 : places[(row - 1) * ROW + i];
                rows[row * (ROW + 1) + 1 + i] = (byte) (places[row * ROW + i] - before);
            }
        }
        return rows;
    }

    private void place(int number, int kind, long where, int index) {
        if (where > Integer.MAX_VALUE) {
            throw new IllegalStateException("a document of more than two gigabytes");
        }
        int row = number * ROW;
        places[row] = (byte) kind;
        for (int i = 0; i < 4; i++) {
            places[row + 1 + i] = (byte) (where >> 8 * (3 - i));
        }
        places[row + 5] = (byte) (index >> 8);
        places[row + 6] = (byte) index;
    }

    private void raw(Buffer bytes) throws IOException {
        bytes.to(out);
        at += bytes.size();
    }
}
