package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.value.Postcode;
import paperbark.value.State;

/** The zone table against what others say of the same postcodes; each source stands beside it. */
class ZonesFromOutsideTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 20);
    private static final Rulebook RULES = Rulebook.load(Optional.empty());

    // Source: an independent audit that quotes rows of the regulator's postcode table, version 3:
    // 0870 to 0875 are zone 2 and 4620 to 4724 are zone 1. Beside them lie postcodes without zone
    // (0876, 4619) and another zone (4725).
    @ParameterizedTest
    @CsvSource({"870, 875, 2", "4620, 4724, 1"})
    void theRowsThatAnAuditQuotesAreTheSameForBothTechnologies(int first, int last, int zone) {
        assertThat(IntStream.rangeClosed(first, last))
                .allSatisfy(p -> assertThat(zones(p)).isEqualTo(zone + " and " + zone));
        assertThat(zones(first - 1)).isNotEqualTo(zone + " and " + zone);
        assertThat(zones(last + 1)).isNotEqualTo(zone + " and " + zone);
    }

    // Source: a postcode table of the NSW Government, October 2022, for heat pumps. It agrees for
    // all of 2000 to 2999 but 2654, where it has zone 4, and 2915 to 2998, to which it extends zone
    // 5. Neither is taken over: there the regulator's table is silent, and so are we.
    @Test
    void whereOnlyTheStateNamesAZoneThereIsNone() {
        assertThat(zones(2654)).isEqualTo("3 and none");
        assertThat(IntStream.rangeClosed(2915, 2999))
                .allSatisfy(p -> assertThat(zones(p)).isEqualTo("none and none"));
    }

    @Test
    void inNewSouthWalesAndTheAustralianCapitalTerritoryAHeatPumpHasZoneThreeOrFive() {
        assertThat(IntStream.rangeClosed(2000, 2999).mapToObj(p -> zones(p)).distinct())
                .containsExactlyInAnyOrder("3 and 3", "3 and none", "3 and 5", "none and none");
    }

    // Source: the regulator's published model decks of 20 July 2015 name a city for each climate: 1
    // Rockhampton, 2 Alice Springs, 3 Sydney, 4 Melbourne, heat pumps 5 Canberra.
    @ParameterizedTest
    @CsvSource({
        "Rockhampton, 4700, 1 and 1",
        "Alice Springs, 870, 2 and 2",
        "Sydney, 2000, 3 and 3",
        "Melbourne, 3000, 4 and 4",
        "Canberra, 2600, 3 and 5"
    })
    void theCityOfEachReferenceClimateLiesInItsZone(String city, int postcode, String zones) {
        assertThat(zones(postcode)).as(city).isEqualTo(zones);
    }

    // Source: the table's own extent, 0800 to 7470, as its second copy has it; the rest are post
    // office boxes, large-volume receivers and unused numbers.
    @ParameterizedTest
    @CsvSource({"200, 299", "900, 999", "1000, 1999", "2915, 2999", "7471, 7999", "8000, 9999"})
    void postcodesThatAreNoStreetAddressHaveNoZone(int first, int last) {
        assertThat(IntStream.rangeClosed(first, last))
                .allSatisfy(p -> assertThat(zones(p)).isEqualTo("none and none"));
    }

    // Source: the same two copies: zone 5 stands for the cold parts of solar zones 3 and 4, so none
    // lies in Queensland, South and Western Australia or the north.
    @Test
    void zoneFiveLiesInTheSouthEastOnly() {
        assertThat(
                        IntStream.rangeClosed(800, 7470)
                                .filter(p -> zones(p).endsWith("and 5"))
                                .mapToObj(ZonesFromOutsideTest::usualState)
                                .distinct())
                .containsExactlyInAnyOrder(State.NSW, State.ACT, State.VIC, State.TAS);
    }

    /** Zone for solar heaters and for heat pumps, such as {@code 3 and 5}. */
    private static String zones(int number) {
        Optional<ZoneRow> row = RULES.zones().on(DAY, postcode(number)).map(Dated::row);
        return word(row.flatMap(r -> r.zone(true)))
                + " and "
                + word(row.flatMap(r -> r.zone(false)));
    }

    private static String word(Optional<Integer> zone) {
        return zone.map(String::valueOf).orElse("none");
    }

    private static State usualState(int number) {
        return RULES.postcodeStates().on(DAY, postcode(number)).orElseThrow().row().states().get(0);
    }

    private static Postcode postcode(int number) {
        return new Postcode("%04d".formatted(number));
    }
}
