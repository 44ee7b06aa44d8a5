package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers in a document are written digit by digit, and the bytes grow as they must. */
class BufferTest {
    @ParameterizedTest
    @ValueSource(
            longs = {
                0,
                9,
                10,
                99,
                100,
                1_000_000_000,
                Integer.MAX_VALUE,
                Integer.MAX_VALUE + 1L,
                Long.MAX_VALUE,
                -1,
                Integer.MIN_VALUE,
                Long.MIN_VALUE
            })
    void writesNumbersAtTheEdges(long number) {
        assertThat(new Buffer().number(number).toString()).isEqualTo(Long.toString(number));
    }

    @Property
    void writesAnyNumber(@ForAll int number) {
        assertThat(new Buffer(0).number(number).toString()).isEqualTo(Integer.toString(number));
    }

    @Test
    void growsPastItsSize() {
        Buffer buffer = new Buffer(1);
        buffer.text("abc").write('d');
        buffer.all(new Buffer().text("efg"));
        assertThat(buffer.toByteArray()).isEqualTo("abcdefg".getBytes(StandardCharsets.ISO_8859_1));
        assertThat(buffer.size()).isEqualTo(7);
        buffer.reset();
        assertThat(buffer.toByteArray()).isEmpty();
    }
}
