package paperbark.output.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/** The pictures that were drawn on the pages of a document, such as the firm's logo. */
final class Pictures {
    private static final String DRAW = " Do";

    // Each of the document's own, whatever it is called on a page.
    private final Set<COSStream> all = Collections.newSetFromMap(new IdentityHashMap<>());

    private final Map<Picture, COSStream> found = new HashMap<>();

    /** A picture apart from the document that it is in. Nothing changes it. */
    static final class Picture {
        // A firm has one logo. Each head that shows it holds the same bytes.
        private static final int MOST = 8;
        private static final Map<Picture, Picture> SHARED =
                new LinkedHashMap<>() {
                    private static final long serialVersionUID = 1L;

                    @Override
                    protected boolean removeEldestEntry(Map.Entry<Picture, Picture> eldest) {
                        return size() > MOST;
                    }
                };

        private final byte[] bytes;
        private final int hash;

        private Picture(byte[] bytes) {
            this.bytes = bytes;
            hash = Arrays.hashCode(bytes);
        }

        private static Picture shared(COSStream stream) throws IOException {
            Picture own = new Picture(bytes(stream));
            synchronized (SHARED) {
                Picture before = SHARED.putIfAbsent(own, own);
                return before == null ? own : before;
            }
        }

        private boolean isIn(COSStream stream) throws IOException {
            return stream.getLength() == bytes.length && Arrays.equals(bytes, bytes(stream));
        }

        private static byte[] bytes(COSStream stream) throws IOException {
            try (InputStream in = stream.createRawInputStream()) {
                return in.readAllBytes();
            }
        }

        @Override
        public boolean equals(Object other) {
            return this == other
                    || other instanceof Picture picture && Arrays.equals(bytes, picture.bytes);
        }

        @Override
        public int hashCode() {
            return hash;
        }
    }

    /** Those on some pages. */
    Pictures(Collection<COSDictionary> pages) {
        for (COSDictionary page : pages) {
            COSDictionary named = named(page);
            for (COSName name : named.keySet()) {
                if (named.getDictionaryObject(name) instanceof COSStream stream) {
                    all.add(stream);
                }
            }
        }
    }

    private static COSDictionary named(COSDictionary page) {
        COSDictionary resources = page.getCOSDictionary(COSName.RESOURCES);
        COSDictionary named =
                resources == null ? null : resources.getCOSDictionary(COSName.XOBJECT);
        return named == null ? new COSDictionary() : named;
    }

    /** The name of the picture that a step draws. */
    private static Optional<COSName> nameIn(Op step) {
        if (step instanceof Op.Other other) {
            String text = new String(other.text(), StandardCharsets.ISO_8859_1).strip();
            if (text.startsWith("/") && text.endsWith(DRAW)) {
                return Optional.of(
                        COSName.getPDFName(text.substring(1, text.length() - DRAW.length())));
            }
        }
        return Optional.empty();
    }

    /** Whether a step draws a picture. */
    static boolean isDrawnBy(Op step) {
        return nameIn(step).isPresent();
    }

    /** The pictures that some steps of a page draw, by their names there. */
    static Map<COSName, Picture> of(List<Op> steps, COSDictionary page) throws IOException {
        COSDictionary named = named(page);
        Map<COSName, Picture> drawn = new LinkedHashMap<>();
        for (Op step : steps) {
            Optional<COSName> name = nameIn(step);
            if (name.isPresent()
                    && named.getDictionaryObject(name.get()) instanceof COSStream stream) {
                drawn.put(name.get(), Picture.shared(stream));
            }
        }
        return drawn;
    }

    /**
     * Lets a page show pictures of the document that are known by these names.
     *
     * @throws UnknownPlace when the document does not have one
     */
    void show(Map<COSName, Picture> pictures, COSDictionary page) throws IOException {
        COSDictionary named = new COSDictionary();
        for (Map.Entry<COSName, Picture> picture : pictures.entrySet()) {
            named.setItem(picture.getKey(), find(picture.getValue()));
        }
        COSDictionary resources = page.getCOSDictionary(COSName.RESOURCES);
        resources.setItem(COSName.XOBJECT, named);
    }

    private COSStream find(Picture picture) throws IOException {
        COSStream known = found.get(picture);
        if (known != null) {
            return known;
        }
        for (COSStream stream : all) {
            if (picture.isIn(stream)) {
                found.put(picture, stream);
                return stream;
            }
        }
        throw new UnknownPlace();
    }
}
