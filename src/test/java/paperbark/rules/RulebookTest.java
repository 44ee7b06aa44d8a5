package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.job.OldKind;
import paperbark.value.Postcode;
import paperbark.value.State;

class RulebookTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 20);
    private final Rulebook shipped = Rulebook.load(Optional.empty());

    @Test
    void theWholeZoneTableIsThere() {
        assertThat(shipped.zones().lines()).hasSize(174);
    }

    @Test
    void aPostcodeHasAZoneForEachTechnology() {
        ZoneRow canberra = shipped.zones().on(DAY, new Postcode("2600")).orElseThrow().row();

        assertThat(canberra.zone(true)).contains(3);
        assertThat(canberra.zone(false)).contains(5);
    }

    @Test
    void aBlankInTheZoneTableIsNoZone() {
        ZoneRow row = shipped.zones().on(DAY, new Postcode("3117")).orElseThrow().row();

        assertThat(row.solar()).contains(4);
        assertThat(row.heatPump()).isEmpty();
    }

    @Test
    void postcodesOutsideTheZoneTableAreNotKnown() {
        assertThat(List.of("0200", "0909", "1500", "2915", "2998", "8001", "9999"))
                .allSatisfy(p -> assertThat(shipped.zones().knows(new Postcode(p))).isFalse());
    }

    @Test
    void wherePresentTheHeatPumpZoneIsTheSolarZoneOrFive() {
        List<ZoneRow> both =
                shipped.zones().rows().stream()
                        .map(r -> new Postcode(r.key().first()))
                        .map(p -> shipped.zones().on(DAY, p).orElseThrow().row())
                        .filter(z -> z.solar().isPresent() && z.heatPump().isPresent())
                        .toList();

        assertThat(both)
                .hasSizeGreaterThan(100)
                .allSatisfy(z -> assertThat(z.heatPump().get()).isIn(z.solar().get(), 5));
    }

    @Test
    void zoneFiveCoversTheKnownNumberOfPostcodesOfEachSolarZone() {
        // Counted in the research note: 121 postcode numbers of solar zone 3 and 603 of zone 4.
        int[] bySolarZone = new int[5];
        for (int p = 200; p <= 9999; p++) {
            shipped.zones()
                    .on(DAY, new Postcode("%04d".formatted(p)))
                    .map(Dated::row)
                    .filter(z -> z.heatPump().equals(Optional.of(5)))
                    .flatMap(ZoneRow::solar)
                    .ifPresent(solar -> bySolarZone[solar]++);
        }
        assertThat(bySolarZone).containsExactly(0, 0, 0, 121, 603);
    }

    @Test
    void aMissingRowIsNamedWithTableDayAndNearestRow() {
        assertThat(shipped.years().missing(LocalDate.of(2001, 3, 31), Unkeyed.ALL))
                .isEqualTo(
                        "stc/years.csv has no row for 31 Mar 2001; the nearest is 1 Apr 2001 to 31 Dec 2021 (row 2)");
    }

    @Test
    void aMissingKeyIsNamed() {
        assertThat(shipped.factors().missing(DAY, new FactorRow.Key("1D", 4)))
                .isEqualTo("veec/factors.csv has no row for 1D, 4 on 20 Nov 2026");
    }

    @Test
    void aGapOnPurposeGivesItsNote() {
        LocalDate inTheGap = LocalDate.of(2023, 6, 1);

        assertThat(shipped.climateZones().on(inTheGap, 3)).isEmpty();
        assertThat(shipped.climateZones().missing(inTheGap, 3))
                .startsWith(
                        "veec/climate-zones.csv has no value for 3 on 1 Jun 2023 (row 2: the postcode list");
    }

    @Test
    void laterVersionsOfTheSpecificationsAreKnownByNameOnly() {
        assertThat(version("2026-06-29")).isEqualTo("23.0 0.393");
        assertThat(version("2026-06-30")).isEqualTo("24.0 known by name only");
        assertThat(version("2026-07-20")).isEqualTo("24.0 known by name only");
        assertThat(version("2026-07-21")).isEqualTo("25.0 known by name only");
        assertThat(shipped.veecConditions().missing(DAY, VeecCondition.CO_PAYMENT_LEAST_DOLLARS))
                .contains("version 25.0 is known by name only");
    }

    private String version(String day) {
        Dated<EmissionFactorRow> row =
                shipped.emissionFactors().on(LocalDate.parse(day), Unkeyed.ALL).orElseThrow();
        return row.row().version()
                + " "
                + row.row().tonnesPerMwh().map(String::valueOf).orElse(row.note().split(";")[0]);
    }

    @Test
    void theFactorsOfTheSpecificationsAreNeverShipped() {
        assertThat(shipped.factors().lines()).isEmpty();
        assertThat(shipped.listedCounts().lines()).isEmpty();
    }

    @Test
    void aReferenceSaysWhatIsFromMemory() {
        Dated<Setting> coPayment =
                shipped.veecConditions()
                        .on(LocalDate.of(2026, 6, 29), VeecCondition.CO_PAYMENT_LEAST_DOLLARS)
                        .orElseThrow();

        assertThat(coPayment.ref().inWords()).endsWith("(from memory, not verified)");
        assertThat(coPayment.row().decimal()).isEqualByComparingTo("200");
    }

    @Test
    void everyShippedRowSaysWhenItWasConfirmedUnlessItIsFromMemory() {
        assertThat(inForce())
                .hasSizeGreaterThan(200)
                .allSatisfy(
                        line ->
                                assertThat(line.confirmedOn().isPresent())
                                        .isNotEqualTo(line.ref().confidence().equals("memory")))
                .allSatisfy(line -> assertThat(line.ref().source()).contains(", "));
    }

    @Test
    void borderPostcodesHaveSeveralStatesTheUsualOneFirst() {
        assertThat(states("0872")).containsExactly(State.NT, State.SA, State.WA);
        assertThat(states("2620")).containsExactly(State.NSW, State.ACT);
        assertThat(states("3342")).containsExactly(State.VIC);
        assertThat(states("6799")).containsExactly(State.WA);
    }

    @Test
    void postOfficeBoxPostcodesHoldNoHeater() {
        PostcodeStateRow row =
                shipped.postcodeStates().on(DAY, new Postcode("8001")).orElseThrow().row();

        assertThat(row.street()).isFalse();
        assertThat(shipped.postcodeStates().on(DAY, new Postcode("9999"))).isEmpty();
    }

    private List<State> states(String postcode) {
        return shipped.postcodeStates()
                .on(DAY, new Postcode(postcode))
                .orElseThrow()
                .row()
                .states();
    }

    @Test
    void aFirmsRowWinsOnItsDaysAndTheShippedOneElsewhere(@TempDir Path folder) {
        Rulebook rules =
                Overlay.in(folder)
                        .table(
                                "stc/limits.csv",
                                "from,to,setting,value",
                                "1/01/2027,31/12/2027,heat_pump_largest_litres,500")
                        .load();

        assertThat(litres(rules, "2026-12-31")).isEqualTo(425);
        assertThat(litres(rules, "2027-01-01")).isEqualTo(500);
        assertThat(litres(rules, "2027-12-31")).isEqualTo(500);
        assertThat(litres(rules, "2028-01-01")).isEqualTo(425);
    }

    private static int litres(Rulebook rules, String day) {
        return rules.stcLimits()
                .on(LocalDate.parse(day), StcLimit.HEAT_PUMP_LARGEST_LITRES)
                .orElseThrow()
                .row()
                .whole();
    }

    @Test
    void aFirmsRowIsNamedAsTheFirms(@TempDir Path folder) {
        Rulebook rules = Overlay.in(folder).factors("2025-02-01,,1D,4,40,3,3,,").load();

        assertThat(rules.factors().on(DAY, new FactorRow.Key("1D", 4)).orElseThrow().ref().table())
                .isEqualTo("veec/factors.csv (the firm's)");
    }

    @Test
    void aFirmMayFillAShippedGap(@TempDir Path folder) {
        Rulebook rules =
                Overlay.in(folder).emissionFactors("2023-02-01,2024-01-31,14.0,0.7").load();

        assertThat(factor(rules, "2023-06-01")).isPresent();
        assertThat(factor(rules, "2024-06-01")).isEmpty();
    }

    private static Optional<BigDecimal> factor(Rulebook rules, String day) {
        return rules.emissionFactors()
                .on(LocalDate.parse(day), Unkeyed.ALL)
                .flatMap(row -> row.row().tonnesPerMwh());
    }

    @Test
    void keysAreComparedWhateverTheirCaseAndSpacing(@TempDir Path folder) {
        Rulebook rules =
                Overlay.in(folder).listedCounts("2025-02-01,,DUNLIN,dn  270,1d,4,12").load();

        assertThat(
                        rules.listedCounts()
                                .on(DAY, new ListedCountRow.Key("Dunlin", "DN 270", "1D", 4))
                                .map(Dated::row))
                .contains(new ListedCountRow(12));
    }

    @Test
    void everyFileIsListedWithItsChecksum(@TempDir Path folder) throws Exception {
        Rulebook rules = Overlay.in(folder).factors("2025-02-01,,1D,4,40,3,3,,").load();
        byte[] bytes = Files.readAllBytes(folder.resolve("veec/factors.csv"));
        String sha = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));

        assertThat(rules.tables()).contains(new TableFile("veec/factors.csv", sha, true));
        // Every table, and the sources.
        assertThat(rules.tables().stream().filter(t -> !t.firms())).hasSize(rules.all().size() + 1);
        assertThat(rules.tables()).allSatisfy(t -> assertThat(t.sha256()).hasSize(64));
    }

    @Test
    void aFileWithByteOrderMarkAndWindowsLineEndsIsRead(@TempDir Path folder) {
        Overlay overlay = Overlay.in(folder).factors("2025-02-01,,1D,4,40,3,3,,");
        String text = "\uFEFF" + read(folder.resolve("veec/factors.csv")).replace("\n", "\r\n");

        Rulebook rules = overlay.file("veec/factors.csv", text).load();

        assertThat(rules.factors().lines()).hasSize(1);
    }

    @Test
    void aReferenceLeadsBackToItsRow() {
        Dated<GstRow> gst = shipped.gst().on(DAY, Unkeyed.ALL).orElseThrow();

        assertThat(shipped.line(gst.ref()).orElseThrow().values()).isEqualTo("price_divisor 11");
        assertThat(gst.row().priceDivisor()).isEqualTo(11);
    }

    private List<RuleLine> inForce() {
        return shipped.all().stream()
                .flatMap(table -> table.lines().stream())
                .filter(line -> line.inForce().contains(DAY))
                .toList();
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void theDemonstrationsTablesLoadAndSayThatTheyAreInvented() {
        Rulebook demo = Rulebook.load(Optional.of(Path.of("src/test/resources/demo-rules")));

        assertThat(demo.factors().lines())
                .hasSize(8)
                .allSatisfy(
                        line ->
                                assertThat(line.ref().inWords())
                                        .contains("invented for the demonstration"));
    }

    @Test
    void theWordsForOldHeatersAreThoseOfTheJob() {
        List<String> words =
                Arrays.stream(OldKind.values())
                        .filter(k -> k != OldKind.NONE && k != OldKind.UNTOLD)
                        .map(k -> k.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                        .toList();

        assertThat(ActivityRow.OLD_KINDS).isEqualTo(words);
    }
}
