package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.FutureTask;
import java.util.function.Predicate;
import javax.imageio.ImageIO;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.pdf.PaperPart;
import paperbark.output.pdf.Sketch;

/** A paper that is shown in place of being drawn is the same to the byte. */
class RedrawingTest {
    private static final TemplateEngine ENGINE = new TemplateEngine(Optional.empty());
    private static final Packs DRAWING_ALL = drawingAll();
    private static final Packs USUAL = new Packs(Optional.empty());

    private static Packs drawingAll() {
        return drawingAll(Optional.empty());
    }

    private static Packs drawingAll(Optional<Path> folder) {
        System.setProperty("paperbark.draw-all", "true");
        try {
            return new Packs(folder);
        } finally {
            System.clearProperty("paperbark.draw-all");
        }
    }

    @Property(tries = 8)
    void givesTheSameBytesWhateverTheOwnerIsCalled(@ForAll("names") String name) {
        for (CaseFile job :
                List.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump(), CaseFiles.bare())) {
            CaseFile own = CaseFiles.withOwner(job, name);

            assertThat(USUAL.make(own, List.of()).pdf())
                    .isEqualTo(DRAWING_ALL.make(own, List.of()).pdf());
        }
    }

    @Provide
    Arbitrary<String> names() {
        return Arbitraries.oneOf(
                Arbitraries.of(
                        "Ann Dunlin",
                        "Wim",
                        "\u0141ucja \u017B\u00F3\u0142w",
                        "\u0391\u03BD\u03BD\u03B1",
                        "\u05D3\u05D1\u05D5\u05E8\u05D4",
                        "\u6F22\u5B57",
                        "Zo\u00E9\u00A0van\u00A0Dam",
                        "soft\u00ADhyphen",
                        "1.  ",
                        "(\\)",
                        "a b  c\td",
                        "fi ffl",
                        "W".repeat(60)),
                Arbitraries.strings()
                        .withCharRange('a', 'z')
                        .withChars(" '-\u00E4\u00F6")
                        .ofMinLength(1)
                        .ofMaxLength(120));
    }

    @Test
    void drawsAPaperOfAKnownShapeNoMore() throws IOException {
        StyleSheet sheet = StyleSheet.of(ENGINE.source(Packs.STYLE).orElseThrow());

        assertThat(shown(sheet, "Ann Dunlin")).isEmpty();
        assertThat(shown(sheet, "Bea Plover")).as("compared first").isEmpty();
        assertThat(shown(sheet, "Cem Martin").size()).isGreaterThan(3);
        assertThat(shown(sheet, "Word ".repeat(60)).size())
                .as("a longer name moves what is below it")
                .isLessThan(shown(sheet, "Dot Martin").size());
    }

    @Test
    void drawsATemplateForEverOnceItsPapersDiffer() throws IOException {
        StyleSheet sheet = StyleSheet.of(ENGINE.source(Packs.STYLE).orElseThrow());
        shown(sheet, "Ann Dunlin");
        shown(sheet, "Bea Plover");
        List<Sketch> sketches = shown(sheet, "Cem Martin");
        ReadyPaper one = new ReadyPaper(1, sketches.get(0), List.of(), List.of(), true);
        ReadyPaper other = new ReadyPaper(1, sketches.get(1), List.of(), List.of(), true);
        PaperMemory memory = new PaperMemory();

        memory.compare("stc/default.ftlh", one, one);
        assertThat(memory.draws("stc/default.ftlh")).isFalse();
        memory.compare("stc/default.ftlh", one, other);

        assertThat(memory.draws("stc/default.ftlh")).isTrue();
        assertThat(memory.draws("veec/default.ftlh")).isFalse();
    }

    @Test
    void comparesBoxesToWriteInToo() throws IOException {
        StyleSheet sheet = StyleSheet.of(ENGINE.source(Packs.STYLE).orElseThrow());
        shown(sheet, "Ann Dunlin");
        shown(sheet, "Bea Plover");
        Sketch sketch = shown(sheet, "Cem Martin").get(0);
        SignBox box = new SignBox(1, "Owner", "Signature", 10, 10, 10, 10);

        assertThat(
                        new ReadyPaper(1, sketch, List.of(box), List.of(), true)
                                .isSame(new ReadyPaper(1, sketch, List.of(), List.of(), true)))
                .isFalse();
    }

    @Test
    void laysOutTheCoverAloneOnceHeadAndFootAreKnownToo() throws IOException {
        StyleSheet sheet = StyleSheet.of(ENGINE.source(Packs.STYLE).orElseThrow());
        List<PaperMarkup> first = papers(sheet, "Ann Dunlin", p -> true);
        drawn(sheet, first);
        for (String owner : List.of("Bea Plover", "Cem Martin", "Dot Martin")) {
            drawn(sheet, papers(sheet, owner, p -> true));
        }
        List<PaperMarkup> last = papers(sheet, "Eve Heron", p -> true);

        assertThat(leanFrom(sheet, first)).isEqualTo(first.size());
        assertThat(leanFrom(sheet, last)).isEqualTo(1);
        assertThat(drawn(sheet, last)).hasSize(last.size() - 1);
    }

    @Test
    void showsTheLogoOfItsOwnFirmInKnownHeads(@TempDir Path folder) throws IOException {
        for (Color colour : List.of(Color.GREEN, Color.ORANGE)) {
            Path own = Files.createDirectory(folder.resolve("firm-" + colour.getRed()));
            picture(colour, own.resolve("logo.png"));
            Packs drawing = drawingAll(Optional.of(own));
            Packs usual = new Packs(Optional.of(own));
            for (String owner : List.of("Ann Dunlin", "Bea Plover", "Cem Martin", "Dot Martin")) {
                CaseFile job = CaseFiles.withOwner(CaseFiles.installedSolar(), owner);

                assertThat(usual.make(job, List.of()).pdf())
                        .isEqualTo(drawing.make(job, List.of()).pdf());
            }
        }
    }

    @Test
    void drawsHeadsWithOtherPicturesThanTheLogo(@TempDir Path folder) throws IOException {
        String running = ENGINE.source(PaperWriter.RUNNING).orElseThrow();
        Files.writeString(
                folder.resolve(PaperWriter.RUNNING),
                running.replace("<table>", "<img src=\"stamp.png\" alt=\"stamp\"/><table>"));
        Packs usual = new Packs(Optional.of(folder));
        Packs drawing = drawingAll(Optional.of(folder));
        for (Color colour : List.of(Color.GREEN, Color.GREEN, Color.GREEN, Color.ORANGE)) {
            picture(colour, folder.resolve("stamp.png"));
            CaseFile job = CaseFiles.installedSolar();

            assertThat(usual.make(job, List.of()).pdf())
                    .isEqualTo(drawing.make(job, List.of()).pdf());
        }
    }

    private static void picture(Color colour, Path file) throws IOException {
        BufferedImage picture = new BufferedImage(60, 20, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = picture.createGraphics();
        graphics.setColor(colour);
        graphics.fillOval(0, 0, 60, 20);
        graphics.dispose();
        ImageIO.write(picture, "png", file.toFile());
    }

    @Test
    void knowsPapersOnAThreadThatLaidOutNothing() throws Exception {
        StyleSheet sheet = StyleSheet.of(ENGINE.source(Packs.STYLE).orElseThrow());
        for (String owner : List.of("Ann Dunlin", "Bea Plover")) {
            drawn(sheet, papers(sheet, owner, p -> true));
        }
        FutureTask<List<PaperMarkup>> elsewhere =
                new FutureTask<>(() -> papers(sheet, "Cem Martin", p -> true));
        new Thread(elsewhere).start();

        assertThat(elsewhere.get())
                .filteredOn(p -> p.ready().isEmpty())
                .extracting(p -> p.paper().kind())
                .containsExactly(PaperKind.COVER);
    }

    @Test
    void tellsEachJobOfAPictureThatIsRefused(@TempDir Path folder) throws IOException {
        Files.writeString(
                folder.resolve("paperbark.css"),
                ENGINE.source(Packs.STYLE).orElseThrow()
                        + "\n.handover h1 { background-image: url('../gone.png'); }\n");
        Packs packs = new Packs(Optional.of(folder));
        for (String owner : List.of("Ann Dunlin", "Bea Plover", "Cem Martin", "Dot Martin")) {
            CaseFile job = CaseFiles.withOwner(CaseFiles.installedSolar(), owner);

            assertThat(packs.make(job, List.of()).findings())
                    .as(owner)
                    .anySatisfy(f -> assertThat(f.fact()).contains("asks for"));
        }
    }

    private static int leanFrom(StyleSheet sheet, List<PaperMarkup> papers) {
        return LeanPages.from(papers, sheet.drawn().map(PaperMemory::frames));
    }

    /** Lays out a job's papers but the cover, and gives those that were not drawn. */
    private static List<Sketch> shown(StyleSheet sheet, String owner) throws IOException {
        return drawn(sheet, papers(sheet, owner, p -> p.kind() != PaperKind.COVER));
    }

    private static List<PaperMarkup> papers(
            StyleSheet sheet, String owner, Predicate<Paper> which) {
        CaseFile job = CaseFiles.withOwner(CaseFiles.installedSolar(), owner);
        PaperWriter writer =
                new PaperWriter(
                        ENGINE,
                        ENGINE,
                        job,
                        Logo.of(Optional.empty(), RunLimit.USUAL),
                        sheet.drawn());
        return job.papers().stream()
                .filter(Paper::isPrinted)
                .filter(which)
                .map(writer::write)
                .toList();
    }

    private static List<Sketch> drawn(StyleSheet sheet, List<PaperMarkup> papers)
            throws IOException {
        try (PDDocument document = new PDDocument()) {
            LaidOut laidOut =
                    Layout.draw(
                            document,
                            "title",
                            sheet,
                            papers,
                            new ResourceGate(Optional.empty(), Optional.empty()));
            List<PaperPart> parts = laidOut.redrawing().parts();
            laidOut.slim();
            return parts.stream().map(PaperPart::known).flatMap(Optional::stream).toList();
        }
    }
}
