package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The clerk who redoes the working pages must notice a wrong one. */
class ClerkTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    37 x 5 / 10 = 18.5, fractions dropped                       | 18.5      | 18
                    37 x 5 / 10 = 18.6, fractions dropped                       | 18.5      | 18
                    (40 - 3 x 3 - 3 x 0.2) x 0.393 = 11.9472 t, rounded to the nearest whole, a half up | 11.9472 | 12
                    (31 - ((3 x 4) + (3 x 0.3))) x 0.393 = 7 t, rounded to the nearest whole, a half up | 7.1133  | 7
                    installed in 2027: 15 x 4 / 10 = 6                          | 6         | 6
                    on 20 Nov 2025: (1 - 2 x 3) x 0.5 = 0 t, fractions dropped  | -2.5      | 0
                    """)
    void aSumIsRedoneFromWhatStandsLeftOfTheEqualsSign(
            String printed, BigDecimal exact, BigDecimal whole) {
        Clerk.Equation equation = Clerk.equations(printed).get(0);

        assertThat(equation.redone()).isEqualByComparingTo(exact);
        assertThat(equation.whole()).isEqualByComparingTo(whole);
    }

    @Test
    void allSumsOfACellAreFound() {
        assertThat(
                        Clerk.equations(
                                "installed in 2025: 37 x 6 / 10 = 22.2, fractions dropped;"
                                        + " installed in 2027: 37 x 4 / 10 = 14.8, fractions dropped"))
                .extracting(Clerk.Equation::sum)
                .containsExactly("37 x 6 / 10", "37 x 4 / 10");
        assertThat(Clerk.equations("16 Nov 2026 + 12 months")).isEmpty();
    }
}
