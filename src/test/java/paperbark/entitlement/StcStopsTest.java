package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.FindingCode;
import paperbark.firm.Listing;
import paperbark.firm.Products;
import paperbark.job.Jobs;
import paperbark.value.DateRange;
import paperbark.value.SchemeName;

/** What a stop says, and that nothing is worked out behind it. */
class StcStopsTest {

    @ParameterizedTest
    @ValueSource(strings = {"2001-03-31", "2031-01-01"})
    void outsideTheSchemeNothingIsWorkedOutButTheDay(String day) {
        Entitlement stc = Found.stc(Jobs.installed().withInstalledOn(day)).entitlement();

        assertThat(stc.steps()).extracting(Step::label).containsExactly("Day of installation");
        assertThat(stc.certificates()).isEmpty();
        assertThat(stc.zone()).isEmpty();
        assertThat(stc.lastDay()).isEmpty();
    }

    @Test
    void aModelThatIsNotListedOnTheDayIsNamedWithAllItsPeriods() {
        Listing first =
                new Listing(
                        range("2020-01-01", "2022-12-31"),
                        Listing.Basis.TEN_YEARS,
                        Map.of(4, 30),
                        "40",
                        9);
        Listing second =
                new Listing(
                        range("2024-01-01", "2026-10-31"),
                        Listing.Basis.TEN_YEARS,
                        Map.of(4, 30),
                        "52",
                        10);

        Found found =
                Found.stc(
                        Jobs.installed()
                                .withProduct(Products.heatPump().withListings(first, second)));

        assertThat(found.fact(FindingCode.MODEL_NOT_LISTED_THEN))
                .isEqualTo(
                        "Dunlin DN-270 is listed 1 Jan 2020 to 31 Dec 2022 and 1 Jan 2024"
                                + " to 31 Oct 2026, not on 20 Nov 2026.");
    }

    @Test
    void aLargeSolarHeaterIsToldWhatItsDeclarationsLack() {
        Jobs large = Jobs.installed().withProduct(Products.solar().withLitres(701));

        assertThat(Found.stc(large).fact(FindingCode.SOLAR_DECLARATION_MISSING))
                .isEqualTo(
                        "The heater holds 701 L, more than 700 L, and no declarations are noted.");
        assertThat(
                        Found.stc(large.withDeclarationsOn("2026-11-26"))
                                .fact(FindingCode.SOLAR_DECLARATION_MISSING))
                .isEqualTo(
                        "The heater holds 701 L, more than 700 L, and its declarations are dated 26 Nov 2026.");
    }

    @Test
    void everySchemeNameHasItsClass() {
        assertThat(Schemes.KNOWN.all())
                .extracting(Scheme::name)
                .containsExactlyElementsOf(Arrays.asList(SchemeName.values()));
    }

    private static DateRange range(String from, String to) {
        return new DateRange(Optional.of(LocalDate.parse(from)), Optional.of(LocalDate.parse(to)));
    }
}
