package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.TemplateEngine;

/** Values stay text, whatever they hold. */
class HostileValuesTest {
    private static final TemplateEngine ENGINE = new TemplateEngine(Optional.empty());

    static List<String> hostile() {
        return List.of(
                "<script>alert(1)</script>",
                "${7*7}",
                "<#assign x=1>",
                "#{1}",
                "[=7*7]",
                "</td></tr></table>",
                "&lt;b&gt; &nbsp; & \" '",
                "]]><![CDATA[x",
                "<!DOCTYPE a [<!ENTITY b SYSTEM \"file:///etc/passwd\">]>&b;",
                "a\u0000b\u0008c\u001Bd\u007Fe",
                "\u202Eevil\u202C \u200Bgap",
                "x".repeat(5000),
                "word ".repeat(1000),
                "\u6F22\u5B57 \uD83D\uDE00 \uD800");
    }

    @ParameterizedTest
    @MethodSource("hostile")
    void leaveTheNumberOfElementsUnchanged(String value) {
        CaseFile plain = CaseFiles.installedSolar();

        assertThat(elements(CaseFiles.withOwner(plain, value)))
                .isEqualTo(elements(CaseFiles.withOwner(plain, "A plain name")));
    }

    private static List<Integer> elements(CaseFile caseFile) {
        PaperWriter writer = new PaperWriter(ENGINE, ENGINE, caseFile, Logo.NONE, Optional.empty());
        return caseFile.papers().stream()
                .map((Paper p) -> writer.write(p))
                .map(m -> m.content().getElementsByTagName("*").getLength())
                .toList();
    }

    @ParameterizedTest
    @MethodSource("hostile")
    void comeOutAsPages(String value) {
        Pack pack =
                new Packs(Optional.empty())
                        .make(CaseFiles.withOwner(CaseFiles.bookedHeatPump(), value), List.of());

        assertThat(pack.papers()).hasSize(7);
        assertThat(pack.findings())
                .extracting(Finding::code)
                .allMatch(c -> c == FindingCode.TEXT_NOT_PRINTABLE);
    }

    @Test
    void arePrintedAsTheyAre() {
        assertThat(printed("<script>alert(1)</script>")).contains("<script>alert(1)</script>");
        assertThat(printed("${7*7}")).contains("${7*7}").doesNotContain("49 ");
        assertThat(printed("<#assign x=1>")).contains("<#assign x=1>");
    }

    private static String printed(String owner) {
        return PdfText.of(
                new Packs(Optional.empty())
                        .make(CaseFiles.withOwner(CaseFiles.bookedHeatPump(), owner), List.of()));
    }

    @Test
    void showABoxForWhatCannotBePrintedAndSayWhere() {
        String name = "Ann \u6F22\u5B57";
        Pack pack =
                new Packs(Optional.empty())
                        .make(CaseFiles.withOwner(CaseFiles.installedSolar(), name), List.of());

        assertThat(PdfText.of(pack)).contains("Ann \u25A1\u25A1");
        assertThat(pack.findings()).hasSize(1);
        Finding finding = pack.findings().get(0);
        assertThat(finding.code()).isEqualTo(FindingCode.TEXT_NOT_PRINTABLE);
        assertThat(finding.place()).isEqualTo(new Place.InRow("week-48.xlsx", "Week 48", 14));
        assertThat(finding.fact()).contains(name);
    }

    @Test
    void accentsAndEuropeanScriptsAreNoTrouble() {
        Pack pack =
                new Packs(Optional.empty())
                        .make(
                                CaseFiles.withOwner(
                                        CaseFiles.bookedHeatPump(),
                                        "Zoë Núñez-Øster Đặng Жуков Παπάς"),
                                List.of());

        assertThat(pack.findings()).isEmpty();
        assertThat(PdfText.of(pack)).contains("Zoë Núñez-Øster Đặng Жуков Παπάς");
    }
}
