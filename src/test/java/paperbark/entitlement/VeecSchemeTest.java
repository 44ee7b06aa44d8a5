package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.firm.Products;
import paperbark.firm.VeecInputs;
import paperbark.job.Field;
import paperbark.job.Jobs;
import paperbark.job.OldKind;
import paperbark.rules.Overlay;
import paperbark.rules.Rulebook;
import paperbark.value.Boost;
import paperbark.value.DateRange;
import paperbark.value.SchemeName;
import paperbark.value.State;

class VeecSchemeTest {
    private static final String[] FACTORS = {
        "2025-02-01,,1C,4,59,3,3,,", "2025-02-01,,1D,4,43.5,3,3,,",
        "2025-02-01,,1D,5,46.5,3,3,,", "2025-02-01,,3C,4,31,3,3,,",
        "2025-02-01,,3D,4,41.5,3,3,,"
    };

    @TempDir Path folder;

    private Found veec(Jobs jobs) {
        return veec(jobs, Found.TODAY);
    }

    private Found veec(Jobs jobs, LocalDate today) {
        return veec(jobs, Overlay.in(folder).factors(FACTORS).load(), today);
    }

    private static Found veec(Jobs jobs, Rulebook rules, LocalDate today) {
        return Found.of(new VeecScheme(), jobs.job(), rules, today);
    }

    @Test
    void aCleanJobGivesANumberWithItsWorking() {
        Found found = veec(Jobs.installed());

        // (43.5 - 3 x 4 - 3 x 0.3) x 0.393 = 30.6 x 0.393 = 12.0258
        assertThat(found.count()).contains(12);
        assertThat(found.codes()).isEmpty();
        assertThat(found.entitlement().steps())
                .extracting(s -> s.label() + " | " + s.working() + " | " + s.result())
                .containsExactly(
                        "Day of the work | installed, "
                                + Jobs.cell(Field.INSTALLED_DATE)
                                + " | 20 Nov 2026",
                        "Last safe day for creating VEECs | end of 2026 + 6 months | 30 Jun 2027",
                        "Activity | electric storage replaced ("
                                + Jobs.cell(Field.OLD_KIND)
                                + ") by heat pump | 1D",
                        "Climate zone | postcode 3342, "
                                + Jobs.cell(Field.SITE_POSTCODE)
                                + ", STC zone 4 | zone 4",
                        "Energies of the product | Dunlin DN-270, "
                                + Jobs.cell(Field.MODEL)
                                + ", zone 4 | Bs 4, Be 0.3 GJ a year",
                        "Factors of the activity | abatement 43.5 MWh, supplementary SEF 3,"
                                + " auxiliary AEF 3, no location factor, no discount factor"
                                + " | version test",
                        "Emission factor | electricity, EEF, version test of the Specifications"
                                + " | 0.393 t a MWh",
                        "Tonnes of CO2-e | (abatement - SEF x Bs - AEF x Be) x EEF"
                                + " = (43.5 - 3 x 4 - 3 x 0.3) x 0.393 = 12.0258 | 12.0258 t",
                        "VEECs for this job | 12.0258 t, rounded to the nearest whole, a half up | 12",
                        "In the neighbouring years"
                                + " | on 20 Nov 2025: (43.5 - 3 x 4 - 3 x 0.3) x 0.393 = 12.0258 t,"
                                + " rounded to the nearest whole, a half up;"
                                + " on 20 Nov 2027: (43.5 - 3 x 4 - 3 x 0.3) x 0.393 = 12.0258 t,"
                                + " rounded to the nearest whole, a half up"
                                + " | 12 on 20 Nov 2025, 12 on 20 Nov 2027");
    }

    @Test
    void equation31IsWrittenAsItWasRead() {
        Found found = veec(Jobs.installed().withOldHeater(OldKind.GAS_STORAGE));

        assertThat(found.entitlement().activity()).contains("3C");
        assertThat(found.step(VeecScheme.TONNES).working())
                .isEqualTo(
                        "(abatement - (SEF x Bs + AEF x Be)) x EEF"
                                + " = (31 - (3 x 4 + 3 x 0.3)) x 0.393 = 7.1133");
        assertThat(found.count()).contains(7);
    }

    @Test
    void aJobThatClaimsNoVeecsHasNoEntitlement() {
        assertThat(veec(Jobs.installed().withoutClaim(SchemeName.VEEC)).assessment())
                .isEqualTo(Assessment.NONE);
    }

    @ParameterizedTest
    @CsvSource({
        "ELECTRIC_STORAGE, solar, 1C",
        "ELECTRIC_INSTANT, solar, 1C",
        "ELECTRIC_STORAGE, pump, 1D",
        "ELECTRIC_INSTANT, pump, 1D",
        "GAS_STORAGE, pump, 3C",
        "GAS_INSTANT, pump, 3C",
        "GAS_STORAGE, solar, 3D",
        "GAS_INSTANT, solar, 3D"
    })
    void oldAndNewHeaterDecideTheActivity(OldKind old, String replacement, String activity) {
        Products product = replacement.equals("solar") ? Products.solar() : Products.heatPump();

        Found found = veec(Jobs.installed().withOldHeater(old).withProduct(product));

        assertThat(found.entitlement().activity()).contains(activity);
        assertThat(found.count()).isPresent();
    }

    @ParameterizedTest
    @CsvSource({
        "ELECTRIC_STORAGE, 2023-06-30, 1F",
        "ELECTRIC_STORAGE, 2023-07-01, ",
        "GAS_INSTANT, 2023-06-30, 3B",
        "GAS_INSTANT, 2023-07-01, "
    })
    void gasBoostedInstallationsEndedWithJune2023(OldKind old, String day, String activity) {
        Jobs jobs =
                Jobs.installed()
                        .withInstalledOn(day)
                        .withOldHeater(old)
                        .withProduct(Products.solar().withBoost(Boost.GAS));

        Found found = veec(jobs, LocalDate.parse(day));

        assertThat(found.entitlement().activity()).isEqualTo(Optional.ofNullable(activity));
        assertThat(found.codes().contains(FindingCode.VEEC_ACTIVITY_CLOSED))
                .isEqualTo(activity == null);
        assertThat(found.count()).isEmpty();
    }

    @Test
    void aClosedActivityIsNamedWithItsEnd() {
        Found found = veec(Jobs.installed().withProduct(Products.solar().withBoost(Boost.GAS)));

        assertThat(found.fact(FindingCode.VEEC_ACTIVITY_CLOSED))
                .isEqualTo(
                        "Activity 1F (old: electric storage; new: evacuated tube solar, gas boost) ended on 30 Jun 2023.");
    }

    @ParameterizedTest
    @EnumSource(
            value = OldKind.class,
            names = {"SOLAR_ELECTRIC", "SOLAR_GAS", "HEAT_PUMP", "SOLID_FUEL"})
    void otherOldHeatersLeaveTheActivityUnclear(OldKind old) {
        Found found = veec(Jobs.installed().withOldHeater(old));

        assertThat(found.codes()).containsExactly(FindingCode.VEEC_ACTIVITY_UNCLEAR);
        assertThat(found.count()).isEmpty();
    }

    @Test
    void aGapInTheActivitiesSaysWhy() {
        assertThat(
                        veec(Jobs.installed().withOldHeater(OldKind.SOLAR_GAS))
                                .fact(FindingCode.VEEC_ACTIVITY_UNCLEAR))
                .contains("some solar heaters may be replaced but the criteria could not be read");
    }

    @Test
    void aSolarHeaterWithoutBoostLeavesTheActivityUnclear() {
        Found found = veec(Jobs.installed().withProduct(Products.solar().withBoost(Boost.NONE)));

        assertThat(found.codes()).containsExactly(FindingCode.VEEC_ACTIVITY_UNCLEAR);
    }

    @Test
    void premisesOutsideVictoriaEarnNothing() {
        Found found = veec(Jobs.installed().withState(State.NSW).withPostcode("2000"));

        assertThat(found.codes()).containsExactly(FindingCode.VEEC_NOT_VICTORIA);
        assertThat(found.fact(FindingCode.VEEC_NOT_VICTORIA))
                .isEqualTo("The site is in New South Wales.");
        assertThat(found.count()).isEmpty();
    }

    @Test
    void aPostcodeWithoutAZoneIsAStopForTheVeecsAlone() {
        Found unknown = veec(Jobs.installed().withPostcode("8001"));
        Found blank = veec(Jobs.installed().withPostcode("3117"));

        assertThat(unknown.finding(FindingCode.ZONE_MISSING).holds())
                .containsExactly(Concern.claim(SchemeName.VEEC));
        assertThat(blank.codes()).containsExactly(FindingCode.ZONE_MISSING);
    }

    @Test
    void aClimateZoneThatWasNotReadIsACheckAndNotAGuess() {
        Found found = veec(Jobs.installed().withPostcode("3500"));

        assertThat(found.codes()).containsExactly(FindingCode.VEEC_TABLE_MISSING);
        assertThat(found.fact(FindingCode.VEEC_TABLE_MISSING))
                .startsWith("The climate zone is not known: veec/climate-zones.csv has no value");
        assertThat(found.entitlement().zone()).isEmpty();
        assertThat(found.count()).isEmpty();
    }

    @Test
    void coldPlacesAreZoneFiveForHeatPumps() {
        assertThat(veec(Jobs.installed().withPostcode("3350")).entitlement().zone()).contains(5);
    }

    @Test
    void withoutTablesThePaperGoesOutWithoutANumber() {
        Found found = veec(Jobs.installed(), Found.SHIPPED, Found.TODAY);

        assertThat(found.count()).isEmpty();
        assertThat(found.codes())
                .containsExactly(FindingCode.VEEC_TABLE_MISSING, FindingCode.VEEC_TABLE_MISSING);
        assertThat(found.finding(FindingCode.VEEC_TABLE_MISSING).severity())
                .isEqualTo(Severity.CHECK);
        assertThat(found.assessment().findings())
                .extracting(Finding::fact)
                .containsExactly(
                        "Whether the co-payment of $350.00 suffices is not known:"
                                + " veec/conditions.csv has no value for co_payment_least_dollars"
                                + " on 20 Nov 2026 (row 9: version 25.0 is known by name only; it"
                                + " may have changed the amount).",
                        "The number of VEECs cannot be worked out:"
                                + " veec/factors.csv has no row for 1D, 4 on 20 Nov 2026;"
                                + " veec/emission-factors.csv has no emission factor of version"
                                + " 25.0 of the Specifications (row 8: known by name only; none of"
                                + " its figures was read);"
                                + " veec/listed-counts.csv has no row for Dunlin, DN-270, 1D, 4 on 20 Nov 2026.");
    }

    @Test
    void whereTheLeastCoPaymentIsNotKnownNoneAtAllIsStillAStop() {
        Found found = veec(Jobs.installed().withoutCoPayment(), Found.SHIPPED, Found.TODAY);

        assertThat(found.fact(FindingCode.VEEC_CO_PAYMENT_MISSING))
                .startsWith(
                        "No co-payment is noted; how much is needed is not known:"
                                + " veec/conditions.csv has no value");
    }

    @ParameterizedTest
    @CsvSource({"test, 12", "TEST, 12", "24.0, "})
    void factorsOfAnotherVersionThanTheOneInForceAreAStop(String version, Integer count) {
        Rulebook rules =
                Overlay.in(folder)
                        .emissionFactors("2025-02-01,,%s,0.393".formatted(version))
                        .factors(FACTORS)
                        .load();

        Found found = veec(Jobs.installed(), rules, Found.TODAY);

        assertThat(found.count()).isEqualTo(Optional.ofNullable(count));
        if (count == null) {
            assertThat(found.codes()).containsExactly(FindingCode.VEEC_VERSIONS_MIXED);
            assertThat(found.fact(FindingCode.VEEC_VERSIONS_MIXED))
                    .isEqualTo(
                            "The factors are of version test of the Specifications; on 20 Nov 2026"
                                    + " version 24.0 is in force.");
            assertThat(found.step(VeecScheme.COUNT).result()).isEqualTo("none");
        }
    }

    @ParameterizedTest
    @CsvSource({"2026-06-29, false", "2026-06-30, true", "2026-07-21, true"})
    void factorsThatWereCarriedToTheNextVersionAreAStop(String day, boolean mixed) {
        Rulebook rules =
                Overlay.in(folder)
                        .versionedFactors("2025-02-01,,1D,4,23.0,43.5,3,3,,")
                        .conditions()
                        .load();

        Found found = veec(Jobs.installed().withInstalledOn(day), rules, Found.TODAY);

        assertThat(found.codes().contains(FindingCode.VEEC_VERSIONS_MIXED)).isEqualTo(mixed);
        assertThat(found.count().isPresent()).isNotEqualTo(mixed);
    }

    @Test
    void aListedCountDoesNotMendAMixture() {
        Rulebook rules =
                Overlay.in(folder)
                        .versionedFactors("2025-02-01,,1D,4,23.0,43.5,3,3,,")
                        .listedCounts("2025-02-01,,Dunlin,DN-270,1D,4,12")
                        .load();

        assertThat(veec(Jobs.installed(), rules, Found.TODAY).codes())
                .containsExactly(FindingCode.VEEC_VERSIONS_MIXED);
    }

    @ParameterizedTest
    @CsvSource({"2023-05-31, true", "2023-05-30, false"})
    void beforeTheEquationsWereRewrittenNoneIsKnown(String day, boolean known) {
        Rulebook rules =
                Overlay.in(folder)
                        .emissionFactors("2023-01-01,,test,0.7")
                        .factors("2023-01-01,,1D,4,43.5,3,3,,")
                        .load();

        Found found = veec(Jobs.installed().withInstalledOn(day), rules, LocalDate.parse(day));

        assertThat(found.count().isPresent()).isEqualTo(known);
        if (!known) {
            assertThat(found.fact(FindingCode.VEEC_TABLE_MISSING))
                    .contains("the equation of activity 1D for 30 May 2023 was not read");
        }
    }

    @Test
    void aYearWithoutEmissionsFactorSaysWhichTableLacksIt() {
        Rulebook rules =
                Overlay.in(folder).versionedFactors("2023-01-01,,1D,4,16.0,40,3,3,,").load();
        LocalDate day = LocalDate.of(2024, 6, 1);

        Found found = veec(Jobs.installed().withInstalledOn(day), rules, day);

        assertThat(found.fact(FindingCode.VEEC_TABLE_MISSING))
                .contains(
                        "veec/emission-factors.csv has no emission factor of version 16.0 of the Specifications (row 5");
    }

    @Test
    void anActivityWhoseEquationWasNotReadNeedsAListedCount() {
        Rulebook rules =
                Overlay.in(folder).versionedFactors("2022-01-01,,1F,4,12.0,40,3,3,,").load();
        LocalDate day = LocalDate.of(2022, 6, 1);
        Jobs jobs =
                Jobs.installed()
                        .withInstalledOn(day)
                        .withProduct(Products.solar().withBoost(Boost.GAS));

        assertThat(veec(jobs, rules, day).fact(FindingCode.VEEC_TABLE_MISSING))
                .contains("the equation of activity 1F for 1 Jun 2022 was not read");
    }

    @Test
    void aListedCountIsUsedWhereThereAreNoFactors() {
        Rulebook rules =
                Overlay.in(folder).listedCounts("2025-02-01,,Dunlin,DN-270,1D,4,13").load();

        Found found = veec(Jobs.installed(), rules, Found.TODAY);

        assertThat(found.count()).contains(13);
        assertThat(found.codes()).isEmpty();
        assertThat(found.step(VeecScheme.COUNT).working()).isEqualTo("as listed");
    }

    @Test
    void aProductInTheListNeedsNoEnergies() {
        Rulebook rules =
                Overlay.in(folder).listedCounts("2025-02-01,,Dunlin,DN-270,1D,4,13").load();
        Products product = Products.heatPump().withVeec(Optional.empty());

        assertThat(veec(Jobs.installed().withProduct(product), rules, Found.TODAY).count())
                .contains(13);
    }

    @ParameterizedTest
    @CsvSource({"11, 11", "12, 12", "13, 12"})
    void whereBothWaysDifferTheLowerNumberIsUsed(int listed, int used) {
        Rulebook rules =
                Overlay.in(folder)
                        .factors(FACTORS)
                        .listedCounts("2025-02-01,,Dunlin,DN-270,1D,4," + listed)
                        .load();

        Found found = veec(Jobs.installed(), rules, Found.TODAY);

        assertThat(found.count()).contains(used);
        assertThat(found.codes().contains(FindingCode.VEEC_WAYS_DISAGREE)).isEqualTo(listed != 12);
    }

    @Test
    void aFactorForThePlaceOrADiscountIsApplied() {
        Rulebook rules = Overlay.in(folder).factors("2025-02-01,,1D,4,43.5,3,3,0.98,0.5").load();

        Found found = veec(Jobs.installed(), rules, Found.TODAY);

        assertThat(found.step(VeecScheme.TONNES).working())
                .isEqualTo(
                        "(abatement - SEF x Bs - AEF x Be) x EEF x location factor x discount factor"
                                + " = (43.5 - 3 x 4 - 3 x 0.3) x 0.393 x 0.98 x 0.5 = 5.892642");
        assertThat(found.count()).contains(6);
    }

    @Test
    void whereDroppedFractionsGiveAnotherNumberThereIsACheck() {
        Rulebook rules = Overlay.in(folder).factors("2025-02-01,,1D,4,40,3,3,,").load();
        Jobs jobs = Jobs.installed().withProduct(Products.heatPump().withEnergies("3.0", "0.2"));

        Found found = veec(jobs, rules, Found.TODAY);

        assertThat(found.count()).contains(12);
        assertThat(found.fact(FindingCode.VEEC_ROUNDING))
                .isEqualTo("11.9472 t give 12 VEECs rounded and 11 with fractions dropped.");
    }

    @Test
    void theRoundingIsADatedSetting() {
        Rulebook rules =
                Overlay.in(folder)
                        .factors("2025-02-01,,1D,4,40,3,3,,")
                        .conditions("2026-06-01,,count_rounding,down")
                        .load();
        Jobs jobs = Jobs.installed().withProduct(Products.heatPump().withEnergies("3.0", "0.2"));

        assertThat(veec(jobs, rules, Found.TODAY).count()).contains(11);
        assertThat(veec(jobs, rules, Found.TODAY).codes()).isEmpty();
        assertThat(veec(jobs.withInstalledOn("2026-05-31"), rules, Found.TODAY).count())
                .contains(12);
    }

    @ParameterizedTest
    @CsvSource({"18.9, 2, true", "20.6, 3, false", "76, 25, false", "78, 26, true"})
    void aNumberOutsideTheUsualIsNoted(String abatement, int count, boolean noted) {
        Rulebook rules =
                Overlay.in(folder).factors("2025-02-01,,1D,4," + abatement + ",3,3,,").load();

        Found found = veec(Jobs.installed(), rules, Found.TODAY);

        assertThat(found.count()).contains(count);
        assertThat(found.codes().contains(FindingCode.VEEC_UNUSUAL)).isEqualTo(noted);
    }

    @Test
    void anInefficientProductEarnsNoneAndNeverLess() {
        Rulebook rules = Overlay.in(folder).factors("2025-02-01,,1D,4,5,3,3,,").load();

        Found found = veec(Jobs.installed(), rules, Found.TODAY);

        assertThat(found.count()).contains(0);
        assertThat(found.codes()).containsExactly(FindingCode.COUNT_ZERO, FindingCode.VEEC_UNUSUAL);
    }

    @Test
    void aProductMustBeOnTheVictorianRegisterOnTheDayAndInTheZone() {
        VeecInputs.Energies energies =
                Products.heatPump().product().veec().orElseThrow().byZone().get(4);
        DateRange from2027 = new DateRange(Optional.of(LocalDate.of(2027, 1, 1)), Optional.empty());

        Map<Optional<VeecInputs>, String> facts =
                Map.of(
                        Optional.<VeecInputs>empty(),
                        "The products table has no Victorian listing of Dunlin DN-270.",
                        Optional.of(new VeecInputs(from2027, Map.of(4, energies), 7)),
                        "The products table has Dunlin DN-270 on the Victorian register from 1 Jan 2027, not on 20 Nov 2026.",
                        Optional.of(new VeecInputs(DateRange.ALWAYS, Map.of(5, energies), 7)),
                        "The Victorian listing of Dunlin DN-270 in the products table has no figures for zone 4.");
        facts.forEach(
                (inputs, fact) -> {
                    Found found =
                            veec(
                                    Jobs.installed()
                                            .withProduct(Products.heatPump().withVeec(inputs)));
                    assertThat(found.codes()).containsExactly(FindingCode.VEEC_NOT_LISTED);
                    assertThat(found.fact(FindingCode.VEEC_NOT_LISTED)).isEqualTo(fact);
                    assertThat(found.count()).isEmpty();
                });
    }

    @Test
    void theListingIsCheckedEvenIfTheActivityIsNotKnown() {
        Products product = Products.heatPump().withVeec(Optional.empty());

        assertThat(veec(Jobs.booked().withoutOldHeater().withProduct(product)).codes())
                .containsExactly(FindingCode.VEEC_NOT_LISTED);
        assertThat(veec(Jobs.booked().withoutOldHeater()).codes()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"2026-01-02", "2026-08-15", "2026-12-31"})
    void theClosingDateIs30JuneOfTheYearAfter(String day) {
        Found found = veec(Jobs.installed().withInstalledOn(day), LocalDate.of(2027, 1, 1));

        assertThat(found.entitlement().lastDay()).contains(LocalDate.of(2027, 6, 30));
    }

    @ParameterizedTest
    @CsvSource({
        "2027-05-01, ",
        "2027-05-02, CLAIM_CLOSING",
        "2027-06-30, CLAIM_CLOSING",
        "2027-07-01, CLAIM_CLOSED"
    })
    void fewerThan60DaysAreUrgentAndThenItIsTooLate(String today, FindingCode code) {
        Found found = veec(Jobs.installed(), LocalDate.parse(today));

        assertThat(found.codes()).isEqualTo(Optional.ofNullable(code).stream().toList());
        assertThat(found.count().isPresent()).isEqualTo(code != FindingCode.CLAIM_CLOSED);
    }

    @Test
    void theDayOfTheWorkIsTheLaterOfInstallationAndRemoval() {
        Found later = veec(Jobs.installed().withOldRemovedOn("2027-01-04"));
        Found earlier = veec(Jobs.installed().withOldRemovedOn("2026-11-19"));

        assertThat(later.step("Day of the work").result()).isEqualTo("4 Jan 2027");
        assertThat(later.step("Day of the work").working())
                .isEqualTo("old heater put out of use, " + Jobs.cell(Field.OLD_REMOVED_DATE));
        assertThat(later.entitlement().lastDay()).contains(LocalDate.of(2028, 6, 30));
        assertThat(earlier.entitlement().lastDay()).contains(LocalDate.of(2027, 6, 30));
    }

    @Test
    void aBookedJobIsNotAskedForWhatComesWithTheWork() {
        Found found = veec(Jobs.booked());

        assertThat(found.codes()).isEmpty();
        assertThat(found.count()).contains(12);
        assertThat(found.entitlement().provisional()).isTrue();
        assertThat(found.entitlement().lastDay()).isEmpty();
    }

    @Test
    void theOldHeaterMustBePutOutOfUseForGood() {
        Optional<String> said = Optional.of("said");
        Jobs jobs = Jobs.installed();

        assertThat(fact(jobs.withOldHeaterEnd(Optional.empty(), said)))
                .isEqualTo("The register does not say how the old heater was put out of use.");
        assertThat(fact(jobs.withOldHeaterEnd(said, Optional.empty())))
                .isEqualTo("The register does not say where the old heater went.");
        assertThat(fact(jobs.withOldHeaterEnd(Optional.empty(), Optional.empty())))
                .isEqualTo(
                        "The register does not say how the old heater was put out of use, nor where it went.");
        assertThat(fact(Jobs.installed().withoutOldHeater()))
                .isEqualTo("The register names no old heater.");
        assertThat(veec(jobs.withOldHeaterEnd(said, said)).codes()).isEmpty();
    }

    @Test
    void whereNothingWasTakenOutNothingCouldBePutOutOfUse() {
        assertThat(veec(Jobs.installed().withOldHeater(OldKind.NONE)).codes())
                .containsExactly(FindingCode.VEEC_ACTIVITY_UNCLEAR);
    }

    private String fact(Jobs jobs) {
        return veec(jobs).fact(FindingCode.VEEC_NOT_DECOMMISSIONED);
    }

    @Test
    void aNumberIsShownBesideAStopThatCanBeMended() {
        Found found =
                veec(Jobs.installed().withBareOldHeater(OldKind.GAS_STORAGE).withoutCoPayment());

        assertThat(found.codes())
                .containsExactly(
                        FindingCode.VEEC_NOT_DECOMMISSIONED, FindingCode.VEEC_CO_PAYMENT_MISSING);
        assertThat(found.count()).contains(7);
    }

    @ParameterizedTest
    @CsvSource({
        "2025-01-31, , ",
        "2025-02-01, , No co-payment is noted; at least $200 is needed.",
        "2025-02-01, 199.99, The co-payment is $199.99; at least $200 is needed.",
        "2025-02-01, 200.00, "
    })
    void theCoPaymentIsAskedForFromFebruary2025(String day, String paid, String fact) {
        Jobs jobs = Jobs.installed().withInstalledOn(day).withoutCoPayment();
        Optional.ofNullable(paid).ifPresent(jobs::withCoPayment);

        Found found = veec(jobs, LocalDate.parse(day));

        if (fact == null) {
            assertThat(found.codes()).doesNotContain(FindingCode.VEEC_CO_PAYMENT_MISSING);
        } else {
            assertThat(found.fact(FindingCode.VEEC_CO_PAYMENT_MISSING)).isEqualTo(fact);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "2025-03-30, 4, false",
        "2025-03-31, 4, true",
        "2025-03-31, 5, false",
        "2025-03-31, , false"
    })
    void aShortWarrantyIsAStopFromTheEndOfMarch2025(String day, Integer years, boolean stops) {
        Jobs jobs =
                Jobs.installed()
                        .withInstalledOn(day)
                        .withProduct(Products.heatPump().withWarranty(Optional.ofNullable(years)));

        assertThat(
                        veec(jobs, LocalDate.parse(day))
                                .codes()
                                .contains(FindingCode.VEEC_WARRANTY_SHORT))
                .isEqualTo(stops);
    }

    @Test
    void above700LitresAHeatPumpBelongsToPart44() {
        Products pump = Products.heatPump();

        assertThat(veec(Jobs.installed().withProduct(pump.withLitres(700))).codes())
                .doesNotContain(FindingCode.VEEC_TOO_LARGE);
        assertThat(veec(Jobs.installed().withProduct(pump.withLitres(701))).codes())
                .containsExactly(FindingCode.VEEC_TOO_LARGE);
    }

    @Test
    void aLargeSolarHeaterIsDoubtfulAndNotRefused() {
        Found found = veec(Jobs.installed().withProduct(Products.solar().withLitres(701)));

        assertThat(found.codes())
                .contains(FindingCode.VEEC_SIZE_UNCLEAR)
                .doesNotContain(FindingCode.VEEC_TOO_LARGE);
        assertThat(found.finding(FindingCode.VEEC_SIZE_UNCLEAR).severity())
                .isEqualTo(Severity.CHECK);
        assertThat(found.count()).isPresent();
    }

    @ParameterizedTest
    @CsvSource({"270, ", "700, ", "701, VEEC_SIZE_UNCLEAR"})
    void beforeTheLimitWasReadOnlyALargeHeaterIsDoubtful(int litres, FindingCode code) {
        LocalDate day = LocalDate.of(2025, 7, 10);
        Products pump = Products.heatPump().withLitres(litres);

        LocalDate later = LocalDate.of(2026, 2, 1);
        Found found = veec(Jobs.installed().withInstalledOn(day).withProduct(pump), later);

        assertThat(found.codes()).isEqualTo(Optional.ofNullable(code).stream().toList());
        assertThat(found.count()).isPresent();
    }

    @Test
    void workOutsideTheSchemeIsAStop() {
        Found before = veec(Jobs.installed().withInstalledOn("2008-12-31"));
        Found after = veec(Jobs.installed().withInstalledOn("2046-01-01"));

        assertThat(before.codes()).containsExactly(FindingCode.BEFORE_SCHEME);
        assertThat(after.codes()).containsExactly(FindingCode.AFTER_SCHEME);
        assertThat(after.finding(FindingCode.AFTER_SCHEME).holds())
                .containsExactly(Concern.claim(SchemeName.VEEC));
    }

    @Test
    void theDeclaredNumberIsCompared() {
        assertThat(veec(Jobs.installed().withCount(SchemeName.VEEC, 13)).codes())
                .containsExactly(FindingCode.COUNT_TOO_HIGH);
        assertThat(veec(Jobs.installed().withCount(SchemeName.VEEC, 11)).codes())
                .containsExactly(FindingCode.COUNT_TOO_LOW);
        assertThat(veec(Jobs.installed().withCount(SchemeName.VEEC, 12)).codes()).isEmpty();
    }

    @Test
    void factsThatTheJobsOwnChecksReportAreNotReportedAgain() {
        assertThat(veec(Jobs.installed().withoutProduct()).codes()).isEmpty();
        assertThat(veec(Jobs.installed().withoutPostcode()).codes()).isEmpty();
        assertThat(veec(Jobs.installed().withoutDays()).codes()).isEmpty();
        assertThat(
                        veec(Jobs.installed()
                                        .withoutOldHeater()
                                        .withoutCoPayment()
                                        .withUnread(Field.OLD_KIND, Field.CO_PAYMENT))
                                .codes())
                .isEmpty();
    }

    @Test
    void aSecondHandHeaterEarnsNothing() {
        Found found = veec(Jobs.installed().withSecondHand());

        assertThat(found.codes()).containsExactly(FindingCode.SECOND_HAND);
        assertThat(found.count()).isEmpty();
    }

    @Test
    void inventedFactorsMakeTheEntitlementADemonstration() {
        Rulebook demo = Rulebook.load(Optional.of(Path.of("src/test/resources/demo-rules")));

        assertThat(veec(Jobs.installed(), demo, Found.TODAY).entitlement().isDemo()).isTrue();
        assertThat(veec(Jobs.installed()).entitlement().isDemo()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "ELECTRIC_STORAGE, pump, 12",
        "ELECTRIC_STORAGE, solar, 17",
        "GAS_STORAGE, pump, 7",
        "GAS_STORAGE, solar, 10"
    })
    void theDemonstrationGivesTypicalNumbers(OldKind old, String replacement, int typical) {
        Rulebook demo = Rulebook.load(Optional.of(Path.of("src/test/resources/demo-rules")));
        Products product = replacement.equals("solar") ? Products.solar() : Products.heatPump();

        Found found =
                veec(Jobs.installed().withOldHeater(old).withProduct(product), demo, Found.TODAY);

        assertThat(found.count()).contains(typical);
    }
}
