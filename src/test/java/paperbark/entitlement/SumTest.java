package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import paperbark.firm.VeecInputs.Energies;
import paperbark.rules.CountRounding;
import paperbark.rules.FactorRow;

/** What a sum writes is the sum that was done. */
class SumTest {

    @Property
    void theTraceOfAnySumEvaluatesToItsValue(@ForAll("sums") Sum sum) {
        String[] sides = sum.trace().split(" = ");

        assertThat(sides).hasSize(2);
        // The one that reads the trace rounds each division, the sum none.
        BigDecimal redone = PrintedSum.value(sides[0], MathContext.DECIMAL128);
        assertThat(redone.subtract(new BigDecimal(sides[1])).abs())
                .isLessThanOrEqualTo(redone.abs().max(BigDecimal.ONE).movePointLeft(10));
        assertThat(new BigDecimal(sides[1])).isEqualByComparingTo(sum.value());
    }

    @Property
    void theTraceOfTheStcsGivesTheirNumber(
            @ForAll("wholes") int listed, @ForAll("years") int years) {
        StcFormula formula =
                StcFormula.on(LocalDate.of(2026, 11, 20), 10, CountRounding.DOWN).orElseThrow();
        String[] sides = formula.working(listed, years).split(" = |, ");

        assertThat(PrintedSum.value(sides[0], MathContext.DECIMAL128))
                .isEqualByComparingTo(sides[1]);
        assertThat(CountRounding.DOWN.whole(new BigDecimal(sides[1])))
                .isEqualTo(formula.count(listed, years))
                .isEqualTo(listed * years / 10);
    }

    @Property
    void theTraceOfTheVeecsGivesTheirTonnes(
            @ForAll("decimals") BigDecimal abatement,
            @ForAll("decimals") BigDecimal factor,
            @ForAll("decimals") BigDecimal energy) {
        FactorRow factors =
                new FactorRow(
                        "test", abatement, factor, energy, Optional.of(factor), Optional.empty());
        VeecFormula formula =
                new VeecFormula(factors, new Energies(energy, abatement), new BigDecimal("0.393"));
        for (String activity : List.of("1C", "1D", "3C", "3D")) {
            Sum tonnes = formula.tonnes(activity, LocalDate.of(2026, 11, 20)).orElseThrow();
            String[] sides = tonnes.trace().split(" = ");

            assertThat(PrintedSum.value(sides[0], MathContext.DECIMAL128))
                    .isEqualByComparingTo(sides[1])
                    .isEqualByComparingTo(tonnes.value());
        }
    }

    @Example
    void wordsAndNumbersAreWrittenByTheSameOperations() {
        Sum sum =
                Sum.of("abatement", 40)
                        .minus(Sum.of("SEF", 3).times(Sum.of("Bs", 2)).plus(Sum.of("Be", 1)))
                        .times(Sum.of("EEF", new BigDecimal("0.50")));

        assertThat(sum.inWords()).isEqualTo("(abatement - (SEF x Bs + Be)) x EEF");
        assertThat(sum.trace()).isEqualTo("(40 - (3 x 2 + 1)) x 0.5 = 16.5");
        assertThat(sum.trace(CountRounding.DOWN)).isEqualTo(sum.trace() + ", fractions dropped");
        assertThat(sum.whole(CountRounding.DOWN)).isEqualTo(16);
        assertThat(sum.whole(CountRounding.HALF_UP)).isEqualTo(17);
    }

    @Example
    void aThirdIsKeptWholeUntilItIsRounded() {
        Sum third = Sum.of("one", 1).over(Sum.of("three", 3));

        assertThat(third.times(Sum.of("three", 3)).whole(CountRounding.DOWN)).isEqualTo(1);
        assertThat(third.trace()).isEqualTo("1 / 3 = 0.3333333333333333");
        assertThatThrownBy(() -> third.over(Sum.of("none", 0))).hasMessage("none is zero");
    }

    @Example
    void aFormulaSpeaksFromItsFirstDayUntilALaterOneBegins() {
        List<SinceDate<String>> eras =
                List.of(
                        new SinceDate<>(LocalDate.of(2026, 7, 21), "later"),
                        new SinceDate<>(LocalDate.of(2023, 5, 31), "earlier"));

        assertThat(SinceDate.on(eras, LocalDate.of(2023, 5, 30))).isEmpty();
        assertThat(SinceDate.on(eras, LocalDate.of(2023, 5, 31))).contains("earlier");
        assertThat(SinceDate.on(eras, LocalDate.of(2026, 7, 20))).contains("earlier");
        assertThat(SinceDate.on(eras, LocalDate.of(2026, 7, 21))).contains("later");
    }

    @Provide
    Arbitrary<BigDecimal> decimals() {
        return Arbitraries.bigDecimals()
                .between(BigDecimal.ZERO, BigDecimal.valueOf(999))
                .ofScale(2);
    }

    @Provide
    Arbitrary<Integer> wholes() {
        return Arbitraries.integers().between(0, 999);
    }

    @Provide
    Arbitrary<Integer> years() {
        return Arbitraries.integers().between(0, 10);
    }

    @Provide
    Arbitrary<Sum> sums() {
        Arbitrary<Sum> figures = decimals().map(figure -> Sum.of("figure", figure));
        return Arbitraries.recursive(() -> figures, this::operation, 0, 4);
    }

    private Arbitrary<Sum> operation(Arbitrary<Sum> operands) {
        return Combinators.combine(operands, operands, Arbitraries.of("+", "-", "x", "/"))
                .as(
                        (left, right, sign) ->
                                switch (sign) {
                                    case "+" -> left.plus(right);
                                    case "-" -> left.minus(right);
                                    case "x" -> left.times(right);
                                    default -> left.over(right.times(right).plus(Sum.of("one", 1)));
                                });
    }
}
