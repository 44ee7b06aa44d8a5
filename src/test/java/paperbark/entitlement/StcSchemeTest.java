package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Concern;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.finding.Severity;
import paperbark.firm.Listing;
import paperbark.firm.Products;
import paperbark.job.Field;
import paperbark.job.Jobs;
import paperbark.rules.Overlay;
import paperbark.value.DateRange;
import paperbark.value.SchemeName;

class StcSchemeTest {

    @Test
    void aCleanJobGivesANumberAndNoFinding() {
        Found found = Found.stc(Jobs.installed());

        assertThat(found.count()).contains(15);
        assertThat(found.codes()).isEmpty();
        assertThat(found.entitlement().provisional()).isFalse();
        assertThat(found.entitlement().activity()).isEmpty();
    }

    @Test
    void aJobThatClaimsNoStcsHasNoEntitlement() {
        Found found = Found.stc(Jobs.installed().withoutClaim(SchemeName.STC));

        assertThat(found.assessment()).isEqualTo(Assessment.NONE);
    }

    @Test
    void theWorkingCanBeRedoneByHand() {
        Found found = Found.stc(Jobs.installed().withProduct(Products.heatPump().withStcs(27)));

        assertThat(found.entitlement().steps())
                .extracting(s -> s.label() + " | " + s.working() + " | " + s.result())
                .containsExactly(
                        "Day of installation | installed, "
                                + Jobs.cell(Field.INSTALLED_DATE)
                                + " | 20 Nov 2026",
                        "Last safe day for creating STCs | 20 Nov 2026 + 12 months | 20 Nov 2027",
                        "STC zone | postcode 3342, "
                                + Jobs.cell(Field.SITE_POSTCODE)
                                + ", heat pumps | zone 4",
                        "STCs over ten years | Dunlin DN-270, "
                                + Jobs.cell(Field.MODEL)
                                + ", zone 4, listed from 1 Apr 2001 | 27",
                        "Years that count | installed in 2026 | 5",
                        "STCs for this job | 27 x 5 / 10 = 13.5, fractions dropped | 13",
                        "In the neighbouring years | installed in 2025: 27 x 6 / 10 = 16.2, fractions dropped;"
                                + " installed in 2027: 27 x 4 / 10 = 10.8, fractions dropped | 16 in 2025, 10 in 2027");
    }

    @Test
    void everyRuleRowUsedIsNamedWithItsSource() {
        List<RuleRef> rules = Found.stc(Jobs.installed()).entitlement().rules();

        assertThat(rules)
                .extracting(RuleRef::table)
                .contains("stc/zones.csv", "stc/years.csv", "stc/limits.csv", "products");
        assertThat(rules)
                .contains(
                        new RuleRef(
                                "products",
                                7,
                                "register of solar water heaters, version 61",
                                "",
                                "entered",
                                "stcs_zone_4 30, ten years, eligible from 1 Apr 2001",
                                ""));
    }

    @Test
    void aBookedJobIsProvisionalAndHasNoClosingDate() {
        Found found = Found.stc(Jobs.booked().withVisitOn("2027-01-05"));

        assertThat(found.count()).contains(12);
        assertThat(found.entitlement().provisional()).isTrue();
        assertThat(found.entitlement().lastDay()).isEmpty();
        assertThat(found.step("Day of installation").working())
                .isEqualTo("visit planned, " + Jobs.cell(Field.VISIT_DATE));
    }

    @ParameterizedTest
    @CsvSource({
        "2026-11-20, 2027-11-20",
        "2024-02-29, 2025-02-28",
        "2023-02-28, 2024-02-28",
        "2025-12-31, 2026-12-31"
    })
    void theClosingDateIsTheSameDateNextYear(String installed, LocalDate last) {
        Found found = Found.stc(Jobs.installed().withInstalledOn(installed), last);

        assertThat(found.entitlement().lastDay()).contains(last);
        assertThat(found.codes()).doesNotContain(FindingCode.CLAIM_CLOSED);
    }

    @Test
    void theDayAfterTheClosingDateIsTooLate() {
        Found found = Found.stc(Jobs.installed(), LocalDate.of(2027, 11, 21));

        assertThat(found.fact(FindingCode.CLAIM_CLOSED))
                .isEqualTo("The last day for creating STCs was 20 Nov 2027.");
        assertThat(found.count()).isEmpty();
        assertThat(found.step(StcScheme.COUNT).result()).isEqualTo("none");
    }

    @Test
    void aClaimOlderThan300DaysIsUrgent() {
        LocalDate installed = LocalDate.of(2026, 11, 20);

        assertThat(Found.stc(Jobs.installed(), installed.plusDays(300)).codes()).isEmpty();
        Found late = Found.stc(Jobs.installed(), installed.plusDays(301));
        assertThat(late.codes()).containsExactly(FindingCode.CLAIM_CLOSING);
        assertThat(late.fact(FindingCode.CLAIM_CLOSING))
                .isEqualTo("STCs must be created by 20 Nov 2027, in 64 days.");
        assertThat(late.count()).contains(15);
    }

    @Test
    void aPostcodeWithoutAZoneIsAStopForTheStcsAlone() {
        Found found = Found.stc(Jobs.installed().withPostcode("8001"));

        assertThat(found.finding(FindingCode.ZONE_MISSING).holds())
                .containsExactly(Concern.claim(SchemeName.STC));
        assertThat(found.finding(FindingCode.ZONE_MISSING).place().cellAddress())
                .isEqualTo(Jobs.ORIGIN.cell(Field.SITE_POSTCODE).cellAddress());
        assertThat(found.count()).isEmpty();
    }

    @Test
    void aPostcodeWithASolarZoneAloneHasNoneForAHeatPump() {
        Jobs jobs = Jobs.installed().withPostcode("3117");

        assertThat(Found.stc(jobs).fact(FindingCode.ZONE_MISSING))
                .isEqualTo("Postcode 3117 has no STC zone for heat pumps.");
        assertThat(Found.stc(jobs.withProduct(Products.solar())).entitlement().zone()).contains(4);
    }

    @Test
    void aDeclaredZoneThatDiffersIsAStopButTheNumberIsShown() {
        Found found = Found.stc(Jobs.installed().withStcZone(3));

        assertThat(found.fact(FindingCode.ZONE_DIFFERS))
                .isEqualTo("The register says zone 3; the postcode lies in zone 4.");
        assertThat(found.count()).contains(15);
        assertThat(Found.stc(Jobs.installed().withStcZone(4)).codes()).isEmpty();
    }

    @Test
    void aModelThatIsNotListedForTheZoneEarnsNothing() {
        Listing zoneThree =
                new Listing(DateRange.ALWAYS, Listing.Basis.TEN_YEARS, Map.of(3, 30), "61", 9);

        Found found =
                Found.stc(
                        Jobs.installed().withProduct(Products.heatPump().withListings(zoneThree)));

        assertThat(found.fact(FindingCode.NOT_LISTED_FOR_ZONE))
                .isEqualTo("Dunlin DN-270 is not listed for zone 4.");
        assertThat(found.count()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"2026-01-31, false", "2026-02-01, true", "2026-11-30, true", "2026-12-01, false"})
    void aModelIsListedFromItsFirstToItsLastDay(String day, boolean listed) {
        DateRange period =
                new DateRange(
                        Optional.of(LocalDate.of(2026, 2, 1)),
                        Optional.of(LocalDate.of(2026, 11, 30)));
        Products product =
                Products.heatPump()
                        .withListings(
                                new Listing(
                                        period, Listing.Basis.TEN_YEARS, Map.of(4, 30), "61", 9));

        Found found = Found.stc(Jobs.installed().withProduct(product).withInstalledOn(day));

        assertThat(found.count().isPresent()).isEqualTo(listed);
        assertThat(found.codes().contains(FindingCode.MODEL_NOT_LISTED_THEN)).isNotEqualTo(listed);
    }

    @Test
    void aModelWithoutListingSaysSo() {
        Found found = Found.stc(Jobs.installed().withProduct(Products.heatPump().withListings()));

        assertThat(found.fact(FindingCode.MODEL_NOT_LISTED_THEN))
                .isEqualTo("The products table has no listing of Dunlin DN-270.");
    }

    @Test
    void aHeatPumpOf425LitresIsAllowedAndOneOf426IsNot() {
        Products pump = Products.heatPump();

        assertThat(Found.stc(Jobs.installed().withProduct(pump.withLitres(425))).count())
                .contains(15);
        Found large = Found.stc(Jobs.installed().withProduct(pump.withLitres(426)));
        assertThat(large.fact(FindingCode.HEAT_PUMP_TOO_LARGE))
                .isEqualTo("The heater holds 426 L, more than 425 L.");
        assertThat(large.count()).isEmpty();
        assertThat(large.step(StcScheme.COUNT).rules()).hasSize(1);
    }

    @Test
    void aSolarHeaterAbove700LitresNeedsDeclarations() {
        Products solar = Products.solar();

        assertThat(Found.stc(Jobs.installed().withProduct(solar.withLitres(700))).codes())
                .isEmpty();
        Jobs large = Jobs.installed().withProduct(solar.withLitres(701));
        assertThat(Found.stc(large).codes()).containsExactly(FindingCode.SOLAR_DECLARATION_MISSING);
        assertThat(Found.stc(large).count()).isEmpty();
        assertThat(Found.stc(large.withDeclarationsOn("2026-11-26")).codes())
                .as("declarations still to come")
                .containsExactly(FindingCode.SOLAR_DECLARATION_MISSING);
        assertThat(Found.stc(large.withDeclarationsOn("2026-11-25")).codes()).isEmpty();
    }

    @Test
    void aBookedLargeSolarHeaterHasTimeForItsDeclarations() {
        Products large = Products.solar().withLitres(701);

        assertThat(Found.stc(Jobs.booked().withProduct(large)).codes()).isEmpty();
    }

    @Test
    void declarationsInACellThatCouldNotBeReadAreNotCalledMissing() {
        Jobs jobs =
                Jobs.installed()
                        .withProduct(Products.solar().withLitres(701))
                        .withUnread(Field.DECLARATIONS_DATE);

        assertThat(Found.stc(jobs).codes()).isEmpty();
    }

    @Test
    void aSecondHandHeaterStopsBothSchemes() {
        Found found = Found.stc(Jobs.installed().withSecondHand());

        assertThat(found.finding(FindingCode.SECOND_HAND).holds())
                .containsExactlyInAnyOrder(
                        Concern.claim(SchemeName.STC), Concern.claim(SchemeName.VEEC));
        assertThat(found.count()).isEmpty();
        assertThat(
                        Found.stc(Jobs.installed().withSecondHand().withUnread(Field.NEW_SYSTEM))
                                .codes())
                .isEmpty();
    }

    @Test
    void aTankAloneEarnsNothing() {
        Found found = Found.stc(Jobs.installed().withIncompleteSystem());

        assertThat(found.codes()).containsExactly(FindingCode.SYSTEM_INCOMPLETE);
        assertThat(found.count()).isEmpty();
        assertThat(
                        Found.stc(
                                        Jobs.installed()
                                                .withIncompleteSystem()
                                                .withUnread(Field.COMPLETE_SYSTEM))
                                .codes())
                .isEmpty();
    }

    @Test
    void installationsOutsideTheSchemeAreStops() {
        Found before = Found.stc(Jobs.installed().withInstalledOn("2001-03-31"));
        Found after = Found.stc(Jobs.installed().withInstalledOn("2031-01-01"));

        assertThat(before.codes()).containsExactly(FindingCode.BEFORE_SCHEME);
        assertThat(before.fact(FindingCode.BEFORE_SCHEME))
                .isEqualTo(
                        "The first day for STCs is 1 Apr 2001; the day of this job is 31 Mar 2001.");
        assertThat(after.codes()).containsExactly(FindingCode.AFTER_SCHEME);
        assertThat(after.count()).isEmpty();
    }

    @Test
    void aDayForWhichTheZoneTableSaysNothingIsAStop() {
        Found found = Found.stc(Jobs.installed().withInstalledOn("2019-12-31"));

        assertThat(
                        found.assessment().findings().stream()
                                .filter(f -> f.code() == FindingCode.RULE_MISSING)
                                .map(f -> f.fact()))
                .contains(
                        "For STCs, stc/zones.csv has no row for 3342 on 31 Dec 2019; the nearest is from 1 Jan 2020 (row 63).");
        assertThat(found.finding(FindingCode.RULE_MISSING).holds())
                .containsExactly(Concern.claim(SchemeName.STC));
        assertThat(found.count()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"2021-06-01", "2026-06-01", "2029-06-01", "2030-06-01"})
    void inYearsThatDivideTenOneMoreThanTheRuleIsTooHigh(String day) {
        int rule = count(day, 33);

        assertThat(codes(day, 33, rule + 1)).contains(FindingCode.COUNT_TOO_HIGH);
        assertThat(codes(day, 33, rule))
                .doesNotContain(
                        FindingCode.COUNT_TOO_HIGH,
                        FindingCode.COUNT_TOO_LOW,
                        FindingCode.COUNT_MAY_BE_HIGHER);
        assertThat(codes(day, 33, rule - 1)).contains(FindingCode.COUNT_TOO_LOW);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2022-06-01",
                "2023-06-01",
                "2024-06-01",
                "2025-06-01",
                "2027-06-01",
                "2028-06-01"
            })
    void inOtherYearsOneMoreIsACheckAndTwoMoreAreTooHigh(String day) {
        int rule = count(day, 33);

        assertThat(codes(day, 33, rule + 1))
                .contains(FindingCode.COUNT_MAY_BE_HIGHER)
                .doesNotContain(FindingCode.COUNT_TOO_HIGH);
        assertThat(codes(day, 33, rule + 2)).contains(FindingCode.COUNT_TOO_HIGH);
        assertThat(codes(day, 33, rule)).doesNotContain(FindingCode.COUNT_MAY_BE_HIGHER);
    }

    @Test
    void withoutADeclaredNumberADoubtIsRaisedOnlyWhereTheNumberCouldBeHigher() {
        // 33 at 9 years: 29.7, and 33.99 would give 30; 30 at 4 years: 12, and 30.99 still 12.
        assertThat(undeclared("2022-06-01", 33).fact(FindingCode.COUNT_MAY_BE_HIGHER))
                .isEqualTo(
                        "The rules give 29 STCs, or 30 if the official method rounds only once.");
        assertThat(undeclared("2027-06-01", 30).codes())
                .doesNotContain(FindingCode.COUNT_MAY_BE_HIGHER);
        assertThat(undeclared("2026-06-01", 33).codes())
                .doesNotContain(FindingCode.COUNT_MAY_BE_HIGHER);
    }

    private static Found undeclared(String day, int listed) {
        return Found.stc(
                Jobs.installed()
                        .withInstalledOn(day)
                        .withProduct(Products.heatPump().withStcs(listed)),
                LocalDate.parse(day));
    }

    private static int count(String day, int listed) {
        return undeclared(day, listed).count().orElseThrow();
    }

    private static List<FindingCode> codes(String day, int listed, int declared) {
        return Found.stc(
                        Jobs.installed()
                                .withInstalledOn(day)
                                .withProduct(Products.heatPump().withStcs(listed))
                                .withCount(SchemeName.STC, declared),
                        LocalDate.parse(day))
                .codes();
    }

    @Test
    void aNumberThatIsTooHighIsAStopAndOneThatIsTooLowANote() {
        Found high = Found.stc(Jobs.installed().withCount(SchemeName.STC, 16));
        Found low = Found.stc(Jobs.installed().withCount(SchemeName.STC, 14));

        assertThat(high.fact(FindingCode.COUNT_TOO_HIGH))
                .isEqualTo("The register claims 16 STCs; the rules give 15.");
        assertThat(high.finding(FindingCode.COUNT_TOO_HIGH).severity()).isEqualTo(Severity.STOP);
        assertThat(high.count()).contains(15);
        assertThat(low.finding(FindingCode.COUNT_TOO_LOW).severity()).isEqualTo(Severity.CHECK);
    }

    @Test
    void lessThanOneCertificateIsNone() {
        Found found = Found.stc(Jobs.installed().withProduct(Products.heatPump().withStcs(1)));

        assertThat(found.count()).contains(0);
        assertThat(found.codes()).containsExactly(FindingCode.COUNT_ZERO);
        assertThat(found.step(StcScheme.COUNT).working())
                .isEqualTo("1 x 5 / 10 = 0.5, fractions dropped");
    }

    @ParameterizedTest
    @CsvSource({
        "2026-12-28, ",
        "2026-12-29, On 29 Dec 2026 the job earns 15 STCs; on 1 Jan 2027 it would earn 12.",
        "2026-12-31, On 31 Dec 2026 the job earns 15 STCs; on 1 Jan 2027 it would earn 12.",
        "2027-01-01, On 1 Jan 2027 the job earns 12 STCs; on 31 Dec 2026 it would earn 15.",
        "2027-01-03, On 3 Jan 2027 the job earns 12 STCs; on 31 Dec 2026 it would earn 15.",
        "2027-01-04, "
    })
    void nearTheTurnOfTheYearANoteSaysWhatOneDayChanges(String day, String fact) {
        Found found = Found.stc(Jobs.installed().withInstalledOn(day), LocalDate.parse(day));

        if (fact == null) {
            assertThat(found.codes()).isEmpty();
        } else {
            assertThat(found.fact(FindingCode.YEAR_BOUNDARY)).isEqualTo(fact);
        }
    }

    @Test
    void atTheTurnFrom2030TheNoteSaysNone() {
        Found found =
                Found.stc(
                        Jobs.installed().withInstalledOn("2030-12-31"), LocalDate.of(2030, 12, 31));

        assertThat(found.fact(FindingCode.YEAR_BOUNDARY)).endsWith("it would earn 0.");
    }

    @Test
    void factsThatTheJobsOwnChecksReportAreNotReportedAgain() {
        assertThat(Found.stc(Jobs.installed().withoutProduct()).codes()).isEmpty();
        assertThat(Found.stc(Jobs.installed().withoutPostcode()).codes()).isEmpty();
        assertThat(Found.stc(Jobs.installed().withoutDays()).codes()).isEmpty();
        assertThat(Found.stc(Jobs.installed().withoutProduct()).count()).isEmpty();
        assertThat(Found.stc(Jobs.installed().withoutPostcode()).count()).isEmpty();
        assertThat(Found.stc(Jobs.installed().withoutDays()).count()).isEmpty();
    }

    @Test
    void aFirmsLimitIsUsedAndNamed(@TempDir Path folder) {
        Jobs jobs = Jobs.installed().withProduct(Products.heatPump().withLitres(300));

        Found found =
                Found.of(
                        new StcScheme(),
                        jobs.job(),
                        Overlay.in(folder)
                                .table(
                                        "stc/limits.csv",
                                        "from,to,setting,value",
                                        "2026-01-01,,heat_pump_largest_litres,299",
                                        "2026-01-01,,count_rounding,half-up")
                                .load(),
                        Found.TODAY);

        assertThat(found.finding(FindingCode.HEAT_PUMP_TOO_LARGE).rule().orElseThrow().table())
                .isEqualTo("stc/limits.csv (the firm's)");
    }

    @Test
    void roundingIsADatedSetting(@TempDir Path folder) {
        Jobs jobs = Jobs.installed().withProduct(Products.heatPump().withStcs(27));

        Found found =
                Found.of(
                        new StcScheme(),
                        jobs.job(),
                        Overlay.in(folder)
                                .table(
                                        "stc/limits.csv",
                                        "from,to,setting,value",
                                        "2026-01-01,,count_rounding,half-up")
                                .load(),
                        Found.TODAY);

        assertThat(found.count()).contains(14);
    }

    private static Products withListing(Listing.Basis basis, int stcs) {
        return Products.heatPump()
                .withListings(new Listing(DateRange.ALWAYS, basis, Map.of(4, stcs), "61", 9));
    }

    @Test
    void aNumberForThePeriodIsTakenAsItStands() {
        Found found =
                Found.stc(Jobs.installed().withProduct(withListing(Listing.Basis.PERIOD, 13)));

        assertThat(found.count()).contains(13);
        assertThat(found.codes()).isEmpty();
        assertThat(found.step("STCs for the period").result()).isEqualTo("13");
        assertThat(found.step(StcScheme.COUNT).working())
                .isEqualTo("as the register has it for model, zone and period");
        assertThat(found.entitlement().steps())
                .extracting(Step::label)
                .doesNotContain("Years that count", "In the neighbouring years");
    }

    @Test
    void aNumberForThePeriodIsNoneWhereAStopSaysSo() {
        Found found =
                Found.stc(
                        Jobs.installed()
                                .withSecondHand()
                                .withProduct(withListing(Listing.Basis.PERIOD, 13)));

        assertThat(found.count()).isEmpty();
        assertThat(found.step(StcScheme.COUNT).result()).isEqualTo("none");
    }

    @ParameterizedTest
    @CsvSource({
        "TEN_YEARS, 30, 30, true", // 15 by the rules; the register has the figure itself
        "TEN_YEARS, 30, 15, false",
        "TEN_YEARS, 30, 29, false",
        "PERIOD, 30, 15, true", // half of it, as if the figure were over ten years
        "PERIOD, 30, 30, false",
        "PERIOD, 30, 14, false"
    })
    void aCountThatWouldBeRightOnTheOtherBasisIsDoubtful(
            Listing.Basis basis, int listed, int declared, boolean doubtful) {
        Found found =
                Found.stc(
                        Jobs.installed()
                                .withProduct(withListing(basis, listed))
                                .withCount(SchemeName.STC, declared));

        assertThat(found.codes().contains(FindingCode.STC_BASIS_DOUBTFUL)).isEqualTo(doubtful);
    }
}
