package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import paperbark.firm.Products;
import paperbark.job.Jobs;
import paperbark.rules.CountRounding;
import paperbark.value.SchemeName;

class StcPropertiesTest {
    private static final StcFormula FORMULA =
            StcFormula.on(LocalDate.of(2026, 11, 20), 10, CountRounding.DOWN).orElseThrow();

    @Provide
    Arbitrary<LocalDate> days() {
        return Arbitraries.longs()
                .between(
                        LocalDate.of(2020, 1, 1).toEpochDay(),
                        LocalDate.of(2030, 12, 31).toEpochDay())
                .map(LocalDate::ofEpochDay);
    }

    @Property(tries = 300)
    void aNumberIsNeverNegativeAndNeverMoreThanListed(
            @ForAll("days") LocalDate day, @ForAll @IntRange(max = 2000) int listed) {
        assertThat(count(day, listed, true)).isBetween(0, listed);
    }

    @Property(tries = 300)
    void aLaterDayNeverGivesMore(
            @ForAll("days") LocalDate one,
            @ForAll("days") LocalDate other,
            @ForAll @IntRange(max = 200) int listed) {
        LocalDate earlier = one.isBefore(other) ? one : other;
        LocalDate later = one.isBefore(other) ? other : one;

        assertThat(count(later, listed, false)).isLessThanOrEqualTo(count(earlier, listed, false));
    }

    private static int count(LocalDate day, int listed, boolean solar) {
        Products product = solar ? Products.solar() : Products.heatPump();
        return Found.stc(
                        Jobs.installed()
                                .withoutClaim(SchemeName.VEEC)
                                .withInstalledOn(day)
                                .withProduct(product.withStcs(listed)),
                        day)
                .count()
                .orElseThrow();
    }

    @Property(tries = 500)
    void theZoneFitsTheTechnology(@ForAll @IntRange(min = 800, max = 7470) int postcode) {
        String digits = "%04d".formatted(postcode);
        var solar = zone(digits, Products.solar());
        var heatPump = zone(digits, Products.heatPump());

        solar.ifPresent(z -> assertThat(z).isBetween(1, 4));
        if (solar.isPresent() && heatPump.isPresent()) {
            assertThat(heatPump.get()).isIn(solar.get(), 5);
        }
    }

    private static Optional<Integer> zone(String postcode, Products product) {
        return Found.stc(Jobs.installed().withPostcode(postcode).withProduct(product))
                .entitlement()
                .zone();
    }

    /** floor(floor(x) / n) = floor(x / n), so the two readings of the method agree. */
    @Property
    void inYearsThatDivideTenTheUnroundedFigureGivesTheSame(
            @ForAll @IntRange(max = 3_000_000) int thousandths) {
        int listed = thousandths / 1000;
        for (int years : new int[] {10, 5, 2, 1}) {
            long exact = (long) thousandths * years / 10_000;
            assertThat(FORMULA.count(listed, years)).isEqualTo((int) exact);
            assertThat(FORMULA.highest(listed, years)).isEqualTo((int) exact);
            assertThat(FORMULA.canBeHigher(listed, years)).isFalse();
        }
    }

    @Property
    void inOtherYearsTheUnroundedFigureGivesAtMostOneMore(
            @ForAll @IntRange(max = 3_000_000) int thousandths) {
        int listed = thousandths / 1000;
        for (int years : new int[] {9, 8, 7, 6, 4, 3}) {
            int exact = Math.toIntExact((long) thousandths * years / 10_000);
            int count = FORMULA.count(listed, years);
            assertThat(exact).isBetween(count, FORMULA.highest(listed, years));
            if (exact > count) {
                assertThat(FORMULA.canBeHigher(listed, years)).isTrue();
            }
        }
    }

    @Property
    void theClosingDateIsNeverMoreThanAYearAway(@ForAll("days") LocalDate day) {
        LocalDate last =
                Found.stc(Jobs.installed().withInstalledOn(day), day)
                        .entitlement()
                        .lastDay()
                        .orElseThrow();

        assertThat(last.getMonth()).isEqualTo(day.getMonth());
        assertThat(last.toEpochDay() - day.toEpochDay()).isBetween(365L, 366L);
    }
}
