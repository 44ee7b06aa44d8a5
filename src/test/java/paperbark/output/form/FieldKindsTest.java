package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** Every kind of field, filled and read again. */
class FieldKindsTest {
    @TempDir private Path folder;

    @Test
    void textIsWrittenWithTheLettersOfEveryName() {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 80, 7);
        Filling.Result result =
                Filling.of(folder, form.pdf(), "field,value", "Owner,Nguyễn Łukasz Zoë");
        assertThat(result.text()).contains("Nguyễn Łukasz Zoë");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aValueMixesWordsAndFacts() {
        FormSketch form = new FormSketch();
        form.text("Ref", 20, 20, 80, 7);
        form.text("Count", 20, 30, 20, 7);
        Filling.Result result =
                Filling.of(
                        folder,
                        form.pdf(),
                        "field,value",
                        "Ref,Job ${job.reference} for ${buyer.name}",
                        "Count,${claim.certificates}");
        assertThat(result.text()).contains("Job SB-1032 for Kestrel Certificates", "13");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void linesOfTextAreBrokenBetweenWords() {
        FormSketch form = new FormSketch();
        form.lines("Site", 20, 20, 40, 20);
        Filling.Result result =
                Filling.of(
                        folder,
                        form.pdf(),
                        "field,value",
                        "Site,${job.site.address.street}\\n${job.site.address.locality}");
        assertThat(result.text()).contains("4 Heron Lane\n", "Ballan VIC 3342");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aCombTakesALetterACellAndDropsSpacesThatDoNotFit() {
        FormSketch form = new FormSketch();
        form.comb("ABN", 20, 20, 5, 11);
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "ABN,99 000 000 000");
        assertThat(result.text().replaceAll("\\s", "")).contains("99000000000");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aCombThatIsTooShortSaysSoAndShowsThatItWasCut() {
        FormSketch form = new FormSketch();
        form.comb("Serial", 20, 20, 5, 4);
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "Serial,AB12345");
        assertThat(result.text().replaceAll("\\s", "")).contains("AB1…");
        assertThat(result.findings())
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.FORM_TEXT_TOO_LONG);
                            assertThat(f.fact()).contains("\"Serial\" holds at most 4 letters");
                            assertThat(f.seen()).isEqualTo("AB12345");
                            assertThat(f.place())
                                    .isEqualTo(new Place.InRule("forms/theirs.csv", 2));
                        });
    }

    @ParameterizedTest
    @CsvSource({
        "'AFDate_FormatEx(\"dd/mm/yyyy\");', 18/11/2026",
        "'AFDate_FormatEx(\"d mmmm yy\")', 18 November 26",
        "'AFDate_KeystrokeEx(''yyyy-mm-dd'')', 2026-11-18",
        "'AFDate_Format(11);', 'November 18, 2026'",
        "'AFDate_FormatEx(\"HH:MM dd\")', 18/11/2026",
        "'AFDate_Format(99)', 18/11/2026",
        "'app.alert(1)', 18/11/2026"
    })
    void aDayIsWrittenInTheFormOfItsField(String script, String written) {
        FormSketch form = new FormSketch();
        form.date("Installed", 20, 20, 60, script);
        Filling.Result result =
                Filling.of(folder, form.pdf(), "field,value", "Installed,\"${job.installedOn}\"");
        assertThat(result.text()).contains(written);
        assertThat(result.findings()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "yes, 1",
        "true, 1",
        "X, 1",
        "Ja, 1",
        "no, 0",
        "false, 0",
        "'', 0",
        "${true}, 1",
        "${job.site.business}, 0"
    })
    void aTickBoxTakesYesOrNoOrItsOwnState(String value, int crosses) {
        FormSketch form = new FormSketch();
        form.tick("GST", 20, 20, "Ja");
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "GST," + value);
        assertThat(Ink.crosses(result.pdf())).isEqualTo(crosses);
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void oneOfAGroupIsTickedByItsName() {
        FormSketch form = new FormSketch();
        form.radio("Paid", 20, new float[] {20, 30, 40}, "discount", "payment", "other");
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "Paid,Payment");
        assertThat(Ink.crosses(result.pdf())).isEqualTo(1);
        assertThat(Ink.isDark(result.pdf(), 22, 32)).isTrue();
        assertThat(Ink.isDark(result.pdf(), 22, 22)).isFalse();
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void oneOfAGroupIsTickedByItsExportValueToo() {
        FormSketch form = new FormSketch();
        form.radio("Paid", 20, new float[] {20, 30}, "0", "1")
                .setExportValues(java.util.List.of("off the price", "to the owner"));
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "Paid,to the owner");
        assertThat(Ink.isDark(result.pdf(), 22, 32)).isTrue();
        assertThat(Ink.crosses(result.pdf())).isEqualTo(1);
    }

    @Test
    void aChoiceThatTheFormDoesNotOfferIsACheck() {
        FormSketch form = new FormSketch();
        form.radio("Paid", 20, new float[] {20, 30}, "discount", "payment");
        form.choice("Zone", 20, 50, 40, "1", "2", "3", "4");
        Filling.Result result =
                Filling.of(folder, form.pdf(), "field,value", "Paid,barter", "Zone,5");
        assertThat(result.findings())
                .extracting(f -> f.code() + " " + f.seen())
                .containsExactly("FORM_CHOICE_UNKNOWN barter", "FORM_CHOICE_UNKNOWN 5");
        assertThat(result.findings().get(0).fact()).contains("it knows discount, payment");
    }

    @Test
    void choicesAreMadeByWhatIsShownOrStored() {
        FormSketch form = new FormSketch();
        form.choice("Kind", 20, 20, 60)
                .setOptions(java.util.List.of("S", "H"), java.util.List.of("Solar", "Heat pump"));
        form.list("States", 20, 40, 40, "VIC", "NSW", "SA").setMultiSelect(true);
        Filling.Result result =
                Filling.of(folder, form.pdf(), "field,value", "Kind,h", "States,VIC\\nSA");
        assertThat(result.text()).contains("Heat pump", "VIC", "SA").doesNotContain("NSW");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void textIsShrunkToSixPointsAndThenCut() {
        FormSketch form = new FormSketch();
        form.text("Fits", 20, 20, 50, 7);
        form.text("Tight", 20, 30, 10, 7);
        form.lines("Lines", 20, 40, 20, 8);
        Filling.Result result =
                Filling.of(
                        folder,
                        form.pdf(),
                        "field,value",
                        "Fits,Wilhelmina Quokkaby of Heron Lane",
                        "Tight,Wilhelmina Quokkaby",
                        "Lines,one two three four five six seven eight nine ten eleven twelve"
                                + " thirteen");
        assertThat(result.text()).contains("Wilhelmina Quokkaby of Heron Lane", "…");
        assertThat(Ink.smallestText(result.pdf())).isEqualTo(6f);
        assertThat(result.findings())
                .extracting(f -> f.code() + " " + f.place().rowNumber())
                .containsExactly("FORM_TEXT_TOO_LONG 3", "FORM_TEXT_TOO_LONG 4");
    }

    @Test
    void aMissingFactLeavesItsFieldEmpty() {
        FormSketch form = new FormSketch();
        form.text("Phone", 20, 20, 60, 7)
                .getCOSObject()
                .setString(org.apache.pdfbox.cos.COSName.V, "sample of the buyer's");
        Filling.Result result =
                Filling.of(
                        folder,
                        paperbark.output.CaseFiles.bookedHeatPump(),
                        form.pdf(),
                        "field,value",
                        "Phone,Serial ${job.heater.tankSerial}");
        assertThat(result.text()).isBlank();
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aLetterThatNoFontHasIsABox() {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 60, 7);
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "Owner,李明 Ltd");
        assertThat(result.text()).contains("□□ Ltd");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aHiddenFieldIsFoundOut() {
        FormSketch form = new FormSketch();
        form.text("Ghost", 20, 20, 60, 7).getWidgets().get(0).setHidden(true);
        Filling.Result result =
                Filling.of(folder, form.pdf(), "field,value", "Ghost,${job.owner.name}");
        assertThat(result.findings())
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.FORM_VALUE_UNSEEN);
                            assertThat(f.seen()).isEqualTo("Wilhelmina Quokkaby");
                        });
    }

    @ParameterizedTest
    @CsvSource({"0", "90", "180", "270"})
    void aTurnedPageIsSetUpright(int turn) {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 60, 7).getWidgets().get(0).getCOSObject();
        form.page().setRotation(turn);
        form.page().setCropBox(new org.apache.pdfbox.pdmodel.common.PDRectangle(30, 40, 500, 780));
        Filling.Result result = Filling.of(folder, form.pdf(), "field,value", "Owner,upright");
        assertThat(result.text().replaceAll("\\s", "")).contains("upright");
        assertThat(Ink.pageSize(result.pdf()))
                .isEqualTo(turn % 180 == 0 ? "500 x 780" : "780 x 500");
        assertThat(Ink.inkOn(result.pdf())).isPositive();
    }
}
