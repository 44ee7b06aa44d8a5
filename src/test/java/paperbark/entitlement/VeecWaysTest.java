package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.firm.Products;
import paperbark.firm.VeecInputs;
import paperbark.job.Jobs;
import paperbark.rules.Overlay;
import paperbark.rules.Rulebook;
import paperbark.value.DateRange;

/** The factors and the list beside each other, and the same job in another year. */
class VeecWaysTest {
    /** With Bs 3.0 and Be 0.2: (40 - 9.0 - 0.6) x 0.393 = 11.9472. */
    private static final String FACTORS = "2025-02-01,,1D,4,40,3,3,,";

    @TempDir Path folder;

    private static Jobs job() {
        return Jobs.installed().withProduct(Products.heatPump().withEnergies("3.0", "0.2"));
    }

    private Found veec(Jobs jobs, Rulebook rules) {
        return Found.of(new VeecScheme(), jobs.job(), rules, Found.TODAY);
    }

    private Rulebook both(int listed) {
        return Overlay.in(folder)
                .factors(FACTORS)
                .listedCounts("2025-02-01,,Dunlin,DN-270,1D,4," + listed)
                .load();
    }

    @ParameterizedTest
    @CsvSource({
        "11, 11, VEEC_WAYS_DISAGREE",
        "12, 12, VEEC_ROUNDING",
        "13, 12, VEEC_WAYS_DISAGREE VEEC_ROUNDING"
    })
    void roundingIsInDoubtOnlyWhereTheSumGaveTheNumber(int listed, int used, String codes) {
        Found found = veec(job(), both(listed));

        assertThat(found.count()).contains(used);
        assertThat(found.codes())
                .extracting(Enum::name)
                .containsExactlyElementsOf(List.of(codes.split(" ")));
    }

    @Test
    void bothWaysStandInTheWorking() {
        Found found = veec(job(), both(11));

        assertThat(found.step("VEECs as listed").working()).isEqualTo("list read by the firm");
        assertThat(found.step("VEECs as listed").result()).isEqualTo("11");
        assertThat(found.step("VEECs as listed").rules())
                .extracting(RuleRef::table)
                .containsExactly("veec/listed-counts.csv (the firm's)");
        assertThat(found.step(VeecScheme.COUNT).working())
                .isEqualTo(
                        "11.9472 t, rounded to the nearest whole, a half up;"
                                + " the lower of this and the list");
        assertThat(found.step(VeecScheme.COUNT).result()).isEqualTo("11");
    }

    @Test
    void anotherYearIsWorkedOutByTheRulesOfThatYear() {
        Rulebook rules =
                Overlay.in(folder)
                        .factors("2025-02-01,2026-12-31,1D,4,40,3,3,,", "2027-01-01,,1D,4,37,3,3,,")
                        .conditions("2027-01-01,,count_rounding,down")
                        .listedCounts("2027-01-01,,Dunlin,DN-270,1D,4,9")
                        .load();

        Step step = veec(job(), rules).step("In the neighbouring years");

        assertThat(step.working())
                .isEqualTo(
                        "on 20 Nov 2025: (40 - 3 x 3 - 3 x 0.2) x 0.393 = 11.9472 t,"
                                + " rounded to the nearest whole, a half up;"
                                + " on 20 Nov 2027: (37 - 3 x 3 - 3 x 0.2) x 0.393 = 10.7682 t,"
                                + " fractions dropped, or as listed, 9");
        assertThat(step.result()).isEqualTo("12 on 20 Nov 2025, 9 on 20 Nov 2027");
        assertThat(step.rules())
                .extracting(r -> r.table() + " " + r.row())
                .containsExactly(
                        "veec/factors.csv (the firm's) 2",
                        "veec/emission-factors.csv (the firm's) 2",
                        "veec/factors.csv (the firm's) 3",
                        "veec/listed-counts.csv (the firm's) 2");
    }

    @Test
    void aYearForWhichTheTablesSayNothingIsNotKnown() {
        Rulebook rules = Overlay.in(folder).factors("2026-01-01,2026-12-31,1D,4,40,3,3,,").load();

        Step step = veec(job(), rules).step("In the neighbouring years");

        assertThat(step.working())
                .isEqualTo("on 20 Nov 2025: not in the tables; on 20 Nov 2027: not in the tables");
        assertThat(step.result()).isEqualTo("not known on 20 Nov 2025, not known on 20 Nov 2027");
        assertThat(step.rules()).isEmpty();
    }

    @Test
    void theEnergiesAreNamedWithTheirRowOfTheProductsTable() {
        Found found = veec(job(), Overlay.in(folder).factors(FACTORS).load());

        assertThat(found.step("Energies of the product").rules())
                .containsExactly(
                        new RuleRef(
                                "products",
                                7,
                                "Victorian register of products",
                                "",
                                "entered",
                                "zone 4: veec_bs 3, veec_be 0.2, listed any day",
                                ""));
    }

    @Test
    void aStopStandsInTheWorkingInPlaceOfTheNumber() {
        Found found = veec(job().withSecondHand(), Overlay.in(folder).factors(FACTORS).load());

        assertThat(found.step(VeecScheme.COUNT).working())
                .isEqualTo("The register says that the heater is not new.");
        assertThat(found.step(VeecScheme.COUNT).result()).isEqualTo("none");
    }

    @Test
    void anOldHeaterThatWasOutBeforeChangesNothingAboutTheDay() {
        Rulebook rules = Overlay.in(folder).factors(FACTORS).load();

        Step day = veec(job().withOldRemovedOn("2026-11-18"), rules).step("Day of the work");

        assertThat(day.result()).isEqualTo("20 Nov 2026");
        assertThat(day.working()).startsWith("installed, ");
    }

    @Test
    void outsideTheSchemeNothingIsWorkedOutButTheDay() {
        Found found = veec(job().withInstalledOn("2008-12-31"), Found.SHIPPED);

        assertThat(found.entitlement().steps())
                .extracting(Step::label)
                .containsExactly("Day of the work");
    }

    @Test
    void aListingThatHasEndedIsMissedEvenIfTheActivityIsNotKnown() {
        VeecInputs now = Products.heatPump().product().veec().orElseThrow();
        DateRange until2025 =
                new DateRange(Optional.empty(), Optional.of(LocalDate.of(2025, 12, 31)));
        Products product =
                Products.heatPump()
                        .withVeec(Optional.of(new VeecInputs(until2025, now.byZone(), 7)));

        Found found = veec(Jobs.booked().withoutOldHeater().withProduct(product), Found.SHIPPED);

        assertThat(found.codes()).containsExactly(FindingCode.VEEC_NOT_LISTED);
    }
}
