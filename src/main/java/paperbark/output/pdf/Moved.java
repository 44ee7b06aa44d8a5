package paperbark.output.pdf;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
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
    private final PackReader pack;
    private final DocumentWriter file;
    private final Map<ByteBuffer, Integer> written;
    private final int kept;
    private final int base;
    private final Map<Integer, Integer> numbers = new HashMap<>();
    private final Set<Integer> open = new HashSet<>();

    /**
     * The objects of a pack.
     *
     * @param file the run
     * @param written the numbers of what the run has, by digest
     */
    Moved(PackReader pack, DocumentWriter file, Map<ByteBuffer, Integer> written) {
        this.pack = pack;
        this.file = file;
        this.written = written;
        int[] parts = pack.parts();
        kept = parts[0] + parts[1] + parts[2];
        base = file.reserve(kept) - 1;
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
        Buffer text = new Buffer();
        Moving.copy(pack.text(old), this, text);
        byte[] says = text.toByteArray();
        byte[] body = pack.isStream(old) ? pack.body(old) : new byte[0];
        ByteBuffer digest = digest(says, body);
        Integer asked = numbers.get(old);
        Integer before = asked == null ? written.get(digest) : null;
        if (before != null) {
            return before;
        }
        int number = asked == null ? file.reserve(1) : asked;
        written.put(digest, number);
        if (pack.isStream(old)) {
            file.stream(number, says, body);
        } else {
            file.object(number, text);
        }
        return number;
    }

    private static ByteBuffer digest(byte[] says, byte[] body) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(says);
            return ByteBuffer.wrap(digest.digest(body));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Writes one of the objects that keep their order. */
    void take(int old, Buffer text) throws IOException {
        text.reset();
        Moving.copy(pack.text(old), this, text);
        file.object(base + old, text);
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
