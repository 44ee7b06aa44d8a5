package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;

/** Files of the template folder that are too large or lead elsewhere cost their paper at most. */
class HostileTemplateFilesTest {
    private static final String OLD_HEATER = "old-heater/default.ftlh";
    private static final CaseFile TWO_PAPERS =
            CaseFiles.withPapers(
                    CaseFiles.installedSolar(),
                    new Paper(PaperKind.COVER, "default", List.of()),
                    new Paper(PaperKind.OLD_HEATER, "default", List.of()));

    @TempDir private Path folder;

    private void file(String name, String content) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, content);
    }

    private Packs packs() {
        return new Packs(Optional.of(folder));
    }

    private Finding heldBy(Pack pack) {
        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("Held: Old-heater record");
        assertThat(PdfText.of(pack, PaperKind.COVER)).contains("The job at a glance");
        assertThat(pack.findings()).hasSize(1);
        assertThat(pack.findings().get(0).code()).isEqualTo(FindingCode.TEMPLATE_BROKEN);
        return pack.findings().get(0);
    }

    @Test
    void aTemplateThatIsALinkOutOfTheFolder(@TempDir Path elsewhere) throws IOException {
        Path other = Files.writeString(elsewhere.resolve("secret.ftlh"), "<p>secret</p>");
        Files.createDirectories(folder.resolve("old-heater"));
        Files.createSymbolicLink(folder.resolve(OLD_HEATER), other);
        Finding finding = heldBy(packs().make(TWO_PAPERS, List.of()));
        assertThat(finding.fact())
                .isEqualTo("The file is a link that leads out of the template folder.");
        assertThat(finding.place().file()).isEqualTo(OLD_HEATER);
    }

    @Test
    void aTemplateOfManyMegabytes() throws IOException {
        file(OLD_HEATER, "<p>" + "x".repeat(5_000_000) + "</p>");
        assertThat(heldBy(packs().make(TWO_PAPERS, List.of())).fact())
                .isEqualTo("The file has more than 1,000,000 characters.");
    }

    @Test
    void aTemplateOfVeryManyElements() throws IOException {
        file(OLD_HEATER, "<div><#list 1..30000 as i><b></b></#list></div>");
        assertThat(heldBy(packs().make(TWO_PAPERS, List.of())).fact())
                .isEqualTo("The markup has more than 20000 elements.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"height: 99999999px", "font-size: 9999px; height: 9999em"})
    void aBoxHigherThanAnyPage(String style) throws IOException {
        file(OLD_HEATER, "<div style=\"" + style + "\">high</div>");
        assertThat(heldBy(packs().make(TWO_PAPERS, List.of())).fact())
                .startsWith("The paper takes ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "padding-top: 99999999mm",
                "position: absolute; left: -400mm",
                "position: absolute; left: 400mm",
                "position: absolute; top: -400mm",
                "margin-left: 300mm; width: 100mm",
                "text-indent: -400mm"
            })
    void textThatFallsOffThePage(String style) throws IOException {
        file(OLD_HEATER, "<div style=\"" + style + "\">fallen</div>");
        assertThat(heldBy(packs().make(TWO_PAPERS, List.of())).fact())
                .isEqualTo("The paper has text that falls off its pages.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "margin-left: -10mm",
                "text-align: right; margin-right: -10mm",
                "white-space: nowrap; width: 10mm",
                "position: absolute; right: 0"
            })
    void textInTheMarginsOfThePage(String style) throws IOException {
        file(OLD_HEATER, "<div style=\"" + style + "\">still on the sheet</div>");
        Pack pack = packs().make(TWO_PAPERS, List.of());
        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("still on the sheet");
    }

    @Test
    void aStyleSheetOfManyMegabytes() throws IOException {
        file("paperbark.css", "p { margin: 0 }\n".repeat(2_000_000));
        Packs packs = packs();
        Pack pack = packs.make(TWO_PAPERS, List.of());
        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).doesNotContain("Held");
        assertThat(pack.findings()).isEmpty();
        assertThat(packs.findings())
                .singleElement()
                .satisfies(f -> assertThat(f.fact()).contains("more than 1,000,000 characters"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "body { height: 99999999px }",
                "@page { size: 210mm 4mm; margin: 10mm }",
                ".leaf { padding-bottom: 99999999px }"
            })
    void aStyleSheetWithWhichNothingComesOut(String css) throws IOException {
        file("paperbark.css", css);
        Packs packs = packs();
        Pack pack = packs.make(TWO_PAPERS, List.of());
        assertThat(PdfText.of(pack, PaperKind.COVER)).contains("The job at a glance");
        assertThat(packs.findings())
                .singleElement()
                .satisfies(f -> assertThat(f.place().file()).isEqualTo("paperbark.css"));
    }

    @Test
    void linksThatRunScriptsOrOpenFilesAreNotInThePack() throws IOException {
        file(
                OLD_HEATER,
                "<p><a href=\"javascript:alert(1)\">one</a> <a href=\"file:///etc/passwd\">two</a>"
                        + " <a href=\" JavaScript:x\">three</a> <a href=\"other.pdf\">four</a>"
                        + " <a href=\"https://example.com/\">five</a></p>");
        Pack pack = packs().make(TWO_PAPERS, List.of());
        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("one two three four five");
        assertThat(uris(pack)).containsExactly("https://example.com/");
        assertThat(pack.findings())
                .hasSize(4)
                .allSatisfy(f -> assertThat(f.place().file()).isEqualTo(OLD_HEATER));
    }

    @Test
    void aRefusedPictureIsNamedWithTheTemplateThatAsksForIt() throws IOException {
        file(OLD_HEATER, "<p>seen <img src=\"/elsewhere/dog.png\" alt=\"dog\"/></p>");
        assertThat(packs().make(TWO_PAPERS, List.of()).findings())
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.place().file()).isEqualTo(OLD_HEATER);
                            assertThat(f.fact()).contains("no file of the template folder");
                        });
    }

    @Test
    void aPictureOfMoreDotsThanAnyCameraTakesIsLeftOut() throws IOException {
        file(OLD_HEATER, "<p>seen <img src=\"big.png\" alt=\"big\"/></p>");
        BufferedImage big = new BufferedImage(10_000, 6_001, BufferedImage.TYPE_BYTE_BINARY);
        ImageIO.write(big, "png", folder.resolve("big.png").toFile());
        Pack pack = packs().make(TWO_PAPERS, List.of());
        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("seen");
        assertThat(pack.findings())
                .singleElement()
                .satisfies(
                        f ->
                                assertThat(f.fact())
                                        .contains("60,010,000 dots; the limit is 60,000,000"));
    }

    private static List<String> uris(Pack pack) throws IOException {
        List<String> all = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            for (PDPage page : document.getPages()) {
                for (PDAnnotation annotation : page.getAnnotations()) {
                    if (annotation instanceof PDAnnotationLink link
                            && link.getAction() instanceof PDActionURI address) {
                        all.add(address.getURI());
                    }
                }
            }
        }
        return all;
    }
}
