package paperbark.output.pdf;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * What a run has taken from packs, so that what several of them share is written once. A length and
 * a check sum say quickly that something is new, as nearly all is; what may be known is compared
 * itself, or by its digest where it is too much to be kept.
 */
final class Taken {
    // Far more than the contents of a hundred packs without large pictures of their own.
    private static final int ROOM = 8 << 20;

    private final Map<Long, List<Entry>> byCheckSum = new HashMap<>();
    private int kept;

    /**
     * Something that was taken.
     *
     * @param text the object, of a stream its dictionary
     * @param body the content, or its digest
     */
    private record Entry(byte[] text, byte[] body, boolean digested, int number) {
        boolean is(byte[] asked, PackReader.Piece content) {
            return Arrays.equals(text, asked)
                    && (digested
                            ? Arrays.equals(body, digest(content))
                            : Arrays.equals(
                                    body,
                                    0,
                                    body.length,
                                    content.text(),
                                    content.from(),
                                    content.to()));
        }
    }

    /**
     * The number that something has in the run, or 0 where it is new.
     *
     * @param text the object, of a stream its dictionary
     * @param body the content of a stream, otherwise nothing
     */
    int find(byte[] text, PackReader.Piece body) {
        for (Entry entry : byCheckSum.getOrDefault(checkSum(text, body), List.of())) {
            if (entry.is(text, body)) {
                return entry.number();
            }
        }
        return 0;
    }

    /** Keeps in mind that something was taken under a number. */
    void add(byte[] text, PackReader.Piece body, int number) {
        boolean digested = body.length() > ROOM - kept;
        byte[] held =
                digested ? digest(body) : Arrays.copyOfRange(body.text(), body.from(), body.to());
        kept += held.length;
        byCheckSum
                .computeIfAbsent(checkSum(text, body), c -> new ArrayList<>(1))
                .add(new Entry(text, held, digested, number));
    }

    private static long checkSum(byte[] text, PackReader.Piece body) {
        CRC32 sum = new CRC32();
        sum.update(text);
        sum.update(body.text(), body.from(), body.length());
        return (long) body.length() << Integer.SIZE | sum.getValue();
    }

    private static byte[] digest(PackReader.Piece body) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(body.text(), body.from(), body.length());
            return digest.digest();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
