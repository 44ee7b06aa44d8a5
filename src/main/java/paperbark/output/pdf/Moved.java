package paperbark.output.pdf;

import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/**
 * The objects of one pack on their way into a print run. Elements, pages and annotations keep their
 * order; of anything else, what the run has already is not written again.
 */
final class Moved implements Moving.Numbers {
    private static final int SHORT = 256;

    private final PackReader pack;
    private final DocumentWriter file;
    private final Taken taken;
    private final int kept;
    private final int base;
    private final Map<Integer, Integer> numbers = new HashMap<>();
    private final Set<Integer> open = new HashSet<>();

    /**
     * The objects of a pack.
     *
     * @param file the run
     * @param taken what the run has already
     */
    Moved(PackReader pack, DocumentWriter file, Taken taken) {
        this.pack = pack;
        this.file = file;
        this.taken = taken;
        int[] parts = pack.parts();
        kept = parts[0] + parts[1] + parts[2];
        base = file.reserve(kept) - 1;
    }

    /** The pack as it is. */
    PackReader pack() {
        return pack;
    }

    /** Lets an object of the run stand for one of the pack. */
    void replace(int old, int number) {
        numbers.put(old, number);
    }

    @Override
    public int of(int old) throws IOException {
        if (old <= kept) {
            return base + old;
        }
        Integer known = numbers.get(old);
        if (known == null && !open.add(old)) {
            // It holds itself: its number is needed before it is written.
            known = file.reserve(1);
            numbers.put(old, known);
        }
        if (known == null) {
            known = write(old);
            numbers.put(old, known);
        }
        return known;
    }

    private int write(int old) throws IOException {
        PackReader.Piece piece = pack.text(old);
        PackReader.Piece body = pack.isStream(old) ? pack.body(piece) : PackReader.Piece.EMPTY;
        Buffer text = new Buffer(SHORT);
        Moving.copy(piece, this, text);
        byte[] says = text.toByteArray();
        Integer asked = numbers.get(old);
        int before = asked == null ? taken.find(says, body) : 0;
        if (before > 0) {
            return before;
        }
        int number = asked == null ? file.reserve(1) : asked;
        taken.add(says, body, number);
        if (pack.isStream(old)) {
            file.stream(number, text, body);
        } else {
            file.object(number, text);
        }
        return number;
    }

    /** Writes an element, which keeps its place in the order. */
    void element(int old, Buffer text) throws IOException {
        text.reset();
        Moving.copy(pack.text(old), this, text);
        file.object(base + old, text);
    }

    /**
     * Writes a page or an annotation, which keeps its place in the order.
     *
     * @param key under which it has its number in the tree of parents
     * @param more how far that number is moved on
     */
    void place(int old, String key, int more, Buffer text) throws IOException {
        text.reset();
        PackReader.Piece piece = pack.text(old);
        PackReader.Piece rest = piece;
        Optional<PackReader.Piece> parent = Skim.value(piece, key);
        if (parent.isPresent()) {
            Moving.copy(piece.before(parent.get().from()), this, text);
            text.number(Skim.number(parent.get()) + more);
            rest = piece.behind(parent.get().to());
        }
        Moving.copy(rest, this, text);
        file.object(base + old, text);
    }

    /**
     * Adds pairs of a number in the tree of parents and what stands for it.
     *
     * @param pairs in brackets
     * @param more how far the numbers are moved on
     * @return the last number
     */
    int parents(PackReader.Piece pairs, int more, Buffer out) throws IOException {
        byte[] text = pairs.text();
        int last = 0;
        int copied = pairs.from();
        int at = copied + 1;
        while (text[at] != ']') {
            at = text[at] == ' ' ? at + 1 : at;
            last = Skim.number(pairs.behind(at)) + more;
            Moving.copy(pairs.before(at).behind(copied), this, out);
            out.number(last);
            copied = Skim.end(text, at, pairs.to());
            at = text[copied] == ' ' ? copied + 1 : copied;
            at = Skim.end(text, at, pairs.to());
        }
        Moving.copy(pairs.behind(copied), this, out);
        return last;
    }

    /** One of the objects that keep their order, to be changed and written by {@link #put}. */
    COSDictionary dictionary(int old) throws IOException {
        return (COSDictionary) moved(pack.object(old));
    }

    /** Writes one of the objects that keep their order, as it was changed. */
    void put(int old, COSDictionary changed, Buffer text) {
        text.reset();
        new ObjectText(text, object -> 0).write(changed);
        file.object(base + old, text);
    }

    /** The value with the run's numbers in place of the pack's. */
    COSBase moved(COSBase value) throws IOException {
        if (value instanceof Ref ref) {
            return new Ref(of(ref.number()));
        }
        if (value instanceof COSDictionary dictionary) {
            for (COSName key : List.copyOf(dictionary.keySet())) {
                dictionary.setItem(key, moved(dictionary.getItem(key)));
            }
        } else if (value instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                array.set(i, moved(array.get(i)));
            }
        }
        return value;
    }
}
