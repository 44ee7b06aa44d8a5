package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.poi.xssf.extractor.XSSFExcelExtractor;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.batch.PageMap;
import paperbark.cli.Program;
import paperbark.disk.Rights;
import paperbark.ledger.Ledger;
import paperbark.ledger.PaperState;
import paperbark.ledger.ScanBook;
import paperbark.output.paper.SignBox;
import paperbark.scan.Scanned;

/** Signed papers that come back to an office; common practice, no source. */
class ScansTest {
    private static final int HALTED = 137;

    @TempDir private Path folder;

    private Office office;
    private Path batch;

    @BeforeEach
    void printTwoJobs() throws IOException {
        office = Offices.make(folder.resolve("office"));
        batch = print("week.csv", Offices.register(1, 2));
    }

    private Path print(String name, String register) throws IOException {
        return print(name, register, 0);
    }

    private Path print(String name, String register, int exitCode) throws IOException {
        Files.writeString(office.intake().resolve(name), register);
        assertThat(watch().exitCode()).isEqualTo(exitCode);
        return office.packs().resolve("2026-11-23-" + name.replace(".csv", ""));
    }

    private Program.Run watch() {
        return Program.run(folder, "watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    private Program.Run scans() {
        return Program.run(folder, "scans", office.root().toString());
    }

    static PageMap.PaperSpan paper(Path batch, String job, String kind) throws IOException {
        return PageMap.in(batch).orElseThrow().of(job).orElseThrow().papers().stream()
                .filter(p -> p.kind().equals(kind))
                .findFirst()
                .orElseThrow();
    }

    static Path pack(Path batch, String job) {
        return batch.resolve("packs/" + job + ".pdf");
    }

    static void add(Scanned pile, Path batch, String job, String kind) throws IOException {
        PageMap.PaperSpan paper = paper(batch, job, kind);
        for (int i = 0; i < paper.pages(); i++) {
            pile.page(pack(batch, job), paper.first() + i, paper.boxes(), true, false);
        }
    }

    private Map<String, PaperState> states(String job) {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            return new ScanBook(ledger)
                    .papers(job).stream()
                            .collect(Collectors.toMap(p -> p.kind() + " " + p.version(), p -> p));
        }
    }

    private List<String> signed() throws IOException {
        try (Stream<Path> all = Files.walk(office.signed())) {
            return all.filter(Files::isRegularFile)
                    .map(f -> office.signed().relativize(f).toString())
                    .sorted()
                    .toList();
        }
    }

    private static int pages(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return document.getNumberOfPages();
        }
    }

    @Test
    void aPileIsSortedToJobsAndPapersAndFiledAsItCame() throws IOException {
        byte[] before;
        PageMap.PaperSpan stc = paper(batch, "J-1", "stc");
        List<SignBox> all = stc.boxes();
        SignBox unsigned = all.get(all.size() - 2);
        List<SignBox> others = all.stream().filter(b -> b != unsigned).toList();
        assertThat(stc.pages()).isEqualTo(2);
        try (Scanned pile = new Scanned()) {
            pile.page(pack(batch, "J-1"), stc.first() + 1, others, true, true);
            pile.empty();
            add(pile, batch, "J-2", "warranty");
            pile.page(pack(batch, "J-2"), paper(batch, "J-2", "stc").first(), all, true, false);
            pile.page(pack(batch, "J-1"), stc.first(), others, true, false);
            pile.page(pack(batch, "J-2"), 1, all, false, false);
            pile.save(office.scans().resolve("Pile 1.pdf"));
        }
        before = Files.readAllBytes(office.scans().resolve("Pile 1.pdf"));

        Program.Run run = watch();

        assertThat(run.exitCode()).isEqualTo(10);
        assertThat(run.out())
                .contains(
                        "Pile 1.pdf: 4 pages of 3 papers sorted into signed/, 1 empty, 1 to be placed by a person.");
        assertThat(signed())
                .containsExactly(
                        "2026-11-23-Pile-1.html",
                        "J-1/J-1-stc-assignment.pdf",
                        "J-2/J-2-stc-assignment.pdf",
                        "J-2/J-2-warranty-registration.pdf",
                        "to-place/page-1.pdf");
        assertThat(office.filed().resolve("2026/scans/Pile 1.pdf")).hasBinaryContent(before);
        assertThat(Office.list(office.scans())).isEmpty();
        assertThat(Office.list(office.work()).stream().filter(f -> !Office.isHidden(f))).isEmpty();
        try (PDDocument paper =
                Loader.loadPDF(office.signed().resolve("J-1/J-1-stc-assignment.pdf").toFile())) {
            assertThat(paper.getNumberOfPages()).isEqualTo(2);
            assertThat(paper.getPage(0).getRotation()).isZero();
            assertThat(paper.getPage(1).getRotation()).isEqualTo(180);
        }
        assertThat(states("J-1").get("stc 1").step()).isEqualTo(PaperState.Step.BLANK_BOX);
        assertThat(states("J-1").get("warranty 1").step()).isEqualTo(PaperState.Step.PRINTED);
        assertThat(states("J-2").get("stc 1").step()).isEqualTo(PaperState.Step.INCOMPLETE);
        assertThat(states("J-2").get("warranty 1").step()).isEqualTo(PaperState.Step.BACK);
        assertThat(Files.readString(office.signed().resolve("2026-11-23-Pile-1.html")))
                .contains("STC assignment of job J-2: page 2 of 2 did not come.")
                .contains(unsigned.who() + ", " + unsigned.what())
                .contains("data:image/png;base64,")
                .contains("signed/to-place/page-1.pdf")
                .doesNotContain("Amberwood");
    }

    @Test
    void pagesThatComeLaterGoIntoTheSameFileAndAPersonPlacesThoseWithoutAMark() throws IOException {
        PageMap.PaperSpan stc = paper(batch, "J-1", "stc");
        try (Scanned pile = new Scanned()) {
            pile.page(pack(batch, "J-1"), stc.first() + 1, stc.boxes(), true, false);
            pile.page(pack(batch, "J-1"), stc.first(), stc.boxes(), false, false);
            pile.save(office.scans().resolve("one.pdf"));
        }
        assertThat(scans().out()).contains("[page-unplaced]").contains("[paper-incomplete]");

        Program.Run wrong =
                Program.run(
                        folder,
                        "file-page",
                        "1",
                        "J-1",
                        "stc",
                        "--page",
                        "3",
                        "--office",
                        office.root().toString());
        assertThat(wrong.exitCode()).isEqualTo(2);
        assertThat(wrong.err()).contains("The paper has 2 pages");
        Program.Run placed =
                Program.run(
                        folder,
                        "file-page",
                        "1",
                        "J-1",
                        "stc",
                        "--office",
                        office.root().toString());

        assertThat(placed.exitCode()).as(placed.err()).isZero();
        assertThat(states("J-1").get("stc 1").step()).isEqualTo(PaperState.Step.BACK);
        assertThat(signed())
                .contains("J-1/J-1-stc-assignment.pdf")
                .doesNotContain("to-place/page-1.pdf");
        assertThat(pages(office.signed().resolve("J-1/J-1-stc-assignment.pdf"))).isEqualTo(2);
        try (Scanned again = new Scanned()) {
            again.page(pack(batch, "J-1"), stc.first(), stc.boxes(), true, false);
            again.save(office.scans().resolve("two.pdf"));
        }
        assertThat(scans().out()).contains("[page-twice]").contains("page 1 came more than once");
        assertThat(pages(office.signed().resolve("J-1/J-1-stc-assignment.pdf"))).isEqualTo(3);
    }

    @Test
    void aPageWithoutAMarkIsTakenForTheOneBetweenItsNeighboursAndAskedAbout() throws IOException {
        PageMap.PaperSpan stc = paper(batch, "J-1", "stc");
        try (Scanned pile = new Scanned()) {
            pile.page(pack(batch, "J-1"), stc.first(), stc.boxes(), true, false);
            pile.page(pack(batch, "J-1"), stc.first() + 1, stc.boxes(), false, false);
            pile.empty();
            pile.page(pack(batch, "J-1"), stc.first() + 2, List.of(), true, false);
            pile.page(pack(batch, "J-2"), stc.first(), List.of(), false, false);
            pile.page(pack(batch, "J-2"), stc.first() + 1, stc.boxes(), true, false);
            pile.save(office.scans().resolve("pile.pdf"));
        }
        assertThat(scans().out())
                .containsOnlyOnce("it may be")
                .contains("it may be page 2 of the STC assignment of job J-1.");
        assertThat(states("J-1").get("stc 1").back()).containsExactly(1);
    }

    @Test
    void aPageOfAnOlderVersionIsSaidToBeSo() throws IOException {
        Path later = print("more.csv", Offices.register() + Offices.row(1, "2610040004512333"));
        try (Scanned pile = new Scanned()) {
            add(pile, batch, "J-1", "stc");
            add(pile, later, "J-1", "stc");
            pile.save(office.scans().resolve("pile.pdf"));
        }
        Program.Run run = scans();
        assertThat(run.out()).containsOnlyOnce("[paper-outdated]").contains("2026-11-23-week");
        assertThat(signed())
                .contains("J-1/J-1-stc-assignment.pdf", "J-1/J-1-stc-assignment-version-2.pdf");
        assertThat(states("J-1").get("stc 1").replaced()).isTrue();
        assertThat(states("J-1").get("stc 2").step()).isEqualTo(PaperState.Step.BACK);
    }

    @Test
    void aPaperThatWasTakenBackIsOldAlsoWhileTheNewOneIsHeld() throws IOException {
        String used =
                Offices.row(1, "2610040004512333").replace("price,yes,yes,no", "price,no,yes,no");
        Path later = print("more.csv", Offices.register() + used, 10);
        assertThat(Files.readString(later.resolve("index.html"))).contains("Take back only: ");
        assertThat(PageMap.in(later).orElseThrow().of("J-1").orElseThrow().papers())
                .extracting(PageMap.PaperSpan::kind)
                .contains("warranty")
                .doesNotContain("stc");
        try (Scanned pile = new Scanned()) {
            add(pile, batch, "J-1", "stc");
            add(pile, batch, "J-2", "stc");
            pile.save(office.scans().resolve("pile.pdf"));
        }
        assertThat(scans().out())
                .containsOnlyOnce("[paper-outdated]")
                .contains(
                        "STC assignment of job J-1 is of batch 2026-11-23-week, and what it says changed"
                                + " with batch 2026-11-23-more, where the new one is held.");
        // Once the facts are as they were the paper stands.
        print("back.csv", Offices.register(1));
        try (Scanned pile = new Scanned()) {
            add(pile, batch, "J-1", "stc");
            pile.empty();
            pile.save(office.scans().resolve("again.pdf"));
        }
        assertThat(scans().out()).contains("[page-twice]").doesNotContain("[paper-outdated]");
    }

    @Test
    void theSameBytesAreTakenInOnceAndADamagedFileGoesBack() throws IOException {
        try (Scanned pile = new Scanned()) {
            add(pile, batch, "J-2", "warranty");
            pile.save(office.scans().resolve("one.pdf"));
        }
        Files.copy(office.scans().resolve("one.pdf"), office.scans().resolve("two.pdf"));
        Files.writeString(office.scans().resolve("bad.pdf"), "%PDF-1.7 and then nothing");
        Files.writeString(office.scans().resolve("note.docx"), "no picture");
        Program.Run run = watch();
        assertThat(run.out())
                .contains("two.pdf: It was taken in before.")
                .contains("bad.pdf: The file is damaged or locked. See returned/.")
                .contains("note.docx: The file is no PDF and no picture. See returned/.");
        assertThat(office.returned().resolve("2026-11-23-bad/WHAT-TO-DO.txt"))
                .content()
                .contains("Scan the pages again");
        assertThat(pages(office.signed().resolve("J-2/J-2-warranty-registration.pdf"))).isOne();
        assertThat(Office.list(office.filed().resolve("2026/scans"))).hasSize(2);
    }

    @Test
    void whatCameBackIsForgottenWithItsJobAndPrivateUntilThen() throws IOException {
        try (Scanned pile = new Scanned()) {
            pile.page(
                    pack(batch, "J-1"),
                    paper(batch, "J-1", "warranty").first(),
                    List.of(),
                    true,
                    false);
            add(pile, batch, "J-2", "warranty");
            pile.page(pack(batch, "J-2"), 1, List.of(), false, false);
            pile.save(office.scans().resolve("pile.pdf"));
        }
        Rights.keepPrivate(Files.createDirectories(office.signed()));
        scans();
        assertThat(Files.getPosixFilePermissions(office.signed().resolve("to-place/page-1.pdf")))
                .isEqualTo(PosixFilePermissions.fromString("rw-------"));
        Program.Run run =
                Program.run(
                        Instant.parse("2041-01-01T12:00:00Z"),
                        folder,
                        "forget",
                        "J-1",
                        "--office",
                        office.root().toString());
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(run.out())
                .contains("deleted signed/J-1")
                .contains("deleted signed/2026-11-23-pile.html")
                .contains("signed/to-place/page-1.pdf was left as it is")
                .contains("filed/2026/scans/pile.pdf was left as it is");
        assertThat(signed())
                .containsExactly("J-2/J-2-warranty-registration.pdf", "to-place/page-1.pdf");
    }

    @Test
    void aClaimIsReadyToLodgeOnceItsAssignmentIsBackAndNotBefore() throws IOException {
        watch();
        assertThat(Files.readString(office.status())).doesNotContain("ready to lodge");
        try (Scanned pile = new Scanned()) {
            add(pile, batch, "J-1", "stc");
            pile.page(
                    pack(batch, "J-2"),
                    paper(batch, "J-2", "stc").first(),
                    paper(batch, "J-2", "stc").boxes(),
                    true,
                    false);
            pile.save(office.scans().resolve("pile.pdf"));
        }
        watch();
        assertThat(Files.readString(office.status()))
                .contains("Claims ready to lodge: <strong>1</strong>")
                .contains("Job J-2: STC assignment of batch 2026-11-23-week, back in part")
                .doesNotContain("Job J-1: STC");
        String ledger = office.root().resolve("paperbark.db").toString();
        Program.Run owed = Program.run(folder, "owed", "--ledger", ledger, "--as-of", "2027-11-01");
        assertThat(owed.out())
                .containsPattern("J-2-STC .* days left  assignment back in part")
                .doesNotContainPattern("J-1-STC .* assignment");
        laterBatchSaysWhatIsBack();
        // A correction prints a new assignment, and the old one counts no longer.
        print("more.csv", Offices.register() + Offices.row(1, "2610040004512333"));
        assertThat(Files.readString(office.status()))
                .contains("Claims ready to lodge: <strong>0</strong>")
                .contains("Job J-1: STC assignment of batch 2026-11-23-more, not back yet");
    }

    /** The price of job 2 changed, which its warranty registration does not print. */
    private void laterBatchSaysWhatIsBack() throws IOException {
        String again = Offices.register(2).replace("4620.00", "4630.00");
        Path later = print("again.csv", again);
        assertThat(Files.readString(later.resolve("index.html")))
                .contains("Warranty registration of batch 2026-11-23-week (not back yet)");
        try (XSSFWorkbook summary =
                new XSSFWorkbook(later.resolve("summary.xlsx").toFile().getPath())) {
            assertThat(new XSSFExcelExtractor(summary).getText())
                    .contains("Warranty registration: not back yet");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"TAKEN", "SORTED", "STAGED", "COMMITTED", "PLACED", "FILED"})
    @Tag("slow")
    void killedAtAnyStepTheNextStartFinishesThePile(String step) throws Exception {
        try (Scanned pile = new Scanned()) {
            add(pile, batch, "J-1", "warranty");
            pile.page(pack(batch, "J-2"), 1, List.of(), false, false);
            pile.save(office.scans().resolve("pile.pdf"));
        }
        Path said = folder.resolve("said.txt");
        Process process =
                Child.program(
                        List.of("scans", office.root().toString()),
                        said,
                        "paperbark.fault=" + step);
        assertThat(process.waitFor()).as(Files.readString(said)).isEqualTo(HALTED);
        scans();
        assertThat(states("J-1").get("warranty 1").back()).containsExactly(1);
        assertThat(signed())
                .contains("J-1/J-1-warranty-registration.pdf", "to-place/page-1.pdf")
                .hasSize(3);
        assertThat(pages(office.signed().resolve("J-1/J-1-warranty-registration.pdf"))).isOne();
        assertThat(office.filed().resolve("2026/scans/pile.pdf")).exists();
        assertThat(Office.list(office.work()).stream().filter(f -> !Office.isHidden(f))).isEmpty();
        try (Ledger ledger = Ledger.open(office.ledger())) {
            assertThat(ledger.records().withoutFolder()).hasSize(1);
        }
    }
}
