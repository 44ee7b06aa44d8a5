package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.value.SchemeName;

/** What each paper must carry. */
class PaperContentTest {
    private static final Packs PACKS = new Packs(Optional.empty());
    private static final Pack INSTALLED = PACKS.make(CaseFiles.installedSolar(), List.of());
    private static final Pack BOOKED = PACKS.make(CaseFiles.bookedHeatPump(), List.of());

    private static String installed(PaperKind kind) {
        return PdfText.of(INSTALLED, kind);
    }

    private static String asDefault(PaperKind kind) {
        return PdfText.of(
                PACKS.make(
                        CaseFiles.withPapers(
                                CaseFiles.installedSolar(),
                                new Paper(kind, "default", java.util.List.of())),
                        List.of()),
                kind);
    }

    @Test
    void coverShowsFactsPapersSignersGapsFindingsAndClosingDates() {
        assertThat(installed(PaperKind.COVER))
                .contains("Wilhelmina Quokkaby", "4 Heron Lane", "Ternlight", "Heron, 2")
                .contains("STC assignment ready owner, installer, buyer")
                .contains("Office", "Copy of the photographs")
                .contains("▲ CHECK", "Correct the postcode or the state.", "○ note")
                .contains("23 Nov 2026", "▲ 2 days late", "17 Nov 2027", "357")
                .contains("Invented for the demonstration.");
    }

    @Test
    void coverSaysOnWhichPageEachPaperBegins() {
        PaperPages handover =
                INSTALLED.papers().stream()
                        .filter(p -> p.kind() == PaperKind.HANDOVER)
                        .findFirst()
                        .orElseThrow();

        assertThat(installed(PaperKind.COVER))
                .contains(handover.firstPage() + " Owner's handover ready");
    }

    @Test
    void siteSheetAsksForAllThatIsReadOnSite() {
        assertThat(PdfText.of(BOOKED, PaperKind.SITE_SHEET))
                .contains("Tank", "Heat pump, if it", "Litres on the plate")
                .contains("Water at the bath, °C", "Stored water, °C", "Pressure without")
                .contains("Photographs, each with day and place", "its plate")
                .contains("Plumbing, number", "Electrical, number", "Money taken, or none")
                .contains("Put out of use on", "Owner or adult", "Signature", "Date")
                .contains("Leak test", "Electrical tests", "Relief drain", "Asbestos looked for")
                .contains("accepts the work: hot water ran at the taps")
                .doesNotContain("Flue", "Gas isolated at")
                .contains("more than 2 m", "asbestos", "Common practice.");
    }

    @Test
    void warrantyNamesOwnerSystemInstallerAndSeller() {
        for (String text :
                new String[] {installed(PaperKind.WARRANTY), asDefault(PaperKind.WARRANTY)}) {
            assertThat(text)
                    .contains("Wilhelmina Quokkaby", "4 Heron Lane", "PO Box 9", "0491 570 156")
                    .contains("owner@example.com", "TL-300-EV44", "TL-300-004417")
                    .contains("EV-22-81003", "EV-22-81004", "18 Nov 2026", "L-40881")
                    .contains(
                            "Saltmarsh Hot Water Pty Ltd", "12 Samphire Street", "88 Tern Parade");
        }
    }

    @Test
    void warrantyVariantForTubesHasALineForEachCollector() {
        assertThat(installed(PaperKind.WARRANTY)).contains("Solar system registration", "Faces");
        assertThat(asDefault(PaperKind.WARRANTY)).doesNotContain("Solar system registration");
    }

    @Test
    void stcAssignmentStatesCountBenefitStatementsAndSignatures() {
        for (String text :
                new String[] {
                    installed(PaperKind.of(SchemeName.STC)), asDefault(PaperKind.of(SchemeName.STC))
                }) {
            assertThat(text)
                    .contains("Wilhelmina Quokkaby", "TL-300-004417", "electric storage")
                    .contains("$480.00", "13", "Kestrel Certificates", "18 Nov 2026")
                    .contains("X taken off the price of heater and installation")
                    .contains("I am the owner of the water heater described here")
                    .contains("The installation is complete and the heater works.")
                    .contains("I have not assigned the right to create certificates")
                    .contains("can bring a penalty for each certificate")
                    .contains("inspect the heater", "I keep a copy or a photograph of this paper.")
                    .contains("L-40881", "PC-770031", "ES-552210", "copy")
                    .contains("Invented for the demonstration.");
        }
    }

    @Test
    void stcVariantOfABuyerPutsTheBenefitFirst() {
        String text = installed(PaperKind.of(SchemeName.STC));

        assertThat(text.indexOf("$480.00")).isLessThan(text.indexOf("Wilhelmina Quokkaby"));
        assertThat(asDefault(PaperKind.of(SchemeName.STC)).indexOf("$480.00"))
                .isGreaterThan(
                        asDefault(PaperKind.of(SchemeName.STC)).indexOf("Wilhelmina Quokkaby"));
    }

    @Test
    void veecAssignmentStatesWorkOldHeaterPriceAndDeclarations() {
        assertThat(installed(PaperKind.of(SchemeName.VEEC)))
                .contains("Pipit and Wren", "1C", "$1,200.00", "$4,210.00", "25")
                .contains("PC-770031", "ES-552210", "L-40881", "A-77120")
                .contains("Wattlefield", "WF-250", "8830012", "scrap yard, receipt 5521")
                .contains("I am 18 or older", "Electrician", "Consumer")
                .contains("I paid $4,210.00 for this heater and its work. Neither")
                .contains("Invented for the demonstration.");
    }

    @Test
    void workingPrintsEveryStepWithItsRuleAndHowSureItIs() {
        assertThat(installed(PaperKind.WORKING))
                .contains("27 x 5 / 10 = 13.5, fractions")
                .contains("(derived). stc/years.csv, row 5")
                .contains("(invented for the demonstration). products.csv, row 7")
                .contains("0.393 x (80 - 1.2 x 9.1", "= 26.7")
                .contains("17 Nov 2027", "30 Jun 2027");
    }

    @Test
    void oldHeaterRecordSaysWhatHowAndWhere() {
        assertThat(installed(PaperKind.OLD_HEATER))
                .contains("electric storage", "Wattlefield", "WF-250", "8830012")
                .contains("cut open with a saw and crushed", "scrap yard, receipt 5521");
    }

    @Test
    void handoverHasDiaryWarrantiesSafetyAndNumbers() {
        assertThat(installed(PaperKind.HANDOVER))
                .contains("18 May 2027, 6 months A relief valve", "18 Nov 2031")
                .contains("17 Nov 2032", "17 Nov 2033", "17 Nov 2036", "17 Nov 2028")
                .contains("(03) 5550 1234", "0491 570 006", "PC-770031", "ES-552210")
                .contains("At 60 °C a bad burn takes 5 seconds", "The sun cannot be switched off.")
                .contains("Local rules, the maker's manual", "Our visit costs you nothing.");
    }

    @Test
    void handoverOfABookedJobLeavesItsDaysToBeWritten() {
        assertThat(PdfText.of(BOOKED, PaperKind.HANDOVER))
                .contains("6 months:", "Put in on", "5 years:")
                .doesNotContain("2027", "The sun cannot be switched off.");
    }
}
