package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TableAnswersTest {
    private static final FactorRow.Key HEAT_PUMP = new FactorRow.Key("1D", 4);
    private static final ActivityRow.Key GAS_BOOSTED =
            new ActivityRow.Key("electric-storage", "solar-gas");

    @TempDir Path folder;

    @ParameterizedTest
    @CsvSource({
        "2023-12-30, 1 Jan 2024 to 31 Dec 2024 (row 2)",
        "2025-07-02, 1 Jan 2025 to 30 Jun 2025 (row 3)"
    })
    void ofSeveralRowsTheNearestIsNamed(LocalDate day, String nearest) {
        Rulebook rules =
                Overlay.in(folder)
                        .factors(
                                "2024-01-01,2024-12-31,1D,4,40,3,3,,",
                                "2025-01-01,2025-06-30,1D,4,41,3,3,,")
                        .load();

        assertThat(rules.factors().missing(day, HEAT_PUMP)).endsWith("; the nearest is " + nearest);
    }

    @Test
    void theLastOfTheRowsThatEndedIsTheOneThatEnded() {
        Rulebook rules =
                Overlay.in(folder)
                        .factors(
                                "2024-01-01,2024-12-31,1D,4,40,3,3,,",
                                "2025-01-01,2025-06-30,1D,4,41,3,3,,",
                                "2025-01-01,2025-05-31,1D,5,42,3,3,,")
                        .load();

        assertThat(ended(rules, "2025-07-01")).contains("41");
        assertThat(ended(rules, "2025-06-30")).isEmpty();
        assertThat(ended(rules, "2024-06-30")).isEmpty();
        assertThat(ended(rules, "2023-12-31")).isEmpty();
    }

    @Test
    void aRowWithoutValueEndsNothing() {
        Rulebook rules =
                Overlay.in(folder)
                        .file(
                                "veec/factors.csv",
                                "from,to,activity,climate_zone,version,abatement_mwh,sef_mwh_year_per_gj,"
                                        + "aef_mwh_year_per_gj,location_factor,discount_factor,"
                                        + "source,pinpoint,confidence,confirmed_on,note\n"
                                        + "2024-01-01,2024-12-31,1D,4,,,,,,,test-list,,published,,not found\n")
                        .load();

        assertThat(ended(rules, "2025-07-01")).isEmpty();
    }

    private static Optional<String> ended(Rulebook rules, String day) {
        return rules.factors()
                .endedBefore(LocalDate.parse(day), HEAT_PUMP)
                .map(row -> row.row().abatementMwh().toPlainString());
    }

    @Test
    void aRowInWordsLeavesOutWhatIsBlank() {
        Rulebook rules = Overlay.in(folder).factors("2024-01-01,,1D,4,40,3,3.5,,0.9").load();

        assertThat(rules.factors().lines())
                .extracting(RuleLine::values)
                .containsExactly(
                        "version test, abatement_mwh 40, sef_mwh_year_per_gj 3, aef_mwh_year_per_gj 3.5,"
                                + " discount_factor 0.9");
    }

    @Test
    void aHoleOfOneKeyIsNotFilledByTheRowsOfAnother() {
        Overlay overlay =
                Overlay.in(folder)
                        .factors(
                                "2024-01-01,2024-06-30,1D,4,40,3,3,,",
                                "2024-01-01,,1D,5,40,3,3,,",
                                "2024-08-01,2024-12-31,1D,4,40,3,3,,");

        assertThatThrownBy(overlay::load)
                .hasMessageEndingWith(
                        "  veec/factors.csv (the firm's) row 4: no row speaks for 1D, 4 from 1 Jul 2024 to 31 Jul 2024");
    }

    @Test
    void aFirmsShortRowWithinAShippedOneDoesNotHideTheHoleBehindBoth() {
        Overlay overlay =
                Overlay.in(folder)
                        .table(
                                "veec/activities.csv",
                                "from,to,old_kind,new_kind,activity",
                                "2022-01-01,2022-06-30,electric-storage,solar-gas,1F",
                                "2023-08-01,2023-12-31,electric-storage,solar-gas,1F");

        assertThat(
                        Rulebook.load(Optional.empty())
                                .activities()
                                .endedBefore(day("2023-07-01"), GAS_BOOSTED))
                .as("shipped until 30 June 2023")
                .isPresent();
        assertThatThrownBy(overlay::load)
                .hasMessageEndingWith(
                        "row 3: no row speaks for electric-storage, solar-gas from 1 Jul 2023 to 31 Jul 2023");
    }

    private static LocalDate day(String text) {
        return LocalDate.parse(text);
    }

    @ParameterizedTest
    @CsvSource({
        "'2024-01-01,,,4,40,3,3,,', activity is empty",
        "'2024-01-01,,1D,4,40,,3,,', sef_mwh_year_per_gj is empty"
    })
    void aBlankKeyOrNeededValueIsRefused(String row, String fault) {
        assertThatThrownBy(Overlay.in(folder).factors(row)::load)
                .hasMessageEndingWith("  veec/factors.csv (the firm's) row 2: " + fault);
    }

    @Test
    void whatIsNoTableInTheFirmsFolderIsLeftAlone() throws Exception {
        Overlay overlay = Overlay.in(folder).factors("2024-01-01,,1D,4,40,3,3,,");
        Files.writeString(folder.resolve("where-from.txt"), "read by the office");
        Files.createDirectories(folder.resolve("old.csv"));

        assertThat(overlay.load().factors().lines()).hasSize(1);
    }

    @Test
    void aSourceWithoutVersionIsNamedWithoutBrackets() {
        assertThat(source("").inWords()).isEqualTo("A page, An office");
        assertThat(source("3").inWords()).isEqualTo("A page (3), An office");
    }

    private static Source source(String version) {
        return new Source("x", "A page", "An office", "", version, Optional.empty(), "");
    }
}
