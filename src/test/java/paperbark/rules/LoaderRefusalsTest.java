package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LoaderRefusalsTest {
    private static final String HEADINGS =
            "from,to,version,eef_t_per_mwh,source,pinpoint,confidence,confirmed_on,note\n";

    @TempDir Path folder;

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    2031-02-30,,9.0,0.3,test-list,,published,, | row 2: from "2031-02-30" is not a day
                    2031-01-01,2030-01-01,9.0,0.3,test-list,,published,, | row 2: the row ends before it begins
                    2031-01-01,,9.0,0.3,nobody,,published,, | row 2: the source "nobody" is not in sources.csv
                    2031-01-01,,9.0,0.3,,,published,, | row 2: the source "" is not in sources.csv
                    2031-01-01,,9.0,0.3,test-list,,rumour,, | row 2: the confidence "rumour" is unknown
                    2031-01-01,,9.0,0.3,test-list,,Published,, | row 2: the confidence "Published" is unknown
                    2031-01-01,,,,test-list,,published,, | row 2: has no value and no note that says why
                    2031-01-01,,9.0,-0.3,test-list,,published,, | row 2: eef_t_per_mwh "-0.3" is not a decimal number
                    2031-01-01,,9.0,0.3,test-list,,published, | row 2: has 8 cells in place of 9
                    2031-01-01,,9.0,,test-list,,published,, | row 2: eef_t_per_mwh is empty and no note says why
                    2031-01-01,,9.0,0.3,test-list,,memory,2026-11-25, | row 2: a row from memory was compared with nothing: empty confirmed_on
                    2031-01-01,,9.0,0.3,test-list,,published,soon, | row 2: confirmed_on "soon" is not a day
                    """)
    void aRowWithAFaultIsRefused(String row, String fault) {
        Overlay overlay =
                Overlay.in(folder).file("veec/emission-factors.csv", HEADINGS + row + "\n");

        assertThatThrownBy(overlay::load)
                .isInstanceOf(RulebookException.class)
                .hasMessageContaining("veec/emission-factors.csv (the firm's) " + fault);
    }

    @Test
    void overlappingRowsOfOneFileAreRefused() {
        Overlay overlay =
                Overlay.in(folder)
                        .factors(
                                "2025-02-01,2025-12-31,1D,4,40,3,3,,",
                                "2025-12-31,,1D,4,41,3,3,,",
                                "2025-02-01,,1D,5,41,3,3,,");

        assertFaults(overlay, "veec/factors.csv (the firm's) row 3: overlaps row 2");
    }

    @Test
    void overlappingRangesOfPostcodesAreRefused() {
        Overlay overlay =
                Overlay.in(folder)
                        .table(
                                "stc/zones.csv",
                                "from,to,postcode_from,postcode_to,solar_zone,heat_pump_zone",
                                "2027-01-01,,3000,3100,4,4",
                                "2027-06-01,,3100,3200,4,4");

        assertFaults(overlay, "stc/zones.csv (the firm's) row 3: overlaps row 2");
    }

    @Test
    void aBackwardRangeIsRefused() {
        Overlay overlay =
                Overlay.in(folder)
                        .table(
                                "stc/zones.csv",
                                "from,to,postcode_from,postcode_to,solar_zone,heat_pump_zone",
                                "2027-01-01,,3100,3000,4,4");

        assertFaults(
                overlay, "stc/zones.csv (the firm's) row 2: the range 3100 to 3000 is not a range");
    }

    @Test
    void aHoleThatNobodyExplainsIsRefused() {
        Overlay overlay =
                Overlay.in(folder)
                        .factors(
                                "2025-02-01,2025-12-30,1D,4,40,3,3,,", "2026-01-01,,1D,4,41,3,3,,");

        assertFaults(
                overlay,
                "veec/factors.csv (the firm's) row 3: no row speaks for 1D, 4 from 31 Dec 2025 to 31 Dec 2025");
    }

    @Test
    void rowsThatMeetAreNoHole() {
        Rulebook rules =
                Overlay.in(folder)
                        .factors("2026-01-01,,1D,4,41,3,3,,", "2025-02-01,2025-12-31,1D,4,40,3,3,,")
                        .load();

        assertThat(rules.factors().lines()).hasSize(2);
    }

    @Test
    void allFaultsAreListedAtOnce() {
        Overlay overlay =
                Overlay.in(folder)
                        .factors("2025-02-01,,1D,4,x,3,3,,", "2025-02-01,,1D,5,41,y,3,,")
                        .listedCounts("soon,,Dunlin,DN-270,1D,4,12")
                        .file("veec/factor.csv", "a\n");

        assertFaults(
                overlay,
                "veec/factors.csv (the firm's) row 2: abatement_mwh \"x\" is not a decimal number",
                "veec/factors.csv (the firm's) row 3: sef_mwh_year_per_gj \"y\" is not a decimal number",
                "veec/listed-counts.csv (the firm's) row 2: from \"soon\" is not a day",
                "veec/factor.csv (the firm's): no rule table has this name; there are sources.csv,"
                        + " stc/zones.csv, stc/years.csv, stc/limits.csv, veec/activities.csv,"
                        + " veec/climate-zones.csv, veec/emission-factors.csv, veec/conditions.csv,"
                        + " veec/factors.csv, veec/listed-counts.csv, au/postcode-states.csv,"
                        + " au/records.csv, au/public-holidays.csv, au/state-boxes.csv, gst.csv");
    }

    @Test
    void wrongHeadingsAreRefused() {
        Overlay overlay = Overlay.in(folder).file("gst.csv", "from,to,rate\n2030-01-01,,10\n");

        assertFaults(
                overlay,
                "gst.csv (the firm's) row 1: the headings must be"
                        + " from,to,price_divisor,source,pinpoint,confidence,confirmed_on,note");
    }

    @Test
    void anEmptyFileIsRefused() {
        assertThatThrownBy(() -> Overlay.in(folder).file("gst.csv", "").load())
                .hasMessageContaining("gst.csv (the firm's): the headings must be");
    }

    @Test
    void aBrokenQuoteIsRefused() {
        assertThatThrownBy(
                        () ->
                                Overlay.in(folder)
                                        .file("veec/emission-factors.csv", HEADINGS + "\"2031")
                                        .load())
                .hasMessageContaining("veec/emission-factors.csv (the firm's): the CSV is broken");
    }

    @Test
    void textThatIsNotUtf8IsRefused() throws Exception {
        Overlay overlay = Overlay.in(folder);
        Files.write(folder.resolve("gst.csv"), "caf\u00e9".getBytes(StandardCharsets.ISO_8859_1));

        assertFaults(overlay, "gst.csv (the firm's): the file is not UTF-8 text");
    }

    @Test
    void anUnknownSettingIsRefused() {
        assertThatThrownBy(() -> Overlay.in(folder).conditions("2030-01-01,,colour,1").load())
                .hasMessageContaining("setting \"colour\" is none of scheme_first_day");
    }

    @ParameterizedTest
    @CsvSource({
        "count_rounding,up,not down or half-up",
        "scheme_last_day,never,not a day",
        "largest_litres,700.5,not a whole number",
        "co_payment_least_dollars,two,not a decimal number"
    })
    void aSettingOfTheWrongKindIsRefused(String setting, String value, String why) {
        assertThatThrownBy(
                        () ->
                                Overlay.in(folder)
                                        .conditions("2040-01-01,," + setting + "," + value)
                                        .load())
                .hasMessageContaining("\"" + value + "\" is " + why);
    }

    @ParameterizedTest
    @CsvSource({
        "gas storage,heat-pump,old_kind \"gas storage\" is none of",
        "gas-storage,heat pump,new_kind \"heat pump\" is none of"
    })
    void anUnknownKindOfHeaterIsRefused(String oldKind, String newKind, String why) {
        assertThatThrownBy(
                        () ->
                                Overlay.in(folder)
                                        .table(
                                                "veec/activities.csv",
                                                "from,to,old_kind,new_kind,activity",
                                                "2030-01-01,," + oldKind + "," + newKind + ",9Z")
                                        .load())
                .hasMessageContaining(why);
    }

    @ParameterizedTest
    @CsvSource({"5,5,solar_zone is not 1 to 4", "4,6,heat_pump_zone is not 1 to 5"})
    void aZoneThatDoesNotExistIsRefused(String solar, String heatPump, String why) {
        assertThatThrownBy(
                        () ->
                                Overlay.in(folder)
                                        .table(
                                                "stc/zones.csv",
                                                "from,to,postcode_from,postcode_to,solar_zone,heat_pump_zone",
                                                "2027-01-01,,3000,3100," + solar + "," + heatPump)
                                        .load())
                .hasMessageContaining(why);
    }

    @Test
    void aFirmsSourceMayNotTakeAShippedName() {
        Overlay overlay =
                Overlay.in(folder)
                        .file(
                                "sources.csv",
                                "id,title,publisher,instrument,version,published,read_on,link\n"
                                        + "ree-act-2000,Mine,Me,,,,,\n,Nameless,Me,,,,,\nx,Y,Z,,,,soon,\n");

        assertFaults(
                overlay,
                "sources.csv (the firm's) row 2: the id ree-act-2000 is taken",
                "sources.csv (the firm's) row 3: id, title or publisher is empty",
                "sources.csv (the firm's) row 4: read_on is not a day");
    }

    @Test
    void aFolderThatIsNotThereIsRefused() {
        Path nowhere = folder.resolve("nowhere");

        assertThatThrownBy(() -> Rulebook.load(Optional.of(nowhere)))
                .isInstanceOf(RulebookException.class)
                .hasMessageContaining("is not a folder");
    }

    private static void assertFaults(Overlay overlay, String... faults) {
        RulebookException refused = catchThrowableOfType(RulebookException.class, overlay::load);

        assertThat(refused.faults()).extracting(Object::toString).containsExactly(faults);
    }
}
