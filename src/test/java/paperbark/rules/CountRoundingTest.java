package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CountRoundingTest {

    @ParameterizedTest
    @CsvSource({
        "0, 0, 0",
        "0.4999, 0, 0",
        "0.5, 0, 1",
        "1.5, 1, 2",
        "2.5, 2, 3",
        "11.9472, 11, 12",
        "12, 12, 12",
        "-0.5, 0, 0",
        "-3.2, 0, 0"
    })
    void anExactNumberBecomesWhole(BigDecimal exact, int down, int halfUp) {
        assertThat(CountRounding.DOWN.whole(exact)).isEqualTo(down);
        assertThat(CountRounding.HALF_UP.whole(exact)).isEqualTo(halfUp);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 10, 0, 0",
        "4, 10, 0, 0",
        "5, 10, 0, 1",
        "135, 10, 13, 14",
        "9, 9, 1, 1",
        "8, 3, 2, 3"
    })
    void aFractionBecomesWhole(BigDecimal numerator, BigDecimal denominator, int down, int halfUp) {
        assertThat(CountRounding.DOWN.whole(numerator, denominator)).isEqualTo(down);
        assertThat(CountRounding.HALF_UP.whole(numerator, denominator)).isEqualTo(halfUp);
    }
}
