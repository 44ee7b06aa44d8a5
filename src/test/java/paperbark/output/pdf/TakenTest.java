package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;

class TakenTest {
    private static final byte[] TEXT = "<</Length 8>>".getBytes(StandardCharsets.ISO_8859_1);
    private static final int LARGE = 9 << 20;

    private final Taken taken = new Taken();

    private static PackReader.Piece piece(byte[] bytes) {
        return new PackReader.Piece(bytes, 0, bytes.length);
    }

    @Test
    void knowsWhatItHasTakenWhereverItLies() {
        taken.add(TEXT, piece(new byte[] {1, 2, 3}), 7);
        assertThat(taken.find(TEXT, new PackReader.Piece(new byte[] {9, 1, 2, 3, 9}, 1, 4)))
                .isEqualTo(7);
        assertThat(taken.find(TEXT, piece(new byte[] {1, 2, 4}))).isZero();
        assertThat(taken.find(new byte[0], piece(new byte[] {1, 2, 3}))).isZero();
    }

    @Test
    void knowsWhatIsTooLargeToBeKept() {
        byte[] large = new byte[LARGE];
        taken.add(TEXT, piece(large.clone()), 7);
        assertThat(taken.find(TEXT, piece(large))).isEqualTo(7);
        large[LARGE / 2] = 1;
        assertThat(taken.find(TEXT, piece(large))).isZero();
    }

    @Test
    void believesNoCheckSumAlone() {
        Map<Long, byte[]> seen = new HashMap<>();
        for (long i = 1; ; i++) {
            byte[] one =
                    ByteBuffer.allocate(Long.BYTES).putLong(i * 0x9E37_79B9_7F4A_7C15L).array();
            CRC32 sum = new CRC32();
            sum.update(TEXT);
            sum.update(one);
            byte[] other = seen.put(sum.getValue(), one);
            if (other != null) {
                taken.add(TEXT, piece(other), 7);
                assertThat(taken.find(TEXT, piece(one))).isZero();
                taken.add(TEXT, piece(one), 8);
                assertThat(taken.find(TEXT, piece(one))).isEqualTo(8);
                assertThat(taken.find(TEXT, piece(other))).isEqualTo(7);
                return;
            }
        }
    }
}
