package paperbark.output.pdf;

import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.zip.Deflater;

/**
 * Bytes as the filter {@code FlateDecode} takes them. A pack has dozens of streams, most of them
 * short, and what deflates them takes longer to set up than such a stream to deflate; so it is used
 * again. Safe for use by several threads.
 */
final class Deflated {
    // As many as threads that write at a time; some 270 KB each.
    // A sixth quicker than the usual 6, for half a hundredth more bytes.
    static final int LEVEL = 5;

    private static final BlockingQueue<Deflater> IDLE = new ArrayBlockingQueue<>(8);

    private Deflated() {}

    /** The bytes deflated. */
    static byte[] of(byte[] bytes) {
        Deflater idle = IDLE.poll();
        Deflater deflater = idle == null ? new Deflater(LEVEL) : idle;
        byte[] out = new byte[bytes.length / 3 + 64];
        int length = 0;
        deflater.setInput(bytes);
        deflater.finish();
        while (!deflater.finished()) {
            if (length == out.length) {
                out = Arrays.copyOf(out, 2 * length);
            }
            length += deflater.deflate(out, length, out.length - length);
        }
        deflater.reset();
        if (!IDLE.offer(deflater)) {
            deflater.end();
        }
        return Arrays.copyOf(out, length);
    }
}
