package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which job a remark on what a row corrects names; common practice, no source. */
class KeysTest {
    @ParameterizedTest
    @CsvSource({
        "SB-1, 'SB-1: serial read off the wrong plate', true",
        "SB-1, 'replaces sb-1', true",
        "SB-1, SB-1-STC, true",
        "SB-1, '(SB-1)', true",
        "SB-1, 'both SB-12 and SB-1.', true",
        "T 1, 'replaces T 1', true",
        "SB-1, replaces SB-12, false",
        "SB-1, replaces SB-1-2, false",
        "SB-1, replaces XSB-1, false",
        "1, replaces SB-1, false",
        "12, replaces SB-1, false"
    })
    void aJobIsNamedByItsWholeNumber(String job, String remark, boolean named) {
        assertThat(Keys.names(Optional.of(remark), job)).isEqualTo(named);
    }
}
