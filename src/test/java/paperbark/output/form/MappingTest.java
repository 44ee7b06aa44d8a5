package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.PaperKind;
import paperbark.value.SchemeName;

/** The table that says what goes where. */
class MappingTest {
    @TempDir private Path folder;

    private static byte[] oneField() {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 80, 7);
        return form.pdf();
    }

    @Test
    void remarksOtherColumnsAndRowsWithoutAValueDoNotMatter() {
        Filling.Result result =
                Filling.of(
                        folder,
                        oneField(),
                        "# made in November,,",
                        "Field;Value;Type",
                        "# a remark;;",
                        "Nobody;;text",
                        "Owner;${job.owner.name};text");
        assertThat(result.text()).contains("Wilhelmina Quokkaby");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aFieldThatTheFormDoesNotHaveIsACheckWithTheNearestName() {
        Filling.Result result =
                Filling.of(folder, oneField(), "field,value", "Owners,${job.owner.name}");
        assertThat(result.filled().papers()).hasSize(1);
        assertThat(result.findings())
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.FORM_FIELD_MISSING);
                            assertThat(f.severity()).isEqualTo(Severity.CHECK);
                            assertThat(f.place())
                                    .isEqualTo(new Place.InRule("forms/theirs.csv", 2));
                            assertThat(f.remedy()).contains("\"Owner\"");
                        });
    }

    @Test
    void everyJobIsToldOfItAndHasItsOwnValue() {
        Filling.of(folder, oneField(), "field,value", "Owner,${job.owner.name}", "Owners,x");
        Forms forms = new Forms(Optional.of(folder));
        for (String name : List.of("Ada One", "Bea Two")) {
            CaseFile job = Filling.wanting(CaseFiles.withOwner(CaseFiles.installedSolar(), name));
            Forms.Filled filled = forms.fill(job);
            assertThat(Filling.text(filled.papers().get(0).pdf())).contains(name);
            assertThat(filled.caseFile().findings())
                    .filteredOn(f -> f.code() == FindingCode.FORM_FIELD_MISSING)
                    .hasSize(1);
        }
    }

    @Test
    void aCleanedTextOfTheTableIsToldWithItsCell() {
        Filling.Result result =
                Filling.of(folder, oneField(), "field,value", "Ow\u200bner,${job.owner.name}");
        assertThat(result.text()).contains("Wilhelmina Quokkaby");
        assertThat(result.findings())
                .singleElement()
                .matches(f -> f.code() == FindingCode.TEXT_CLEANED)
                .matches(f -> f.place().cellAddress().equals("A2"))
                .matches(f -> f.severity() == Severity.NOTE);
    }

    @Test
    void aRequiredFieldWithoutAValueIsACheck() {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 80, 7).setRequired(true);
        form.text("Phone", 20, 30, 80, 7).setRequired(true);
        form.text("Notes", 20, 40, 80, 7);
        Filling.Result result =
                Filling.of(folder, form.pdf(), "field,value", "Owner,${job.owner.name}");
        assertThat(result.findings())
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.FORM_FIELD_UNMAPPED);
                            assertThat(f.seen()).isEqualTo("Phone");
                        });
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "${job.ownr.name}|the nearest is \"owner\"|Mend the value",
                "${job.owner.phon}|the nearest is \"phone\"|Mend the value",
                "${clam.zone}|the nearest is \"claim\"|Mend the value",
                "${entirely.unknown}|no fact \"entirely\"|Mend the value",
                "${job.owner.name|Unexpected end of file|Mend the value",
                "${'1+1'?eval}|eval|Mend the value",
                "${'freemarker.template.utility.Execute'?new()('id')}|new|Mend the value",
                "<#include '/etc/passwd'>|inclusion failed|Mend the value",
                "<#if job.owner>x</#if>|boolean|Mend the value"
            })
    void aValueThatNoJobCanFillHoldsThatPaperAlone(String value, String fact, String remedy) {
        Filling.Result result =
                Filling.of(folder, oneField(), "field,value", "Owner,\"" + value + "\"");
        assertThat(result.filled().papers()).isEmpty();
        assertThat(result.findings())
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.TEMPLATE_BROKEN);
                            assertThat(f.place())
                                    .isEqualTo(new Place.InRule("forms/theirs.csv", 2));
                            assertThat(f.fact()).containsIgnoringCase(fact);
                            assertThat(f.remedy()).contains(remedy);
                        });
        assertThat(result.filled().caseFile().papers())
                .filteredOn(p -> p.isBlocked())
                .extracting(p -> p.kind())
                .containsExactly(PaperKind.of(SchemeName.STC));
    }

    @Test
    void aValueIsDataAndNeverATemplate() {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 20, 120, 7);
        Filling.Result result =
                Filling.of(
                        folder, form.pdf(), "field,value", "Owner,${r'${7*7} <b> &amp; \\u0041'}");
        assertThat(result.text()).contains("${7*7} <b> &amp; \\u0041");
    }

    @Test
    void textIsStampedWhereTheTableSays() {
        Filling.Result result =
                Filling.of(
                        folder,
                        new FormSketch().newPage().pdf(),
                        "page,x_mm,y_mm,width_mm,align,size,value",
                        "1,22,22,40,left,12,XXXX",
                        "1,100,60,40,right,12,${job.installedOn}",
                        "2,20,20,60,centre,9,${job.owner.name}\\nsecond line");
        assertThat(Ink.isDark(result.pdf(), 24, 21)).isTrue();
        assertThat(Ink.isDark(result.pdf(), 101, 59)).isFalse();
        assertThat(Ink.isDark(result.pdf(), 138, 59)).isTrue();
        assertThat(result.text()).contains("18/11/2026", "Wilhelmina Quokkaby\nsecond line");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void placesThatCannotBeReadOrAreNotThereAreChecks() {
        Filling.Result result =
                Filling.of(
                        folder,
                        new FormSketch().pdf(),
                        "page,x_mm,y_mm,width_mm,align,size,value",
                        "1,left,22,40,,,a",
                        "2,20,20,40,,,b",
                        "1,20,20,40,slanted,,c",
                        "1,20,20,5,,10,much too long for five millimetres",
                        "1,20,30,40,,,good");
        assertThat(result.text()).contains("good", "…");
        assertThat(result.findings())
                .extracting(f -> f.code() + " " + f.place().rowNumber())
                .containsExactly(
                        "TABLE_ROW_WRONG 2",
                        "FORM_FIELD_MISSING 3",
                        "TABLE_ROW_WRONG 4",
                        "FORM_TEXT_TOO_LONG 5");
    }
}
