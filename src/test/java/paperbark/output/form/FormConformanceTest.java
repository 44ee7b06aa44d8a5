package paperbark.output.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts.FontName;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceCMYK;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.paper.Judge;
import paperbark.output.paper.Pack;
import paperbark.output.paper.Packs;
import paperbark.output.paper.PrintRuns;

/** What a pack with a form of other people's claims, and whether the claim is true. */
class FormConformanceTest {
    private static final String ACCESSIBLE = "<pdfuaid:part>1<";
    private static final String ARCHIVABLE = "<pdfaid:part>2<";

    @TempDir private Path folder;

    private Pack pack(byte[] form, String flatten) {
        Forms.Filled filled =
                Filling.of(
                                folder,
                                form,
                                "field,value",
                                "#flatten," + flatten,
                                "Owner,${job.owner.name}")
                        .filled();
        return new Packs(Optional.of(folder)).make(filled.caseFile(), filled.papers());
    }

    @FunctionalInterface
    private interface Change {
        void to(PDDocument form, PDPageContentStream page) throws IOException;
    }

    /** A form of embedded letters, with something more on its first page. */
    private static byte[] form(Change change) throws IOException {
        FormSketch form = new FormSketch();
        form.text("Owner", 20, 40, 80, 7);
        form.words(20, 20, 10, "Their first page");
        form.newPage().words(20, 20, 10, "Their second page");
        PDDocument document = form.document();
        try (PDPageContentStream page =
                new PDPageContentStream(
                        document, document.getPage(0), AppendMode.APPEND, true, true)) {
            change.to(document, page);
        }
        return form.pdf();
    }

    @Test
    void aFlattenedFormOfEmbeddedLettersKeepsBothClaims() throws IOException {
        Pack pack = pack(form((document, page) -> {}), "yes");
        byte[] run = PrintRuns.of(folder, List.of(pack));
        for (byte[] pdf : List.of(pack.pdf(), run)) {
            assertThat(Judge.packet(pdf)).contains(ACCESSIBLE, ARCHIVABLE);
            assertThat(Judge.of(pdf)).isEqualTo(Judge.Verdict.CONFORMS);
        }
    }

    @Test
    void marksOfTheFormsOwnTreeDoNotComeAlong() throws IOException {
        byte[] form =
                form(
                        (document, page) -> {
                            page.beginMarkedContent(COSName.ARTIFACT);
                            page.addRect(50, 50, 10, 10);
                            page.fill();
                            page.endMarkedContent();
                            page.beginMarkedContent(COSName.P, 7);
                            page.addRect(70, 50, 10, 10);
                            page.fill();
                            page.endMarkedContent();
                        });
        for (String flatten : List.of("yes", "no")) {
            assertThat(Judge.of(pack(form, flatten).pdf()).accessible()).isEmpty();
        }
    }

    @Test
    void lettersThatAreNotEmbeddedTakeBothClaimsAway() throws IOException {
        byte[] form =
                form(
                        (document, page) -> {
                            page.beginText();
                            page.setFont(new PDType1Font(FontName.HELVETICA), 10);
                            page.newLineAtOffset(60, 400);
                            page.showText("Whose letters are these?");
                            page.endText();
                        });
        for (String flatten : List.of("yes", "no")) {
            Pack pack = pack(form, flatten);
            byte[] run = PrintRuns.of(folder, List.of(pack));
            for (byte[] pdf : List.of(pack.pdf(), run)) {
                assertThat(Judge.packet(pdf)).doesNotContain("pdfuaid", "pdfaid");
                Judge.Verdict verdict = Judge.of(pdf);
                assertThat(verdict.archivable()).isNotEmpty();
                assertThat(verdict.accessible())
                        .allMatch(f -> f.contains("font") || f.contains("5-1"));
            }
        }
    }

    @Test
    void inksTakeTheClaimForTheArchiveAway() throws IOException {
        byte[] form =
                form(
                        (document, page) -> {
                            page.setNonStrokingColor(
                                    new PDColor(new float[] {1, 0, 0, 0}, PDDeviceCMYK.INSTANCE));
                            page.addRect(50, 50, 10, 10);
                            page.fill();
                        });
        byte[] pdf = pack(form, "yes").pdf();
        assertThat(Judge.packet(pdf)).contains(ACCESSIBLE).doesNotContain(ARCHIVABLE);
        Judge.Verdict verdict = Judge.of(pdf);
        assertThat(verdict.accessible()).isEmpty();
        assertThat(verdict.archivable()).isNotEmpty();
    }

    @Test
    void liveFieldsAreReadAloudAndNotForTheArchive() throws IOException {
        Pack pack = pack(form((document, page) -> {}), "no");
        assertThat(Judge.packet(pack.pdf())).contains(ACCESSIBLE).doesNotContain(ARCHIVABLE);
        assertThat(Judge.of(pack.pdf()).accessible()).isEmpty();

        byte[] run = PrintRuns.of(folder, List.of(pack));
        assertThat(Judge.packet(run)).contains(ACCESSIBLE).doesNotContain(ARCHIVABLE);
        assertThat(Judge.of(run).accessible()).isEmpty();
    }
}
