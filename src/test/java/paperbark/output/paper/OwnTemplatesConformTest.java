package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;

class OwnTemplatesConformTest {
    private static final String DOT =
            "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgAB"
                    + "SK+kcQAAAABJRU5ErkJggg==";

    @TempDir private Path folder;

    @Test
    void aPictureInAFirmsTemplateWithoutWordsKeepsThePackAccessible() throws Exception {
        Files.createDirectories(folder.resolve("cover"));
        Files.writeString(
                folder.resolve("cover/default.ftlh"),
                "<h1>Ours</h1><p><img src=\"" + DOT + "\" style=\"width: 9mm\"/></p>");
        Pack pack =
                new Packs(Optional.of(folder))
                        .make(
                                CaseFiles.withPapers(
                                        CaseFiles.installedSolar(),
                                        new Paper(PaperKind.COVER, "default", List.of())),
                                List.of());
        assertThat(pack.findings()).isEmpty();
        assertThat(new String(pack.pdf(), java.nio.charset.StandardCharsets.ISO_8859_1))
                .contains("/Image");
        assertThat(Judge.of(pack.pdf())).isEqualTo(Judge.Verdict.CONFORMS);
    }

    @Test
    void aTypefaceThatIsNotThereIsReplacedByOurs() throws Exception {
        Files.writeString(
                folder.resolve("paperbark.css"),
                "h1 { font-family: Elsewhere, serif !important } p { font: italic 9pt monospace }");
        Pack pack = new Packs(Optional.of(folder)).make(CaseFiles.installedSolar(), List.of());
        assertThat(pack.findings()).isEmpty();
        assertThat(Judge.of(pack.pdf())).isEqualTo(Judge.Verdict.CONFORMS);
    }
}
