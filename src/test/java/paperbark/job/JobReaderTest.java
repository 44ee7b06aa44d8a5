package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.firm.Words;
import paperbark.sheet.Cell;
import paperbark.sheet.CellTrouble;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.value.Money;
import paperbark.value.Phone;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

class JobReaderTest {

    @Test
    void aRowBecomesAJob() {
        Job job =
                Register.job(
                        """
                        Job,Stage,Installed on,Tank serial,Owner's phone,Plumber,Full price,Claim STCs
                        SB-1,installed,20/11/2026,2610040004512037,0491 570 156,Wanda Wattle,"4,620.00",yes
                        """);
        assertThat(job.reference()).isEqualTo("SB-1");
        assertThat(job.stage()).isEqualTo(Stage.INSTALLED);
        assertThat(job.installedOn()).contains(LocalDate.of(2026, 11, 20));
        assertThat(job.heater().tankSerial().map(Serial::seen)).contains("2610040004512037");
        assertThat(job.heater().product().map(p -> p.litres())).contains(270);
        assertThat(job.owner().phone().map(Phone::full)).contains("0491 570 156");
        assertThat(job.owner().postal()).isEqualTo(job.site().address());
        assertThat(job.trades().plumberLicence()).isPresent();
        assertThat(job.payment().fullPrice()).hasToString("Optional[$4,620.00]");
        assertThat(job.claim(SchemeName.STC).claimed()).isTrue();
        assertThat(job.claim(SchemeName.VEEC).claimed()).isFalse();
    }

    @Test
    void aDayOfInstallationMakesAJobInstalledWhereNoStageIsGiven() {
        assertThat(Register.job("Job,Installed on\nSB-1,20/11/2026").stage())
                .isEqualTo(Stage.INSTALLED);
        assertThat(Register.job("Job,Installed on\nSB-1,").stage()).isEqualTo(Stage.BOOKED);
    }

    @Test
    void aRowWithoutANumberIsNoJob() {
        Register.Result result = Register.read("Job,Crew\n,Heron\nSB-2,Heron");
        assertThat(result.jobs()).extracting(Job::reference).containsExactly("SB-2");
        assertThat(result.only("job-unnamed").place().rowNumber()).isEqualTo(2);
    }

    @Test
    void theZeroOfADarwinPostcodeComesBack() {
        Register.Result result = Register.read("Site postcode,Site state\n800,NT");
        assertThat(result.jobs().get(0).site().address().postcode()).hasToString("Optional[0800]");
        assertThat(result.only("leading-zero-lost").fact()).contains("0800");
    }

    @Test
    void bankDetailsAreNeverRepeatedInAFinding() {
        Register.Result result = Register.read("BSB,Account number\n12345X,1234567890123");
        assertThat(result.only("bsb-wrong").seen()).isEqualTo("******");
        assertThat(result.only("account-wrong").seen()).isEqualTo("*************");
        assertThat(result.findings().toString()).doesNotContain("12345");
    }

    @Test
    void aStopHoldsOnlyThePapersThatPrintTheField() {
        Finding wrong =
                Register.read("Claim VEECs,VEEC buyer\nyes,Nobody at all").only("buyer-unknown");
        assertThat(wrong.holds()).containsExactly(Concern.claim(SchemeName.VEEC));
    }

    @Test
    void aStopThatHoldsNoPaperIsOnlyACheck() {
        Finding wrong = Register.read("Visit date\n31/11/2026").only("date-unreadable");
        assertThat(wrong.severity()).isEqualTo(Severity.CHECK);
    }

    @Test
    void theNearestModelIsOfferedAndNeverTaken() {
        Register.Result result = Register.read("Model\nD270A");
        assertThat(result.only("model-unknown").remedy()).contains("D270-A");
        assertThat(result.jobs().get(0).heater().product()).isEmpty();
    }

    @Test
    void anUnknownMakerIsToldOnceAndNotAgainForTheModel() {
        assertThat(Register.read("Maker\nDunlinn").codes())
                .contains("maker-unknown")
                .doesNotContain("model-unknown");
    }

    @Test
    void collectorSerialsAreAList() {
        Job job =
                Register.job(
                        "Maker,Model,Collector serials\nTernlight,TL-E30-315,V26-00320; V26-00321");
        assertThat(job.heater().collectorSerials())
                .extracting(Serial::seen)
                .containsExactly("V26-00320", "V26-00321");
    }

    @ParameterizedTest
    @CsvSource({
        "31/11/2026, date-unreadable",
        "1/6/1926, date-out-of-range",
        "1/6/2036, date-out-of-range",
        "46346, number-for-date"
    })
    void daysThatCannotBeMeantAreFound(String typed, String code) {
        assertThat(Register.read("Installed on\n" + typed).codes()).contains(code);
    }

    @Test
    void linesWithinACellAreSerialsOfTheirOwn() {
        // The reader of the sheet has made one space of the line break.
        Job job =
                Register.job(
                        "Maker,Model,Collector serials\nTernlight,TL-E30-315,V26-00320 V26-00321");
        assertThat(job.heater().collectorSerials()).hasSize(2);
        Job spaced = Register.job("Maker,Model,Collector serials\nTernlight,TL-E30-315,TD 2231");
        assertThat(spaced.heater().collectorSerials())
                .extracting(Serial::seen)
                .containsExactly("TD 2231");
    }

    @Test
    void whatIsKnownOfAnOldHeaterIsKeptThoughItsKindIsNot() {
        Job job = Register.job("Old maker,Old heater\nBoobook,");
        assertThat(job.oldHeater().flatMap(OldHeater::maker)).contains("Boobook");
        assertThat(job.replacesHeater()).isTrue();
        assertThat(Missing.of(job)).extracting(Missing::field).contains(Field.OLD_KIND);
        assertThat(Register.job("Old maker,Old heater\n,").oldHeater()).isEmpty();
    }

    @Test
    void anUnreadableDayDoesNotMakeAnInstalledJobABookedOne() {
        assertThat(Register.job("Job,Installed on\nSB-1,31/11/2026").stage())
                .isEqualTo(Stage.INSTALLED);
    }

    @ParameterizedTest
    @CsvSource({
        "CANCELLED,CANCELLED",
        "canceled,CANCELLED",
        "Void,CANCELLED",
        "called off,CANCELLED",
        "Warranty replacement,NO_CLAIM",
        "no certificates,NO_CLAIM",
        "done,INSTALLED",
        "scheduled,BOOKED"
    })
    void aStageIsKnownByTheWordsOfOffices(String typed, Stage stage) {
        Job job = Register.job("Stage,Claim STCs\n" + typed + ",yes");
        assertThat(job.stage()).isEqualTo(stage);
        assertThat(job.hasClaims()).isEqualTo(stage.claims());
    }

    @Test
    void everyAnswerOfAFixedChoiceHasItsWordsAndEveryWordItsAnswer() {
        for (Stage stage : Stage.values()) {
            assertThat(read("stage", stage.word(), Stage.values(), Stage::word)).contains(stage);
        }
        for (BenefitForm form : BenefitForm.values()) {
            assertThat(read("benefit-form", form.word(), BenefitForm.values(), BenefitForm::word))
                    .contains(form);
        }
        for (OldKind kind : OldKind.values()) {
            Optional<OldKind> known =
                    read("old-kind", kind.word(), OldKind.values(), OldKind::word);
            assertThat(known).isEqualTo(Optional.of(kind).filter(k -> k != OldKind.UNTOLD));
        }
    }

    private static <T> Optional<T> read(
            String field, String text, T[] answers, Function<T, String> word) {
        return Words.SHIPPED.read(field, text, answers, word).toOptional();
    }

    @Test
    void anUnknownStageHoldsTheClaims() {
        Finding finding = Register.read("Stage,Claim STCs\non hold,yes").only("choice-unknown");
        assertThat(finding.severity()).isEqualTo(Severity.STOP);
        assertThat(finding.remedy()).contains("booked; installed; no claim; cancelled");
    }

    @ParameterizedTest
    @CsvSource({
        "booked,25/11/2026,,2026-11-25",
        "installed,20/11/2026,2026-11-20,",
        "warranty replacement,20/11/2026,2026-11-20,",
        "warranty replacement,25/11/2026,,2026-11-25",
        ",20/11/2026,,2026-11-20"
    })
    void oneDateIsPlannedOrDoneAsTheStageSays(
            String stage, String date, LocalDate installed, LocalDate visit) {
        String typed = stage == null ? "" : stage;
        Job job = Register.job("Stage,Date\n" + typed + "," + date);
        assertThat(job.installedOn()).isEqualTo(Optional.ofNullable(installed));
        assertThat(job.visit().on()).isEqualTo(Optional.ofNullable(visit));
    }

    @Test
    void whatIsTheSameForEveryRowIsSaidOnce() {
        Register.Result result =
                Register.read(
                        "seller,,Saltmarsh Hot Water Pty Ltd\nbenefit-form,,discount\ncrew,,Heron",
                        "Job,Crew\nSB-1,\nSB-2,Egret");
        assertThat(result.jobs())
                .allMatch(job -> job.trades().seller().isPresent())
                .allMatch(job -> job.payment().form().equals(Optional.of(BenefitForm.DISCOUNT)))
                .extracting(job -> job.visit().crew().orElseThrow())
                .containsExactly("Heron", "Egret");
    }

    @Test
    void aConstantThatCannotBeUsedIsToldAtTheRow() {
        Finding wrong = Register.read("seller,,Nobody", "Job\nSB-1").only("seller-unknown");
        assertThat(wrong.place()).isEqualTo(new Place.InRow("week.csv", "", 2));
        assertThat(wrong.seen()).isEqualTo("Nobody");
    }

    @Test
    void yearsOfTwoDigitsAreReadOnlyWhereTheTableOfColumnsSaysSo() {
        String csv = "Visit date,Stage\nTue 3/11/26,booked";
        assertThat(Register.read(csv).codes()).contains("date-unreadable");
        assertThat(Register.read("two-digit-years,,yes", csv).jobs().get(0).visit().on())
                .contains(LocalDate.of(2026, 11, 3));
    }

    @Test
    void headingsThatOnlyPunctuationTellsApartAreToldApartAsWritten() {
        String lines = "stc-claim,STC?,\nstc-benefit,STC $,\nstc-count,STC #,";
        Job job = Register.read(lines, "Job,STC?,STC $,STC #\nSB-1,yes,400.00,14").jobs().get(0);
        Claim claim = job.claim(SchemeName.STC);
        assertThat(claim.claimed()).isTrue();
        assertThat(claim.benefit()).contains(Money.of("400.00"));
        assertThat(Register.names(lines).field("stc")).isEmpty();
        assertThat(Register.names("stc-claim,STC?,").field("Stc")).isPresent();
    }

    @Test
    void aColumnOfItsOwnComesBeforeTheOneDate() {
        Job job = Register.job("Stage,Date,Installed on\ninstalled,20/11/2026,19/11/2026");
        assertThat(job.installedOn()).contains(LocalDate.of(2026, 11, 19));
        Finding wrong = Register.read("Stage,Date\ninstalled,31/11/2026").only("date-unreadable");
        assertThat(wrong.place().columnHeading()).isEqualTo("Date");
        assertThat(wrong.stops()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"TBA", "n/a", "pending", "--", "?"})
    void aPromiseIsNoCertificateNumber(String typed) {
        assertThat(Register.job("Plumbing certificate\n" + typed).compliance().plumbingNumber())
                .isEmpty();
    }

    @Test
    void mergedBankDetailsAreNotRepeatedInASentence() {
        Cell account =
                new Cell(
                        9,
                        "I3",
                        Cell.Kind.BLANK,
                        "",
                        Optional.empty(),
                        Optional.empty(),
                        List.of(
                                new CellTrouble(
                                        FindingCode.CELL_MERGED,
                                        "I3 is merged with I2, which holds the value shown.",
                                        "Unmerge the cells.",
                                        Optional.of("98765432"))));
        Column column = new Column(9, "I", "A/c no.");
        Sheet sheet = new Sheet("week.xlsx", "", 1, List.of(column), List.of());
        Origin origin =
                new Origin("week.xlsx", "", 3, Map.of(Field.ACCOUNT, column), false, Set.of());
        RowFacts facts =
                new RowFacts(
                        sheet,
                        new Row(3, Map.of(9, account)),
                        origin,
                        Register.names(""),
                        Words.SHIPPED,
                        Register.TODAY);
        facts.text(Field.ACCOUNT);
        assertThat(facts.findings()).hasSize(1);
        assertThat(facts.findings().toString()).doesNotContain("98765432");
    }

    @Test
    void anAmountIsNeverLessThanNothing() {
        assertThat(Register.read("Full price\n-5.00").codes()).contains("money-unreadable");
        assertThat(Register.read("Full price\n(5.00)").codes()).contains("money-unreadable");
        assertThat(Register.read("Full price\n0").codes()).doesNotContain("money-unreadable");
    }

    @Test
    void whatCouldNotBeReadIsNotAlsoMissing() {
        Register.Result result =
                Register.read(
                        "Stage,Installed on,Owner's e-mail\ninstalled,31/11/2026,ada at home");
        assertThat(result.findings())
                .extracting(f -> f.place().columnHeading() + " " + f.code().code())
                .contains("Installed on date-unreadable", "Owner's e-mail email-wrong")
                .doesNotContain("Installed on fact-missing", "Owner's e-mail fact-missing");
    }

    @Test
    void anOwnerElsewhereKeepsTheirOwnAddress() {
        Job job =
                Register.job(
                        "Postal street,Postal suburb,Postal state,Postal postcode\n1 Ferry Way,Hobart,TAS,7000");
        assertThat(job.owner().postal()).hasToString("1 Ferry Way, Hobart TAS 7000");
        assertThat(job.site().address().suburb()).isEqualTo(Optional.of("Ballan"));
    }

    @Test
    void anUnreadableAnswerHoldsTheCertificatesInsteadOfDroppingThem() {
        Register.Result read = Register.read("Claim STCs,Claim VEECs\nsure,no");
        assertThat(read.jobs().get(0).claim(SchemeName.STC).claimed()).isTrue();
        assertThat(read.jobs().get(0).claim(SchemeName.VEEC).claimed()).isFalse();
        Finding finding = read.only("choice-unknown");
        assertThat(finding.holds()).containsExactly(Concern.claim(SchemeName.STC));
        assertThat(finding.remedy())
                .isEqualTo("Type one of these words: yes; no; the words table can teach others.");
    }

    @Test
    void nineDigitsInPlaceOfAnAbnAreNotRepeated() {
        assertThat(Register.read("Owner's ABN\n123 456 782").only("abn-wrong").seen())
                .isEqualTo("*** *** ***");
        assertThat(Register.read("Owner's ABN\n99 000 000 001").only("abn-wrong").seen())
                .isEqualTo("99 000 000 001");
    }

    @Test
    void aBankNumberThatLostItsZeroIsNotRepeated() {
        Finding finding = Register.read("BSB\n12345").only("leading-zero-lost");
        assertThat(finding.fact())
                .isEqualTo("The number is one digit short; it was read with a zero in front.");
        assertThat(finding.seen()).isEqualTo("*****");
    }

    @Test
    void anUnknownNameSaysWhichTableLacksIt() {
        Finding finding = Register.read("Plumber\nWanda Watle").only("person-unknown");
        assertThat(finding.fact()).contains("people table");
        assertThat(finding.remedy()).contains("Wanda Wattle").contains("people table");
    }
}
