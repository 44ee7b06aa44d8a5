package paperbark.output.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;

/**
 * Writes objects that hold one another. A dictionary gets a number of its own when more than one
 * place holds it or the standard asks for one; whatever else a single place holds is written there,
 * which are most of the objects that a layout makes.
 */
final class GraphWriter {
    private static final Set<String> NUMBERED =
            Set.of("Catalog", "Pages", "Page", "Annot", "Font", "FontDescriptor", "StructTreeRoot");
    private static final Integer ONCE = 0;
    private static final Integer OFTEN = -1;

    private final DocumentWriter out;
    // 0 for what was seen once, -1 for what needs a number, above 0 its number.
    private final Map<COSBase, Integer> seen = new IdentityHashMap<>();
    private final Buffer text = new Buffer();
    private final ObjectText writer = new ObjectText(text, this::numberOf);

    GraphWriter(DocumentWriter out) {
        this.out = out;
    }

    /** Gives these objects the next numbers, in this order; returns how many it took. */
    int number(List<COSDictionary> objects) {
        int first = out.reserve(0);
        for (COSDictionary object : objects) {
            seen.put(object, out.reserve(count(object)));
        }
        return out.reserve(0) - first;
    }

    private static int count(COSDictionary object) {
        return object instanceof KnownElement known ? known.count() : 1;
    }

    /** Gives an object a number that was reserved for it. */
    void number(COSDictionary object, int number) {
        seen.put(object, number);
    }

    /** Writes these objects, which have numbers, as a group, and nothing that they hold. */
    void writeGroup(List<COSDictionary> objects) throws IOException {
        for (COSDictionary object : objects) {
            writeObject(object);
        }
        out.endGroup();
    }

    /** Finds out what below these objects needs a number, and writes all of it and them. */
    void writeAll(List<? extends COSDictionary> roots, List<COSDictionary> writtenAlready)
            throws IOException {
        List<COSBase> found = new ArrayList<>();
        Deque<COSBase> open = new ArrayDeque<>();
        writtenAlready.forEach(open::add);
        roots.forEach(open::add);
        roots.forEach(root -> seen.putIfAbsent(root, OFTEN));
        List<COSBase> containers = new ArrayList<>();
        Map<COSBase, Boolean> walked = new IdentityHashMap<>();
        while (!open.isEmpty()) {
            COSBase object = open.poll();
            if (walked.put(object, true) == null) {
                containers.add(object);
                held(object, child -> count(child, open));
            }
        }
        Map<COSBase, Boolean> done = new IdentityHashMap<>();
        writtenAlready.forEach(object -> done.put(object, true));
        for (COSBase object : containers) {
            int state = seen.getOrDefault(object, ONCE);
            if (state < 0) {
                seen.put(object, out.reserve(1));
            }
            if (state != 0 && done.put(object, true) == null) {
                found.add(object);
            }
        }
        write(found);
    }

    private void write(List<COSBase> found) throws IOException {
        for (COSBase object : found) {
            if (!(object instanceof COSStream)) {
                writeObject(object);
            }
        }
        out.endGroup();
        for (COSBase object : found) {
            if (object instanceof COSStream stream) {
                writeStream(stream);
            }
        }
    }

    /** The number of an object that has one, or 0. */
    int numberOf(COSBase object) {
        return Math.max(0, seen.getOrDefault(object, ONCE));
    }

    private void count(COSBase child, Deque<COSBase> open) {
        Integer before = seen.get(child);
        if (before == null) {
            seen.put(child, needsNumber(child) ? OFTEN : ONCE);
            open.add(child);
        } else if (before.equals(ONCE) && child instanceof COSDictionary) {
            seen.put(child, OFTEN);
        } else {
            open.add(child);
        }
    }

    private static boolean needsNumber(COSBase object) {
        return object instanceof COSStream
                || object instanceof COSDictionary dictionary
                        && (isElement(dictionary)
                                || NUMBERED.contains(dictionary.getNameAsString(COSName.TYPE, "")));
    }

    /** Whether it is an element of a structure tree. */
    static boolean isElement(COSDictionary dictionary) {
        return dictionary.containsKey(COSName.S) && dictionary.containsKey(COSName.P);
    }

    private static void held(COSBase object, Consumer<COSBase> each) {
        if (object instanceof COSDictionary dictionary) {
            for (COSBase value : dictionary.getValues()) {
                container(value, each);
            }
        } else if (object instanceof COSArray array) {
            for (COSBase value : array) {
                container(value, each);
            }
        }
    }

    private static void container(COSBase value, Consumer<COSBase> each) {
        COSBase direct = value instanceof COSObject object ? object.getObject() : value;
        if (direct instanceof COSDictionary || direct instanceof COSArray) {
            each.accept(direct);
        }
    }

    private void write(KnownElement known) {
        int number = seen.get(known);
        int parent = numberOf(known.getItem(COSName.P));
        for (int i = 0; i < known.count(); i++) {
            text.reset();
            known.elements().get(i).write(number, parent, page -> numberOf(known.page(page)), text);
            out.object(number + i, text);
        }
    }

    private void writeObject(COSBase object) {
        if (object instanceof KnownElement known) {
            write(known);
            return;
        }
        text.reset();
        writer.write(object);
        out.object(seen.get(object), text);
    }

    private void writeStream(COSStream stream) throws IOException {
        Buffer own = new Buffer((int) stream.getLength() + 1);
        try (InputStream in = stream.createRawInputStream()) {
            own.all(in, stream.getLength());
        }
        byte[] body = own.toByteArray();
        stream.setInt(COSName.LENGTH, body.length);
        text.reset();
        writer.write(stream);
        out.stream(seen.get(stream), text, body);
    }
}
