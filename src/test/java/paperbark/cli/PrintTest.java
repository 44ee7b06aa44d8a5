package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.SampleWeek;
import paperbark.disk.Hashes;
import paperbark.output.paper.Judge;

/** Print runs for a crew's day and of named jobs; SB-1121 is held, the others drive on two days. */
class PrintTest {
    @TempDir private static Path folder;
    private static Path batch;

    @BeforeAll
    static void prepare() throws IOException {
        Path register = folder.resolve("three.csv");
        Files.writeString(register, SampleWeek.only("SB-1132", "SB-1131", "SB-1121", "SB-1133"));
        Program.Run run =
                Program.run(
                        folder,
                        "prepare",
                        "three.csv",
                        "--by-crew",
                        "--as-of",
                        "2026-11-23",
                        "--tables",
                        SampleWeek.TABLES.toAbsolutePath().toString());
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10);
        batch = folder.resolve("packs/2026-11-23-three");
    }

    @Test
    void aCrewsDayHasARunSheetInFrontAndItsJobsInTheOrderOfTheRoute() throws IOException {
        Path file = batch.resolve("print-run-2026-11-23-Heron.pdf");
        try (PDDocument run = Loader.loadPDF(file.toFile())) {
            assertThat(text(run, 1))
                    .containsSubsequence(
                            "Run sheet: Crew Heron, 23 Nov 2026", "SB-1131", "SB-1132");
            assertThat(text(run, 1)).contains("To sign: ").doesNotContain("SB-1133", "SB-1121");
            assertThat(text(run, 3)).contains("Job SB-1131", "Job 1 of 2");
            assertThat(jobs(run)).containsExactly("SB-1131", "SB-1132");
        }
        assertThat(Judge.of(Files.readAllBytes(file))).isEqualTo(Judge.Verdict.CONFORMS);
    }

    @Test
    void jobsThatAreHeldHaveARunOfTheirOwnAndTheIndexLinksEach() throws IOException {
        try (PDDocument run = Loader.loadPDF(batch.resolve("print-run-held.pdf").toFile())) {
            assertThat(jobs(run)).containsExactly("SB-1121");
        }
        assertThat(Files.readString(batch.resolve("index.html")))
                .contains("href=\"print-run-held.pdf\"", "Crew Heron, 24 Nov 2026 (PDF)");
    }

    @Test
    void namedJobsComeInTheOrderNamedAndTheBatchStaysAsItWas() throws IOException {
        String before = Hashes.ofAll(batch).toString();
        Program.Run said =
                Program.run(
                        folder,
                        "print",
                        "SB-1133",
                        "SB-1131",
                        "--batch",
                        batch.toString(),
                        "--out",
                        "again.pdf");

        assertThat(said.exitCode()).as(said.err()).isZero();
        try (PDDocument run = Loader.loadPDF(folder.resolve("again.pdf").toFile())) {
            assertThat(jobs(run)).containsExactly("SB-1133", "SB-1131");
            assertThat(text(run, 1)).contains("Job SB-1133", "Job 1 of 2");
            assertThat(run.getDocumentInformation().getAuthor()).contains("Saltmarsh");
        }
        assertThat(Hashes.ofAll(batch).toString()).isEqualTo(before);
    }

    @Test
    void aJobThatTheBatchLacksIsNamedWithTheNearest() {
        Program.Run said = Program.run(folder, "print", "SB-1113", "--batch", batch.toString());

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("no pack of job \"SB-1113\"", "Did you mean SB-11");
    }

    @Test
    void aFolderThatIsNoBatchIsSaidToBeNone() {
        Program.Run said = Program.run(folder, "print", "SB-1131", "--batch", ".");

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("is no batch folder");
    }

    private static List<String> jobs(PDDocument run) {
        List<String> jobs = new ArrayList<>();
        for (PDOutlineItem group : run.getDocumentCatalog().getDocumentOutline().children()) {
            for (PDOutlineItem job : group.children()) {
                jobs.add(job.getTitle());
            }
        }
        return jobs;
    }

    private static String text(PDDocument run, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        return stripper.getText(run).replaceAll("\\s+", " ");
    }
}
