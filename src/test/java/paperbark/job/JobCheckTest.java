package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.value.SchemeName;

class JobCheckTest {

    @Test
    void bookedJobsMissNothingYet() {
        assertThat(Register.read("Stage,Visit date,Claim STCs\nbooked,25/11/2026,yes").codes())
                .isEmpty();
    }

    @Test
    void theOwnerCannotSignBeforeTheHeaterIsIn() {
        Finding finding =
                Register.read(
                                "Stage,Installed on,Assignment signed on\ninstalled,20/11/2026,19/11/2026")
                        .only("signed-before-installed");
        assertThat(finding.holds())
                .containsExactlyInAnyOrder(
                        Concern.claim(SchemeName.STC), Concern.claim(SchemeName.VEEC));
        assertThat(
                        Register.read(
                                        "Stage,Installed on,Assignment signed on\ninstalled,20/11/2026,20/11/2026")
                                .codes())
                .doesNotContain("signed-before-installed");
    }

    @Test
    void todayIsNotInTheFuture() {
        assertThat(Register.read("Installed on\n23/11/2026").codes())
                .doesNotContain("date-in-future");
        assertThat(Register.read("Installed on\n24/11/2026").codes()).contains("date-in-future");
    }

    @Test
    void laterDaysAreLookedAtThoughTheDayOfInstallationIsMissing() {
        assertThat(Register.read("Stage,Assignment signed on\ninstalled,16/12/2026").codes())
                .contains("dates-out-of-order");
    }

    @Test
    void anInstalledJobWithoutADayHoldsItsClaims() {
        Finding finding =
                Register.read("Stage\ninstalled").findings().stream()
                        .filter(f -> f.severity() == Severity.STOP)
                        .findFirst()
                        .orElseThrow();
        assertThat(finding.code().code()).isEqualTo("fact-missing");
        assertThat(finding.holds())
                .containsExactlyInAnyOrder(
                        Concern.claim(SchemeName.STC), Concern.claim(SchemeName.VEEC));
    }

    @ParameterizedTest
    @CsvSource({
        "installed, discount, 3750, ''",
        "installed, discount, 4350, amounts-differ",
        "installed, '', 3750, ''",
        "installed, '', 4350, ''",
        "installed, '', 4000, amounts-differ",
        "installed, payment, 4350, ''",
        "installed, payment, 3750, amounts-differ",
        "installed, payment, 4400, amounts-differ",
        "installed, other, 4400, amounts-differ",
        "booked, discount, 4350, amounts-differ"
    })
    void fullPriceCoPaymentAndBenefitAgreeOrAreTold(
            String stage, String form, String paid, String code) {
        String csv =
                "Stage,Claim STCs,STC benefit,Full price,Benefit form,Co-payment\n"
                        + String.join(",", stage, "yes", "600", "4350", form, paid);
        assertThat(Register.read(csv).codes().contains("amounts-differ"))
                .isEqualTo(!code.isEmpty());
    }

    @Test
    void aBenefitMissingHoldsItsOwnSchemeAlone() {
        Finding finding =
                Register.read(
                                "Installed on,Claim STCs,STC benefit,Claim VEECs,VEEC benefit\n20/11/2026,yes,500,yes,")
                        .only("benefit-missing");
        assertThat(finding.holds()).containsExactly(Concern.claim(SchemeName.VEEC));
    }

    @Test
    void aBenefitOfNothingIsToBeLookedAt() {
        Finding finding =
                Register.read(
                                "Visit date,Claim STCs,STC benefit,Claim VEECs,VEEC benefit\n25/11/2026,yes,0,no,0")
                        .only("benefit-zero");
        assertThat(finding.severity()).isEqualTo(Severity.CHECK);
        assertThat(finding.place().cellAddress()).isEqualTo("C2");
    }

    @Test
    void aLapsedLicenceStopsAnInstalledJobAndWarnsOfABookedOne() {
        String plumber =
                Register.TABLES.people().stream()
                        .filter(
                                p ->
                                        p.licences().stream()
                                                .anyMatch(
                                                        l ->
                                                                l.inForce()
                                                                        .to()
                                                                        .map(
                                                                                to ->
                                                                                        to.isBefore(
                                                                                                Register
                                                                                                        .TODAY))
                                                                        .orElse(false)))
                        .findFirst()
                        .orElseThrow()
                        .name();
        assertThat(
                        Register.read("Installed on,Plumber\n20/11/2026," + plumber)
                                .only("licence-expired")
                                .severity())
                .isEqualTo(Severity.STOP);
        assertThat(
                        Register.read("Visit date,Plumber\n25/11/2026," + plumber)
                                .only("licence-expired")
                                .severity())
                .isEqualTo(Severity.CHECK);
    }

    // Source of the five days: Building Act 1993 (Vic) s 221ZH, in the state-papers table.
    @Test
    void aCertificateOnTheLastDayIsInTime() {
        assertThat(
                        Register.read(
                                        "Installed on,Plumbing certificate date\n9/11/2026,14/11/2026")
                                .codes())
                .doesNotContain("certificate-late");
        assertThat(
                        Register.read(
                                        "Installed on,Plumbing certificate date\n9/11/2026,15/11/2026")
                                .codes())
                .contains("certificate-late");
        assertThat(
                        Register.read("Installed on,Plumbing certificate date\n9/11/2026,8/11/2026")
                                .codes())
                .contains("dates-out-of-order");
    }

    @Test
    void theStateIsNeverOverwrittenByThePostcode() {
        Register.Result result = Register.read("Site state,Site postcode\nVIC,2331");
        assertThat(result.only("postcode-of-other-state").severity()).isEqualTo(Severity.STOP);
        assertThat(result.jobs().get(0).site().address().state()).hasToString("Optional[VIC]");
        assertThat(Register.read("Site state,Site postcode\nNSW,3644").codes())
                .doesNotContain("postcode-of-other-state");
    }

    // Which postcodes lie on a border: au/postcode-states.csv; 2620 lies in NSW and the ACT.
    @Test
    void aPostcodeOfAnotherStateStopsTheClaimUnlessItIsNearABorderOrOnlyPostal() {
        assertThat(
                        Register.read("Site state,Site postcode,Claim STCs\nVIC,2342,yes")
                                .only("postcode-of-other-state"))
                .satisfies(f -> assertThat(f.holds()).isEqualTo(Concern.CLAIMS));
        assertThat(
                        Register.read("Site state,Site postcode,Claim STCs\nVIC,2620,yes")
                                .only("postcode-of-other-state")
                                .severity())
                .isEqualTo(Severity.CHECK);
        assertThat(
                        Register.read(
                                        "Postal street,Postal state,Postal postcode\n1 Teacosy Square,VIC,2342")
                                .only("postcode-of-other-state")
                                .severity())
                .isEqualTo(Severity.CHECK);
    }

    @Test
    void aPostBoxIsNoPlaceForAHeater() {
        assertThat(Register.read("Site state,Site postcode\nVIC,8001").codes())
                .contains("postcode-no-street");
    }

    @Test
    void anAddressWithoutANumberNeedsADescription() {
        assertThat(
                        Register.read("Site street,Claim STCs,Position on site\nTeaspoon Lane,yes,")
                                .codes())
                .contains("address-incomplete");
        assertThat(
                        Register.read(
                                        "Site street,Claim STCs,Position on site\nTeaspoon Lane,yes,blue gate 2 km past the mill")
                                .codes())
                .doesNotContain("address-incomplete");
        assertThat(
                        Register.read(
                                        "Site street,Claim STCs,Position on site\nLot 7 Teaspoon Lane,yes,")
                                .codes())
                .doesNotContain("address-incomplete");
    }

    @Test
    void litresAreComparedWithTheProductTable() {
        assertThat(Register.read("Litres\n271").only("litres-differ").fact())
                .contains("271", "270");
        assertThat(Register.read("Litres\n270").codes()).doesNotContain("litres-differ");
    }

    @Test
    void anOwnerRegisteredForGstIsAskedForAnInvoice() {
        assertThat(Register.read("Owner registered for GST,Claim STCs\nyes,yes").codes())
                .contains("gst-owner-registered");
        assertThat(Register.read("Owner registered for GST,Claim STCs\nno,yes").codes())
                .doesNotContain("gst-owner-registered");
        assertThat(Register.read("Owner's ABN,Claim STCs\n99 000 000 000,yes").codes())
                .contains("gst-status-missing");
    }

    @Test
    void anOwnerWhoIsToBePaidNeedsAnAccount() {
        Finding finding =
                Register.read(
                                "Claim STCs,Benefit form,Account name,BSB,Account number\nyes,payment to the owner,A Amberwood,,00000123")
                        .only("bank-details-missing");
        assertThat(finding.place().columnHeading()).isEqualTo("BSB");
        assertThat(finding.fact())
                .isEqualTo("The owner is to be paid, but nothing stands under \"BSB\".");
        assertThat(
                        Register.read(
                                        "Claim STCs,Benefit form,Account name,BSB,Account number\nyes,payment to the owner,A Amberwood,000-000,00000123")
                                .codes())
                .doesNotContain("bank-details-missing");
    }

    @Test
    void anOwnerRegisteredForGstMayKeepTheHeaterOutOfBusiness() {
        String headings = "Owner registered for GST,Claim STCs,Business premises\nyes,yes,";
        assertThat(Register.read(headings + "no").codes()).doesNotContain("gst-owner-registered");
        assertThat(Register.read(headings + "yes").codes()).contains("gst-owner-registered");
        assertThat(Register.read(headings).codes()).contains("gst-owner-registered");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Assignment signed on",
                "Plumbing certificate date",
                "Electrical certificate date",
                "Old heater removed on"
            })
    void nothingThatHasHappenedIsStillToCome(String column) {
        String register = "Installed on,Old heater,%s\n20/11/2026,gas storage,".formatted(column);
        Finding finding = Register.read(register + "24/11/2026").only("dates-out-of-order");
        assertThat(finding.place().columnHeading()).isEqualTo(column);
        assertThat(finding.fact()).endsWith(", 24 Nov 2026, is still to come.");
        assertThat(Register.read(register + "23/11/2026").codes())
                .doesNotContain("dates-out-of-order");
    }

    @Test
    void whatTheVeecsStopForIsNotAskedForTwice() {
        String register =
                "Installed on,Old heater,Old heater disabled how,Claim VEECs\n20/11/2026,gas storage,,";
        assertThat(facts(register + "yes")).noneMatch(f -> f.contains("Old heater disabled how"));
        assertThat(facts(register + "no")).anyMatch(f -> f.contains("Old heater disabled how"));
    }

    private static List<String> facts(String register) {
        return Register.read(register).findings().stream().map(Finding::fact).toList();
    }
}
