package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;

/** A misspelt name of any kind is one finding with its place and the name that was meant. */
class NearestNamesTest {
    @TempDir Path folder;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    a fact                        | <p>${job.refrence}</p>                          | 4:4  | reference
                    a fact with a default         | <p>${(job.owner.nam)!''}</p>                    | 4:4  | name
                    a fact at the top             | <p>${jobb.reference}</p>                        | 4:6  | job
                    a variable of the template    | <#assign maker=1><p>${makr}</p>                 | 4:23 | maker
                    a variable of a loop          | <#list [1] as entry><p>${entrie}</p></#list>    | 4:26 | entry
                    a macro of the parts          | <@p.headin text='x'/>                           | 4:3  | p.heading
                    a macro of the template       | <#macro mine>x</#macro><@mien/>                 | 4:26 | mine
                    a parameter of a macro        | <@p.heading txt='x'/>                           | 4:1  | text
                    a parameter within a macro    | <#macro m label>${lable}</#macro><@m label='x'/>| 4:19 | label
                    a function of the parts       | <p>${p.yesNoo(true)}</p>                        | 4:6  | p.yesNo
                    a built-in                    | <p>${'x'?upper_cas}</p>                         | 4:10 | upper_case
                    a directive                   | <#iff true>x</#iff>                             | 4:2  | if
                    """)
    void isToldWithItsPlaceAndTheNearest(String what, String line, String at, String nearest)
            throws IOException {
        Finding finding = onlyFinding(line);
        assertThat(finding.fact()).contains("; the nearest is \"" + nearest + "\".");
        Place.InTemplate place = (Place.InTemplate) finding.place();
        assertThat(place.file()).isEqualTo("old-heater/default.ftlh");
        assertThat(place.line() + ":" + place.column()).isEqualTo(at);
    }

    /** The parser would list all that it could have taken instead, on lines of their own. */
    @ParameterizedTest
    @ValueSource(strings = {"<p>${job.</p>", "<#if job.reference == ><p>x</p></#if>"})
    void aSentenceAboutBrokenMarkupIsWhole(String line) throws IOException {
        assertThat(onlyFinding(line).fact()).doesNotEndWith(":").doesNotContain("expecting one of");
    }

    private Finding onlyFinding(String line) throws IOException {
        Files.createDirectories(folder.resolve("old-heater"));
        Files.write(
                folder.resolve("old-heater/default.ftlh"),
                List.of(
                        "<#import \"/parts.ftlh\" as p>",
                        "<section>",
                        "<h1>Ours</h1>",
                        line,
                        "</section>"));
        Pack pack =
                new Packs(Optional.of(folder))
                        .make(
                                CaseFiles.withPapers(
                                        CaseFiles.installedSolar(),
                                        new Paper(PaperKind.OLD_HEATER, "default", List.of())),
                                List.of());

        assertThat(pack.findings()).hasSize(1);
        return pack.findings().get(0);
    }
}
