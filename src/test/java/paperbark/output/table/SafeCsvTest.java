package paperbark.output.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class SafeCsvTest {
    @Test
    void aFileBeginsWithAMarkAndEndsItsLinesForWindows() {
        byte[] file = SafeCsv.of(List.of("Job", "=Sum"), List.of(List.of("SB-1", "a, b")));

        assertThat(new String(file, StandardCharsets.UTF_8))
                .isEqualTo("\uFEFFJob,'=Sum\r\nSB-1,\"a, b\"\r\n");
    }

    @Test
    void plainNumbersStayAndAllElseThatWouldRunGetsAnApostrophe() {
        assertThat(SafeCsv.cells(List.of("-2.00", "-2+3", "+61 3", "12", " =1", "'x", "\t=1")))
                .containsExactly("-2.00", "'-2+3", "'+61 3", "12", "' =1", "''x", "'\t=1");
    }

    @Test
    void textThatLooksLikeANumberIsGuardedWhereItIsKnownToBeText() {
        assertThat(SafeCsv.text("-2")).isEqualTo("'-2");
    }
}
