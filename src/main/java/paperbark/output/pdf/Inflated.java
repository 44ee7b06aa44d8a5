package paperbark.output.pdf;

import java.io.IOException;
import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Bytes as they were before {@link Deflated}. What inflates them is used again. Safe for use by
 * several threads.
 */
final class Inflated {
    private static final BlockingQueue<Inflater> IDLE = new ArrayBlockingQueue<>(8);

    private Inflated() {}

    /**
     * The bytes inflated.
     *
     * @param from where they begin; what comes behind them is left
     * @param likely about how many there will be
     * @throws IOException when they are not what {@link Deflated} gives
     */
    static byte[] of(byte[] bytes, int from, int likely) throws IOException {
        Inflater idle = IDLE.poll();
        Inflater inflater = idle == null ? new Inflater() : idle;
        byte[] out = new byte[Math.max(likely, 64)];
        int length = 0;
        inflater.setInput(bytes, from, bytes.length - from);
        try {
            while (!inflater.finished()) {
                if (length == out.length) {
                    out = Arrays.copyOf(out, 2 * length);
                }
                int more = inflater.inflate(out, length, out.length - length);
                if (more == 0 && !inflater.finished()) {
                    throw new IOException("a stream is cut off");
                }
                length += more;
            }
        } catch (DataFormatException e) {
            throw new IOException(e);
        } finally {
            inflater.reset();
            if (!IDLE.offer(inflater)) {
                inflater.end();
            }
        }
        return length == out.length ? out : Arrays.copyOf(out, length);
    }
}
