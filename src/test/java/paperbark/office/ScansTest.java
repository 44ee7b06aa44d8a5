package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.batch.PageMap;
import paperbark.cli.Program;
import paperbark.ledger.Ledger;
import paperbark.ledger.PaperState;
import paperbark.output.paper.SignBox;
import paperbark.scan.Scanned;

/** Piles of signed papers that come back to an office; common practice, no source. */
class ScansTest {
    private static final int HALTED = 137;

    @TempDir private Path folder;

    private ScannedOffice at;

    @BeforeEach
    void printTwoJobs() throws IOException {
        at = new ScannedOffice(folder);
    }

    @Test
    void aPileIsSortedToJobsAndPapersAndFiledAsItCame() throws IOException {
        byte[] before;
        PageMap.PaperSpan stc = ScannedOffice.paper(at.batch, "J-1", "stc");
        List<SignBox> all = stc.boxes();
        SignBox unsigned = all.get(all.size() - 2);
        List<SignBox> others = all.stream().filter(b -> b != unsigned).toList();
        assertThat(stc.pages()).isEqualTo(2);
        try (Scanned pile = new Scanned()) {
            pile.page(ScannedOffice.pack(at.batch, "J-1"), stc.first() + 1, others, true, true);
            pile.empty();
            ScannedOffice.add(pile, at.batch, "J-2", "warranty");
            pile.page(
                    ScannedOffice.pack(at.batch, "J-2"),
                    ScannedOffice.paper(at.batch, "J-2", "stc").first(),
                    all,
                    true,
                    false);
            pile.page(ScannedOffice.pack(at.batch, "J-1"), stc.first(), others, true, false);
            pile.page(ScannedOffice.pack(at.batch, "J-2"), 1, all, false, false);
            pile.save(at.office.scans().resolve("Pile 1.pdf"));
        }
        before = Files.readAllBytes(at.office.scans().resolve("Pile 1.pdf"));

        Program.Run run = at.watch();

        assertThat(run.exitCode()).isEqualTo(10);
        assertThat(run.out())
                .contains(
                        "Pile 1.pdf: 4 pages of 3 papers sorted into signed/, 1 empty, 1 to be placed by a person.");
        assertThat(at.signed())
                .containsExactly(
                        "2026-11-23-Pile-1.html",
                        "J-1/J-1-stc-assignment.pdf",
                        "J-2/J-2-stc-assignment.pdf",
                        "J-2/J-2-warranty-registration.pdf",
                        "to-place/page-1.pdf");
        assertThat(at.office.filed().resolve("2026/scans/Pile 1.pdf")).hasBinaryContent(before);
        assertThat(Office.list(at.office.scans())).isEmpty();
        assertThat(Office.list(at.office.work()).stream().filter(f -> !Office.isHidden(f)))
                .isEmpty();
        try (PDDocument paper =
                Loader.loadPDF(at.office.signed().resolve("J-1/J-1-stc-assignment.pdf").toFile())) {
            assertThat(paper.getNumberOfPages()).isEqualTo(2);
            assertThat(paper.getPage(0).getRotation()).isZero();
            assertThat(paper.getPage(1).getRotation()).isEqualTo(180);
        }
        assertThat(at.states("J-1").get("stc 1").step()).isEqualTo(PaperState.Step.BLANK_BOX);
        assertThat(at.states("J-1").get("warranty 1").step()).isEqualTo(PaperState.Step.PRINTED);
        assertThat(at.states("J-2").get("stc 1").step()).isEqualTo(PaperState.Step.INCOMPLETE);
        assertThat(at.states("J-2").get("warranty 1").step()).isEqualTo(PaperState.Step.BACK);
        assertThat(Files.readString(at.office.signed().resolve("2026-11-23-Pile-1.html")))
                .contains("STC assignment of job J-2: page 2 of 2 did not come.")
                .contains(unsigned.who() + ", " + unsigned.what())
                .contains("data:image/png;base64,")
                .contains("signed/to-place/page-1.pdf")
                .doesNotContain("Amberwood");
    }

    @Test
    void pagesThatComeLaterGoIntoTheSameFileAndAPersonPlacesThoseWithoutAMark() throws IOException {
        PageMap.PaperSpan stc = ScannedOffice.paper(at.batch, "J-1", "stc");
        try (Scanned pile = new Scanned()) {
            pile.page(
                    ScannedOffice.pack(at.batch, "J-1"), stc.first() + 1, stc.boxes(), true, false);
            pile.page(ScannedOffice.pack(at.batch, "J-1"), stc.first(), stc.boxes(), false, false);
            pile.save(at.office.scans().resolve("one.pdf"));
        }
        assertThat(at.scans().out()).contains("[page-unplaced]").contains("[paper-incomplete]");

        Program.Run wrong =
                Program.run(
                        at.folder,
                        "file-page",
                        "1",
                        "J-1",
                        "stc",
                        "--page",
                        "3",
                        "--office",
                        at.office.root().toString());
        assertThat(wrong.exitCode()).isEqualTo(2);
        assertThat(wrong.err()).contains("The paper has 2 pages");
        Program.Run placed =
                Program.run(
                        at.folder,
                        "file-page",
                        "1",
                        "J-1",
                        "stc",
                        "--office",
                        at.office.root().toString());

        assertThat(placed.exitCode()).as(placed.err()).isZero();
        assertThat(at.states("J-1").get("stc 1").step()).isEqualTo(PaperState.Step.BACK);
        assertThat(at.signed())
                .contains("J-1/J-1-stc-assignment.pdf")
                .doesNotContain("to-place/page-1.pdf");
        assertThat(ScannedOffice.pages(at.office.signed().resolve("J-1/J-1-stc-assignment.pdf")))
                .isEqualTo(2);
        try (Scanned again = new Scanned()) {
            again.page(ScannedOffice.pack(at.batch, "J-1"), stc.first(), stc.boxes(), true, false);
            again.save(at.office.scans().resolve("two.pdf"));
        }
        assertThat(at.scans().out())
                .contains("[page-twice]")
                .contains("page 1 came more than once");
        assertThat(ScannedOffice.pages(at.office.signed().resolve("J-1/J-1-stc-assignment.pdf")))
                .isEqualTo(3);
    }

    @Test
    void aPageWithoutAMarkIsTakenForTheOneBetweenItsNeighboursAndAskedAbout() throws IOException {
        PageMap.PaperSpan stc = ScannedOffice.paper(at.batch, "J-1", "stc");
        try (Scanned pile = new Scanned()) {
            pile.page(ScannedOffice.pack(at.batch, "J-1"), stc.first(), stc.boxes(), true, false);
            pile.page(
                    ScannedOffice.pack(at.batch, "J-1"),
                    stc.first() + 1,
                    stc.boxes(),
                    false,
                    false);
            pile.empty();
            pile.page(ScannedOffice.pack(at.batch, "J-1"), stc.first() + 2, List.of(), true, false);
            pile.page(ScannedOffice.pack(at.batch, "J-2"), stc.first(), List.of(), false, false);
            pile.page(
                    ScannedOffice.pack(at.batch, "J-2"), stc.first() + 1, stc.boxes(), true, false);
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        assertThat(at.scans().out())
                .containsOnlyOnce("it may be")
                .contains("it may be page 2 of the STC assignment of job J-1.");
        assertThat(at.states("J-1").get("stc 1").back()).containsExactly(1);
    }

    @Test
    void theSameBytesAreTakenInOnceAndADamagedFileGoesBack() throws IOException {
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-2", "warranty");
            pile.save(at.office.scans().resolve("one.pdf"));
        }
        Files.copy(at.office.scans().resolve("one.pdf"), at.office.scans().resolve("two.pdf"));
        Files.writeString(at.office.scans().resolve("bad.pdf"), "%PDF-1.7 and then nothing");
        Files.writeString(at.office.scans().resolve("note.docx"), "no picture");
        Program.Run run = at.watch();
        assertThat(run.out())
                .contains("two.pdf: It was taken in before.")
                .contains("bad.pdf: The file is damaged or locked. See returned/.")
                .contains("note.docx: The file is no PDF and no picture. See returned/.");
        assertThat(at.office.returned().resolve("2026-11-23-bad/WHAT-TO-DO.txt"))
                .content()
                .contains("Scan the pages again");
        assertThat(
                        ScannedOffice.pages(
                                at.office.signed().resolve("J-2/J-2-warranty-registration.pdf")))
                .isOne();
        assertThat(Office.list(at.office.filed().resolve("2026/scans"))).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"TAKEN", "SORTED", "STAGED", "COMMITTED", "PLACED", "FILED"})
    @Tag("slow")
    void killedAtAnyStepTheNextStartFinishesThePile(String step) throws Exception {
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-1", "warranty");
            pile.page(ScannedOffice.pack(at.batch, "J-2"), 1, List.of(), false, false);
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        Path said = at.folder.resolve("said.txt");
        Process process =
                Child.program(
                        List.of("scans", at.office.root().toString()),
                        said,
                        "paperbark.fault=" + step);
        assertThat(process.waitFor()).as(Files.readString(said)).isEqualTo(HALTED);
        at.scans();
        assertThat(at.states("J-1").get("warranty 1").back()).containsExactly(1);
        assertThat(at.signed())
                .contains("J-1/J-1-warranty-registration.pdf", "to-place/page-1.pdf")
                .hasSize(3);
        assertThat(
                        ScannedOffice.pages(
                                at.office.signed().resolve("J-1/J-1-warranty-registration.pdf")))
                .isOne();
        assertThat(at.office.filed().resolve("2026/scans/pile.pdf")).exists();
        assertThat(Office.list(at.office.work()).stream().filter(f -> !Office.isHidden(f)))
                .isEmpty();
        try (Ledger ledger = Ledger.open(at.office.ledger())) {
            assertThat(ledger.records().withoutFolder()).hasSize(1);
        }
    }
}
