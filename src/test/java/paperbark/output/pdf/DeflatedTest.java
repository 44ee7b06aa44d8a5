package paperbark.output.pdf;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;

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

    @Test
    void isInflatedAgainWhateverComesBehind() {
        boolean all =
                IntStream.range(0, 200)
                        .parallel()
                        .mapToObj(DeflatedTest::content)
                        .allMatch(c -> Arrays.equals(c, inflated(Deflated.of(c), c.length)));
        assertThat(all).isTrue();
    }

    @Test
    void isNotInflatedWhereItIsCutOff() {
        byte[] half = Arrays.copyOf(Deflated.of(content(7)), 100);
        assertThatIOException().isThrownBy(() -> Inflated.of(half, 0, 0));
        assertThatIOException().isThrownBy(() -> Inflated.of("no stream".getBytes(UTF_8), 0, 0));
    }

    private static byte[] inflated(byte[] deflated, int length) {
        byte[] amid = new byte[deflated.length + 20];
        System.arraycopy(deflated, 0, amid, 10, deflated.length);
        try {
            return Inflated.of(amid, 10, length / 2);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
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
