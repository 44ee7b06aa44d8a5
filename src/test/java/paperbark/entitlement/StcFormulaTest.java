package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.rules.CountRounding;

class StcFormulaTest {
    private static final StcFormula FORMULA =
            StcFormula.on(LocalDate.of(2026, 11, 20), 10, CountRounding.DOWN).orElseThrow();

    // A figure of 29 hides at most 29.99: 29.99 x 4 / 10 = 11.996, so 11 either way. A figure of 27
    // may hide 27.5, and 27.5 x 4 / 10 = 11 is one more than 10.
    @ParameterizedTest
    @CsvSource({
        "29, 4, 11, 12, false",
        "27, 4, 10, 11, true",
        "33, 9, 29, 30, true",
        "32, 9, 28, 29, true",
        "39, 3, 11, 12, false",
        "36, 3, 10, 11, true",
        "0, 3, 0, 1, false",
        "0, 9, 0, 1, false",
        "3, 3, 0, 1, true",
        "33, 5, 16, 16, false",
        "33, 10, 33, 33, false",
        "33, 0, 0, 0, false"
    })
    void oneMoreIsPossibleOnlyWhereTheHiddenFractionCanReachTheNextNumber(
            int listed, int years, int count, int highest, boolean canBeHigher) {
        assertThat(FORMULA.count(listed, years)).isEqualTo(count);
        assertThat(FORMULA.highest(listed, years)).isEqualTo(highest);
        assertThat(FORMULA.canBeHigher(listed, years)).isEqualTo(canBeHigher);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    30 | 5 | 30 x 5 / 10 = 15
                    27 | 5 | 27 x 5 / 10 = 13.5, fractions dropped
                    9  | 1 | 9 x 1 / 10 = 0.9, fractions dropped
                    30 | 0 | 30 x 0 / 10 = 0
                    """)
    void theSumIsWrittenOutAndDropsAFractionOnlyWhereThereIsOne(
            int listed, int years, String working) {
        assertThat(FORMULA.working(listed, years)).isEqualTo(working);
    }
}
