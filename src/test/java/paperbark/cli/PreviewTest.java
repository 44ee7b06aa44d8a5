package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code preview}: one paper for a sample or real job, once or after each change. */
class PreviewTest {
    @TempDir private Path directory;

    private String text(String file) throws IOException {
        try (PDDocument document = Loader.loadPDF(directory.resolve(file).toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }

    private void template(String name, String text) throws IOException {
        Path file = directory.resolve("templates").resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "cover",
                "site-sheet",
                "warranty",
                "warranty/ternlight",
                "stc",
                "stc/kestrel",
                "stc/whimbrel-stc",
                "veec",
                "veec/whimbrel-veec",
                "working",
                "old-heater",
                "handover"
            })
    void everyShippedPaperCanBeLookedAtWithoutARegister(String paper) throws IOException {
        Program.Run run = Program.run(directory, "preview", paper, "--out", "seen.pdf");

        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(run.out().lines())
                .as("one line, no finding")
                .singleElement()
                .asString()
                .startsWith(paper.contains("/") ? paper : paper + "/default")
                .endsWith("-> " + directory.resolve("seen.pdf"));
        assertThat(text("seen.pdf")).contains("SB-11");
    }

    @Test
    void theCoverAloneComesOutAndKnowsTheOtherPapers() throws IOException {
        Program.run(directory, "preview", "cover", "--job", "SB-1102", "--out", "seen.pdf");

        assertThat(text("seen.pdf"))
                .contains("The job at a glance", "Owner's handover")
                .doesNotContain("Care diary");
    }

    @Test
    void aJobOfTheFirmsOwnRegisterIsTakenByItsNumber() throws IOException {
        Files.writeString(
                directory.resolve("week.csv"),
                """
                Job,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model,Stage,Claim STCs
                T-1,Ada Amberwood,4 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,booked,yes
                T-2,Bela Brackenfold,6 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,booked,yes
                """);
        String tables = Path.of("input-samples/tables").toAbsolutePath().toString();
        String[] words = {
            "preview", "handover", "--register", "week.csv", "--tables", tables, "--job", "t-2"
        };
        Program.Run run = Program.run(directory, words);

        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(text("preview-handover.pdf")).contains("Bela Brackenfold");
    }

    @Test
    void withoutAPaperAllAreListedWithTheFirmsOwnVariants() throws IOException {
        template("warranty/heron.ftlh", "<section></section>");
        Program.Run run = Program.run(directory, "preview");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out().lines().map(line -> line.split(" ")[0]))
                .containsExactlyInAnyOrder(
                        "cover",
                        "working",
                        "old-heater",
                        "site-sheet",
                        "warranty",
                        "warranty/ternlight",
                        "warranty/heron",
                        "stc",
                        "stc/kestrel",
                        "veec",
                        "declarations",
                        "handover",
                        "benefit");
        assertThat(run.out()).contains("Large-heater declarations");
    }

    @Test
    void theSheetOfTheRegisterCanBeNamed() throws IOException {
        String week = Path.of("input-samples/week-47.xlsx").toAbsolutePath().toString();
        String tables = Path.of("input-samples/tables").toAbsolutePath().toString();
        String[] words = {
            "preview", "cover", "--register", week, "--tables", tables, "--sheet", "no such sheet"
        };

        assertThat(Program.run(directory, words).out()).contains("[sheet-not-found]");
        assertThat(Program.run(directory, "preview", "cover", "--sheet", "Week 47").err())
                .startsWith("--sheet names a sheet of --register");
    }

    @Test
    void picturesComeOnePerPage() throws IOException {
        Program.Run run =
                Program.run(directory, "preview", "old-heater", "--png", "--out", "p.png");

        assertThat(run.exitCode()).isZero();
        assertThat(ImageIO.read(directory.resolve("p-1.png").toFile()).getWidth())
                .isBetween(1180, 1200);
    }

    @Test
    void anUnknownPaperOrJobIsToldWithTheNearest() {
        Program.Run paper = Program.run(directory, "preview", "handower");
        Program.Run job = Program.run(directory, "preview", "stc", "--job", "SB-11O2");

        assertThat(paper.exitCode()).isEqualTo(2);
        assertThat(paper.err()).contains("no paper \"handower\"", "nearest is \"handover\"");
        assertThat(job.exitCode()).isEqualTo(2);
        assertThat(job.err()).contains("no job \"SB-11O2\"", "nearest number is \"SB-1");
    }

    @Test
    void aMistakeIsOneLineWithTemplateLineAndColumn() throws IOException {
        template("handover/default.ftlh", "<section>\n<p>${job.refrence}</p>\n</section>");
        Program.Run run = Program.run(directory, "preview", "handover");

        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.out().lines())
                .hasSize(2)
                .first()
                .asString()
                .contains("handover/default.ftlh > line 2, column 4", "[template-broken]")
                .contains("\"refrence\"", "the nearest is \"reference\"");
        assertThat(run.out()).contains("HELD handover/default");
    }

    @Test
    void aMistakeInAPartIsToldOnceAndOneInAnotherPaperNotAtAll() throws IOException {
        String parts = Files.readString(Path.of("templates/parts.ftlh"));
        template("parts.ftlh", parts.replace("<h1>${text}</h1>", "<h1>${nothere}</h1>"));
        template("stc/default.ftlh", "${nothere}");
        Program.Run run = Program.run(directory, "preview", "cover");

        assertThat(run.out().lines().filter(line -> line.contains("template-broken")))
                .noneMatch(line -> line.contains("stc/"))
                .hasSize(1);
    }

    @Test
    void watchWithoutATemplateFolderIsAMistakeOfUsage() {
        assertThat(Program.run(directory, "preview", "stc", "--watch").exitCode()).isEqualTo(2);
    }

    @Test
    void watchRendersAnewAfterEachChangeUntilInterrupted() throws Exception {
        template("handover/default.ftlh", "<section>First words</section>");
        AtomicReference<Thread> runner = new AtomicReference<>();
        CompletableFuture<Program.Run> ended = new CompletableFuture<>();
        Thread thread =
                new Thread(
                        () ->
                                ended.complete(
                                        Program.run(
                                                directory,
                                                "preview",
                                                "handover",
                                                "--watch",
                                                "--out",
                                                "seen.pdf")));
        runner.set(thread);
        thread.start();
        until(() -> shows("First words"));
        template("handover/default.ftlh", "<section>Second words</section>");
        until(() -> shows("Second words"));
        template("handover/default.ftlh", "<section>${nothere}</section>");
        until(() -> shows("Held: Owner's handover"));
        thread.interrupt();
        Program.Run run = ended.get(20, TimeUnit.SECONDS);

        assertThat(run.exitCode()).isZero();
        assertThat(run.out().lines().filter(line -> line.contains(" in "))).hasSize(3);
        assertThat(run.out()).contains("Watching", "[template-broken]", "\"nothere\"");
    }

    private boolean shows(String words) {
        try {
            return Files.exists(directory.resolve("seen.pdf")) && text("seen.pdf").contains(words);
        } catch (IOException e) {
            return false;
        }
    }

    private static void until(BooleanSupplier condition) throws InterruptedException {
        for (int i = 0; i < 600 && !condition.getAsBoolean(); i++) {
            Thread.sleep(50);
        }
        assertThat(condition.getAsBoolean()).isTrue();
    }
}
