package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.Test;

/** What deflates is used again, by several threads, and leaves no trace of what it did before. */
class DeflatedTest {
    @Test
    void isTheSameAsFromANewOne() {
        boolean all =
                IntStream.range(0, 200)
                        .parallel()
                        .mapToObj(DeflatedTest::content)
                        .allMatch(c -> Arrays.equals(Deflated.of(c), deflatedAnew(c)));
        assertThat(all).isTrue();
    }

    /** Some of it repeats itself, and some cannot be made shorter. */
    private static byte[] content(int seed) {
        Random random = new Random(seed);
        byte[] content = new byte[random.nextInt(60_000)];
        random.nextBytes(content);
        int plain = random.nextInt(content.length + 1);
        for (int i = 0; i < plain; i++) {
            content[i] = (byte) (i % (1 + seed));
        }
        return content;
    }

    private static byte[] deflatedAnew(byte[] content) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflate =
                new DeflaterOutputStream(out, new Deflater(Deflated.LEVEL))) {
            deflate.write(content);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return out.toByteArray();
    }
}
