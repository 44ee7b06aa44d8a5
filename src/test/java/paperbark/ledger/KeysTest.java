package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Set;
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

    @ParameterizedTest
    @CsvSource({
        "replaces t 1, 'T 1'",
        "'T 1, 2 and NORTH 4 B.', 'T 1;2;NORTH 4 B'",
        "1 replaces T 2, 1;2",
        "'T  1', 1",
        "T, ''"
    })
    void ofNumbersWithSpacesTheLongestThatThereIsIsNamed(String remark, String named) {
        Set<String> jobs = Set.of("1", "2", "T 1", "NORTH 4 B", "4", "B");
        assertThat(String.join(";", Keys.named(Optional.of(remark), jobs::contains)))
                .isEqualTo(named);
    }
}
