package paperbark.output.pdf;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * The colours of an ordinary screen (IEC 61966-2-1, sRGB) as a profile of 500 bytes instead of the
 * usual 3,000: primaries for the white of profiles, and the curve as a formula (ICC.1:2010, 7 to
 * 10). It is the same everywhere, whatever the Java that runs the program brings.
 */
public final class ScreenColours {
    private static final double[] RED = {0.43607, 0.22249, 0.01392};
    private static final double[] GREEN = {0.38515, 0.71687, 0.09708};
    private static final double[] BLUE = {0.14307, 0.06061, 0.71410};
    private static final double[] WHITE = {0.9642, 1, 0.8249};
    // From the white of screens to that of profiles (Bradford).
    private static final double[] ADAPTED = {
        1.04788, 0.02292, -0.05022, 0.02959, 0.99048, -0.01707, -0.00925, 0.01508, 0.75168
    };
    private static final double[] CURVE = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
    private static final int HEAD = 128;
    private static final int ENTRY = 12;

    private static final int COLOURS = 3;

    // Library, platform and maker as Java's own colour library puts them into whatever it reads.
    private static final String LIBRARY = "lcms";

    // The same in every document.
    private static final byte[] DEFLATED = Deflated.of(profile());

    private ScreenColours() {}

    private record Tag(String name, byte[] body) {}

    /** The profile as a stream of a document. */
    public static COSStream stream() throws IOException {
        COSStream stream = Streams.ofDeflated(DEFLATED);
        stream.setInt(COSName.N, COLOURS);
        return stream;
    }

    /** The profile. */
    public static byte[] profile() {
        List<Tag> tags = new ArrayList<>();
        tags.add(new Tag("desc", words("sRGB")));
        tags.add(new Tag("cprt", words("CC0")));
        tags.add(new Tag("wtpt", numbers("XYZ ", WHITE)));
        tags.add(new Tag("chad", numbers("sf32", ADAPTED)));
        tags.add(new Tag("rXYZ", numbers("XYZ ", RED)));
        tags.add(new Tag("gXYZ", numbers("XYZ ", GREEN)));
        tags.add(new Tag("bXYZ", numbers("XYZ ", BLUE)));
        byte[] curve = curve();
        for (String name : List.of("rTRC", "gTRC", "bTRC")) {
            tags.add(new Tag(name, curve));
        }
        int first = HEAD + 4 + ENTRY * tags.size();
        int size = first + tags.stream().map(Tag::body).distinct().mapToInt(b -> b.length).sum();
        ByteBuffer profile = ByteBuffer.allocate(size);
        head(profile);
        profile.position(HEAD);
        profile.putInt(tags.size());
        int at = first;
        for (Tag tag : tags) {
            // The three curves are one.
            boolean again = tag.body() == curve && !tag.name().equals("rTRC");
            int where = again ? at - curve.length : at;
            put(profile, tag.name()).putInt(where).putInt(tag.body().length);
            System.arraycopy(tag.body(), 0, profile.array(), where, tag.body().length);
            at = where + tag.body().length;
        }
        return profile.array();
    }

    private static void head(ByteBuffer profile) {
        profile.putInt(0, profile.capacity());
        put(profile.position(4), LIBRARY);
        profile.putInt(8, 0x04200000);
        put(profile.position(12), "mntrRGB XYZ ");
        // A fixed day, so that the bytes are the same each time.
        profile.putShort((short) 2026).putShort((short) 1).putShort((short) 1);
        put(profile.position(36), "acspAPPL");
        put(profile.position(68), "")
                .putInt(fixed(WHITE[0]))
                .putInt(fixed(1))
                .putInt(fixed(WHITE[2]));
        put(profile.position(80), LIBRARY);
    }

    private static ByteBuffer put(ByteBuffer into, String text) {
        return into.put(text.getBytes(StandardCharsets.US_ASCII));
    }

    private static byte[] words(String text) {
        byte[] chars = text.getBytes(StandardCharsets.UTF_16BE);
        ByteBuffer words = ByteBuffer.allocate(28 + (chars.length + 3 & ~3));
        put(words, "mluc").putInt(0).putInt(1).putInt(12);
        put(words, "enAU").putInt(chars.length).putInt(28).put(chars);
        return words.array();
    }

    private static byte[] numbers(String type, double[] values) {
        ByteBuffer numbers = ByteBuffer.allocate(8 + 4 * values.length);
        put(numbers, type).putInt(0);
        for (double value : values) {
            numbers.putInt(fixed(value));
        }
        return numbers.array();
    }

    private static byte[] curve() {
        ByteBuffer curve = ByteBuffer.allocate(12 + 4 * CURVE.length);
        put(curve, "para").putInt(0).putShort((short) 3).putShort((short) 0);
        for (double value : CURVE) {
            curve.putInt(fixed(value));
        }
        return curve.array();
    }

    private static int fixed(double value) {
        return (int) Math.round(value * 65536);
    }
}
