package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.value.SchemeName;

/** The firm's own templates: what they can change, break and not reach. */
class FirmTemplatesTest {
    private static final CaseFile TWO_PAPERS =
            CaseFiles.withPapers(
                    CaseFiles.installedSolar(),
                    new Paper(PaperKind.COVER, "default", List.of()),
                    new Paper(PaperKind.OLD_HEATER, "default", List.of()));

    @TempDir Path folder;

    private Pack withTemplate(String name, String... lines) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.write(file, List.of(lines), StandardCharsets.UTF_8);
        return new Packs(Optional.of(folder)).make(TWO_PAPERS, List.of());
    }

    private static void holdsOnlyTheOldHeaterRecord(Pack pack) {
        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("Held: Old-heater record");
        assertThat(PdfText.of(pack, PaperKind.COVER)).contains("The job at a glance");
    }

    @Test
    void goBeforeTheShippedOnes() throws IOException {
        Pack pack =
                withTemplate(
                        "old-heater/default.ftlh",
                        "<section class=\"paper\"><h1>Ours: ${job.oldHeater.maker}</h1></section>");

        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("Ours: Wattlefield");
        assertThat(pack.findings()).isEmpty();
    }

    @Test
    void aFactThatCannotBeIsAMistakeEvenWithADefault() throws IOException {
        Pack pack =
                withTemplate(
                        "old-heater/default.ftlh",
                        "<section>",
                        "<p>${(job.owner.nam)!\"\"}</p>",
                        "</section>");

        holdsOnlyTheOldHeaterRecord(pack);
        Finding finding = pack.findings().get(0);
        assertThat(finding.place())
                .isEqualTo(new Place.InTemplate("old-heater/default.ftlh", 2, 4));
        assertThat(finding.fact()).contains("\"nam\"", "the nearest is \"name\"");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "${\"1+1\"?eval}",
                "${\"1+1\"?<#-- c -->eval}",
                "${\"1+1\" ? eval}",
                "${\"<b>\"?no_esc}",
                "<#noautoesc>${\"<b>\"}</#noautoesc>",
                "<#outputformat \"plainText\">x</#outputformat>",
                "<#ftl auto_esc=false>",
                "[#ftl]",
                "<#assign x = \"${'1'?eval}\">"
            })
    void dangerousWordsAreRefusedHoweverTheyAreWritten(String line) throws IOException {
        Pack pack = withTemplate("old-heater/default.ftlh", "<section>" + line + "</section>");

        holdsOnlyTheOldHeaterRecord(pack);
        assertThat(pack.findings().get(0).fact()).contains("which is not allowed");
    }

    @Test
    void plainTextIsNeverMistakenForADangerousWord() throws IOException {
        Pack pack =
                withTemplate(
                        "old-heater/default.ftlh",
                        "<section>Was it replaced? new heater, or eval ?eval</section>");

        assertThat(pack.findings()).isEmpty();
    }

    @Test
    void aTemplateThatNeverEndsHoldsThatPaperAlone() throws IOException {
        Pack pack =
                withTemplate(
                        "old-heater/default.ftlh",
                        "<section><#list 1.. as i>${i} and on and on, </#list></section>");

        holdsOnlyTheOldHeaterRecord(pack);
        assertThat(pack.findings().get(0).fact()).contains("4 million");
    }

    @Test
    void aBrokenPartHoldsEveryPaperThatImportsItAndTheCaseSaysSo() throws IOException {
        Files.write(
                folder.resolve("stc-words.ftlh"),
                List.of("<#macro owner count buyer>${nothere}</#macro>"));
        Pack pack = new Packs(Optional.of(folder)).make(CaseFiles.installedSolar(), List.of());

        assertThat(pack.packedCase().papers().stream().filter(Paper::isBlocked).map(Paper::kind))
                .contains(PaperKind.of(SchemeName.STC));
        assertThat(pack.packedCase().claimable()).noneMatch(e -> e.scheme() == SchemeName.STC);
    }

    @Test
    void aBrokenHeadIsReplacedAndHoldsNothing() throws IOException {
        Files.write(folder.resolve("running.ftlh"), List.of("<div>${nothere}</div>"));
        Pack pack = new Packs(Optional.of(folder)).make(TWO_PAPERS, List.of());

        assertThat(pack.findings()).allMatch(f -> f.severity() == Severity.CHECK).isNotEmpty();
        assertThat(pack.packedCase().isHeld()).isFalse();
    }

    @Test
    void aStyleMayHoldAnyWords() throws IOException {
        Files.write(folder.resolve("paperbark.css"), List.of("h1:after { content: '? new'; }"));

        assertThat(new Packs(Optional.of(folder)).make(TWO_PAPERS, List.of()).findings()).isEmpty();
    }

    @Test
    void aDangerousWordIsRefusedInAnImportedPartToo() throws IOException {
        Files.write(
                folder.resolve("ours.ftlh"),
                List.of("<#macro m>", "  ${\"1+1\"?eval}", "</#macro>"),
                StandardCharsets.UTF_8);
        Pack pack =
                withTemplate(
                        "old-heater/default.ftlh",
                        "<#import \"/ours.ftlh\" as ours>",
                        "<section><@ours.m/></section>");

        holdsOnlyTheOldHeaterRecord(pack);
        assertThat(pack.findings().get(0).place())
                .isEqualTo(new Place.InTemplate("ours.ftlh", 2, 3));
        assertThat(pack.findings().get(0).fact()).contains("?eval");
    }

    @Test
    void anUnknownVariableHoldsThatPaperAloneAndNamesLineAndColumn() throws IOException {
        Pack pack =
                withTemplate(
                        "old-heater/default.ftlh",
                        "<section>",
                        "<p>${job.reference}</p>",
                        "<p>${job.oldHeeter.maker}</p>",
                        "</section>");

        holdsOnlyTheOldHeaterRecord(pack);
        Finding finding = pack.findings().get(0);
        assertThat(finding.code()).isEqualTo(FindingCode.TEMPLATE_BROKEN);
        assertThat(finding.place())
                .isEqualTo(new Place.InTemplate("old-heater/default.ftlh", 3, 4));
        assertThat(finding.job()).contains("SB-1032");
    }

    @Test
    void brokenMarkupHoldsThatPaperAloneAndNamesTheTemplatesLine() throws IOException {
        Pack pack =
                withTemplate(
                        "old-heater/default.ftlh",
                        "<#-- two lines of remarks",
                        "     that give no output -->",
                        "<section>",
                        "<#list 1..5 as i>",
                        "<p>${i}</p>",
                        "</#list>",
                        "<p>The maker <b>${job.oldHeater.maker}</p>",
                        "</section>");

        holdsOnlyTheOldHeaterRecord(pack);
        assertThat(pack.findings()).hasSize(1);
        assertThat(pack.findings().get(0).place())
                .isInstanceOfSatisfying(
                        Place.InTemplate.class,
                        place -> {
                            assertThat(place.file()).isEqualTo("old-heater/default.ftlh");
                            assertThat(place.line()).isEqualTo(7);
                            assertThat(place.column())
                                    .as("the end tag, wherever the maker's name ends")
                                    .isEqualTo(
                                            "<p>The maker <b>${job.oldHeater.maker}</p".length());
                        });
    }

    @Test
    void aDirectiveThatIsNotClosedHoldsThatPaperAlone() throws IOException {
        Pack pack = withTemplate("old-heater/default.ftlh", "<section>", "<#if true>", "x");

        holdsOnlyTheOldHeaterRecord(pack);
        assertThat(pack.findings().get(0).place())
                .isEqualTo(new Place.InTemplate("old-heater/default.ftlh", 3, 2));
    }

    @Test
    void aPaperWithoutEndHoldsThatPaperAlone() throws IOException {
        Pack pack =
                withTemplate("old-heater/default.ftlh", "<p style=\"height: 99999mm\">long</p>");

        holdsOnlyTheOldHeaterRecord(pack);
        assertThat(pack.findings()).hasSize(1);
    }

    @Test
    void aCellThatSpansThousandsHoldsThatPaperAlone() throws IOException {
        holdsOnlyTheOldHeaterRecord(
                withTemplate(
                        "old-heater/default.ftlh",
                        "<table><tr><td colspan=\"99999999\">wide</td></tr></table>"));
    }

    @Test
    void anEmptyPaperStillHasItsPage() throws IOException {
        Pack pack = withTemplate("cover/default.ftlh", "<section></section>");

        assertThat(pack.papers()).extracting(PaperPages::pageCount).containsExactly(1, 1);
    }

    @Test
    void markupNestedWithoutEndHoldsThatPaperAlone() throws IOException {
        String deep = "<div>".repeat(2000) + "x" + "</div>".repeat(2000);

        holdsOnlyTheOldHeaterRecord(withTemplate("old-heater/default.ftlh", deep));
    }

    @Test
    void aBrokenHeadOfPagesIsReplacedByTheShippedOne() throws IOException {
        Pack pack = withTemplate("running.ftlh", "<div>${nobody}</div>");

        assertThat(PdfText.of(pack, PaperKind.COVER)).contains("Job SB-1032", "Page 1 of");
        assertThat(pack.findings())
                .extracting(f -> f.place().file())
                .containsExactly("running.ftlh");
    }

    @Test
    void takeNothingFromNetworkOrOutsideTheFolder() throws IOException {
        Path secret = picture(folder.resolve("secret.png"));
        Path templates = Files.createDirectory(folder.resolve("templates"));
        Files.createSymbolicLink(templates.resolve("link.png"), secret);
        folder = templates;
        Pack pack =
                withTemplate(
                        "old-heater/default.ftlh",
                        "<section>",
                        "<img src=\"http://localhost:9/logo.png\"/>",
                        "<img src=\"file:///etc/hostname\"/>",
                        "<img src=\"../outside.png\"/>",
                        "<img src=\"link.png\"/>",
                        "<p>still here</p>",
                        "</section>");

        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("still here");
        assertThat(pack.findings())
                .extracting(Finding::seen)
                .anyMatch(s -> s.startsWith("http://localhost:9/"))
                .anyMatch(s -> s.contains("etc/hostname"))
                .anyMatch(s -> s.contains("outside.png"))
                .anyMatch(s -> s.contains("link.png"));
        assertThat(pack.findings()).allMatch(f -> f.severity() == Severity.CHECK);
    }

    private static Path picture(Path file) throws IOException {
        BufferedImage dot = new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB);
        ImageIO.write(dot, "png", file.toFile());
        return file;
    }

    @Test
    void mayShowAPictureOfTheFolder() throws IOException {
        picture(folder.resolve("logo.png"));
        Pack pack =
                withTemplate(
                        "old-heater/default.ftlh",
                        "<section><p>Ours <img src=\"logo.png\" alt=\"logo\"/></p></section>");

        assertThat(pack.findings()).isEmpty();
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            int page = pack.papers().get(1).firstPage() - 1;
            Iterable<COSName> names = document.getPage(page).getResources().getXObjectNames();
            assertThat(names).isNotEmpty();
        }
    }

    @Test
    void reportTheirOwnUnprintableCharacters() throws IOException {
        Pack pack = withTemplate("old-heater/default.ftlh", "<p>tick \u2705 here</p>");

        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("tick \u25A1 here");
        assertThat(pack.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.TEXT_NOT_PRINTABLE);
    }
}
