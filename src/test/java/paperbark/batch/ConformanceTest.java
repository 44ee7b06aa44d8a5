package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.output.paper.Judge;

/** The published sample week before an independent judge of PDF/UA-1 and PDF/A-2a. */
class ConformanceTest {
    @TempDir private static Path folder;
    private static Path batch;

    @BeforeAll
    static void prepare() throws IOException {
        batch = SampleWeek.published();
    }

    static List<String> documents() throws IOException {
        try (Stream<Path> packs = Files.list(batch.resolve("packs"))) {
            return Stream.concat(
                            packs.map(p -> "packs/" + p.getFileName()).sorted(),
                            Stream.of("print-run.pdf"))
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("documents")
    void canBeReadAloudAndKept(String name) throws IOException {
        byte[] pdf = Files.readAllBytes(batch.resolve(name));

        assertThat(Judge.packet(pdf))
                .contains("<pdfuaid:part>1<", "<pdfaid:part>2<", "<pdfaid:conformance>A<");
        assertThat(Judge.of(pdf)).isEqualTo(Judge.Verdict.CONFORMS);
    }

    @Test
    void heldPapersAndFormsAreAmongTheDocuments() throws IOException {
        assertThat(documents()).hasSize(41);
        String all = text(batch.resolve("print-run.pdf"));
        assertThat(all).contains("nobody: not in this pack", "Transfer slip: STCs");
    }

    @Test
    void aPageOutOfPlaceInTheTreeIsNoticed() throws IOException {
        Path pack = batch.resolve("packs/SB-1101.pdf");
        Path broken = folder.resolve("broken.pdf");
        try (PDDocument document = Loader.loadPDF(pack.toFile())) {
            document.getDocumentCatalog().setLanguage(null);
            document.getDocumentCatalog().setOutputIntents(List.of());
            document.getDocumentCatalog().getStructureTreeRoot().setKids(List.of());
            for (PDPage page : document.getPages()) {
                page.getAnnotations().forEach(a -> a.setStructParent(-1));
            }
            document.save(broken.toFile());
        }
        Judge.Verdict verdict = Judge.of(Files.readAllBytes(broken));
        assertThat(verdict.accessible()).isNotEmpty();
        assertThat(verdict.archivable()).isNotEmpty();
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }
}
