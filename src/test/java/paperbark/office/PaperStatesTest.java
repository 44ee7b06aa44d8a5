package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import org.apache.poi.xssf.extractor.XSSFExcelExtractor;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.PageMap;
import paperbark.cli.Program;
import paperbark.disk.Rights;
import paperbark.ledger.PaperState;
import paperbark.scan.Scanned;

/** What is told of papers once pages of them came back; common practice, no source. */
class PaperStatesTest {
    @TempDir private Path folder;

    private ScannedOffice at;

    @BeforeEach
    void printTwoJobs() throws IOException {
        at = new ScannedOffice(folder);
    }

    @Test
    void aPageOfAnOlderVersionIsSaidToBeSo() throws IOException {
        Path later = at.print("more.csv", Offices.register() + Offices.row(1, "2610040004512333"));
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-1", "stc");
            ScannedOffice.add(pile, later, "J-1", "stc");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        Program.Run run = at.scans();
        assertThat(run.out()).containsOnlyOnce("[paper-outdated]").contains("2026-11-23-week");
        assertThat(at.signed())
                .contains("J-1/J-1-stc-assignment.pdf", "J-1/J-1-stc-assignment-version-2.pdf");
        assertThat(at.states("J-1").get("stc 1").replaced()).isTrue();
        assertThat(at.states("J-1").get("stc 2").step()).isEqualTo(PaperState.Step.BACK);
    }

    @Test
    void aPaperThatWasTakenBackIsOldAlsoWhileTheNewOneIsHeld() throws IOException {
        String used =
                Offices.row(1, "2610040004512333").replace("price,yes,yes,no", "price,no,yes,no");
        Path later = at.print("more.csv", Offices.register() + used, 10);
        assertThat(Files.readString(later.resolve("index.html"))).contains("Take back only: ");
        assertThat(PageMap.in(later).orElseThrow().of("J-1").orElseThrow().papers())
                .extracting(PageMap.PaperSpan::kind)
                .contains("warranty")
                .doesNotContain("stc");
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-1", "stc");
            ScannedOffice.add(pile, at.batch, "J-2", "stc");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        assertThat(at.scans().out())
                .containsOnlyOnce("[paper-outdated]")
                .contains(
                        "STC assignment of job J-1 is of batch 2026-11-23-week, and what it says changed"
                                + " with batch 2026-11-23-more, where the new one is held.");
        // Once the facts are as they were the paper stands.
        at.print("back.csv", Offices.register(1));
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-1", "stc");
            pile.empty();
            pile.save(at.office.scans().resolve("again.pdf"));
        }
        assertThat(at.scans().out()).contains("[page-twice]").doesNotContain("[paper-outdated]");
    }

    @Test
    void whatCameBackIsForgottenWithItsJobAndPrivateUntilThen() throws IOException {
        try (Scanned pile = new Scanned()) {
            pile.page(
                    ScannedOffice.pack(at.batch, "J-1"),
                    ScannedOffice.paper(at.batch, "J-1", "warranty").first(),
                    List.of(),
                    true,
                    false);
            ScannedOffice.add(pile, at.batch, "J-2", "warranty");
            pile.page(ScannedOffice.pack(at.batch, "J-2"), 1, List.of(), false, false);
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        Rights.keepPrivate(Files.createDirectories(at.office.signed()));
        at.scans();
        assertThat(Files.getPosixFilePermissions(at.office.signed().resolve("to-place/page-1.pdf")))
                .isEqualTo(PosixFilePermissions.fromString("rw-------"));
        Program.Run run =
                Program.run(
                        Instant.parse("2041-01-01T12:00:00Z"),
                        at.folder,
                        "forget",
                        "J-1",
                        "--office",
                        at.office.root().toString());
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(run.out())
                .contains("deleted signed/J-1")
                .contains("deleted signed/2026-11-23-pile.html")
                .contains("signed/to-place/page-1.pdf was left as it is")
                .contains("filed/2026/scans/pile.pdf was left as it is");
        assertThat(at.signed())
                .containsExactly("J-2/J-2-warranty-registration.pdf", "to-place/page-1.pdf");
        assertThat(Program.run(folder, "week", at.office.root().toString()).exitCode()).isZero();
        assertThat(Files.readString(at.office.papersPage())).contains("J-2").doesNotContain("J-1");
    }

    @Test
    void aClaimIsReadyToLodgeOnceItsAssignmentIsBackAndNotBefore() throws IOException {
        at.watch();
        assertThat(Files.readString(at.office.status())).doesNotContain("ready to lodge");
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-1", "stc");
            pile.page(
                    ScannedOffice.pack(at.batch, "J-2"),
                    ScannedOffice.paper(at.batch, "J-2", "stc").first(),
                    ScannedOffice.paper(at.batch, "J-2", "stc").boxes(),
                    true,
                    false);
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        at.watch();
        assertThat(Files.readString(at.office.status()))
                .contains("Claims ready to lodge: <strong>1</strong>")
                .contains("Job J-2: STC assignment of batch 2026-11-23-week, back in part")
                .doesNotContain("Job J-1: STC");
        String ledger = at.office.root().resolve("paperbark.db").toString();
        Program.Run owed =
                Program.run(at.folder, "owed", "--ledger", ledger, "--as-of", "2027-11-01");
        assertThat(owed.out())
                .containsPattern("J-2-STC .* days left  assignment back in part")
                .doesNotContainPattern("J-1-STC .* assignment");
        laterBatchSaysWhatIsBack();
        // A correction prints a new assignment, and the old one counts no longer.
        at.print("more.csv", Offices.register() + Offices.row(1, "2610040004512333"));
        assertThat(Files.readString(at.office.status()))
                .contains("Claims ready to lodge: <strong>0</strong>")
                .contains("Job J-1: STC assignment of batch 2026-11-23-more, not back yet");
    }

    /** The price of job 2 changed, which its warranty registration does not print. */
    private void laterBatchSaysWhatIsBack() throws IOException {
        String again = Offices.register(2).replace("4620.00", "4630.00");
        Path later = at.print("again.csv", again);
        assertThat(Files.readString(later.resolve("index.html")))
                .contains("Warranty registration of batch 2026-11-23-week (not back yet)");
        try (XSSFWorkbook summary =
                new XSSFWorkbook(later.resolve("summary.xlsx").toFile().getPath())) {
            assertThat(new XSSFExcelExtractor(summary).getText())
                    .contains("Warranty registration: not back yet");
        }
    }

    @Test
    void whatWasPrintedLongBeforePapersWereScannedIsAwaitedOnlyWhereAClaimHangsOnIt()
            throws IOException {
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-1", "warranty");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        Instant later = Instant.parse("2027-01-23T02:00:00Z");
        assertThat(Program.run(later, folder, "scans", at.office.root().toString()).exitCode())
                .isZero();
        String table = Files.readString(at.office.root().resolve(PaperList.TABLE));
        assertThat(table.lines().skip(1).map(l -> l.replaceAll(",1,2026-11-23-week,.*", "")))
                .startsWith("J-1,STC assignment", "J-2,STC assignment");
        String page = Files.readString(at.office.papersPage());
        assertThat(page).contains("<h2 id=\"awaited\">Not back: 2</h2>");
    }

    @Test
    void whatWasPrintedMoreThanAYearAgoIsListedOnlyWhileItsClaimIsToBeLodged() throws IOException {
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, at.batch, "J-1", "warranty");
            pile.save(at.office.scans().resolve("pile.pdf"));
        }
        run("2026-12-01", "scans", at.office.root().toString());
        run("2027-11-23", "week", at.office.root().toString());
        assertThat(listed()).contains("J-1,Warranty registration", "J-2,STC assignment");
        run("2027-11-24", "week", at.office.root().toString());
        assertThat(listed()).containsExactly("J-1,STC assignment", "J-2,STC assignment");
        run("2027-11-24", "lodged", "--ledger", at.office.root() + "/paperbark.db", "J-2");
        run("2027-11-24", "week", at.office.root().toString());
        assertThat(listed()).containsExactly("J-1,STC assignment");
    }

    private void run(String day, String... words) {
        Program.Run run = Program.run(Instant.parse(day + "T02:00:00Z"), folder, words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
    }

    private List<String> listed() throws IOException {
        return Files.readAllLines(at.office.root().resolve(PaperList.TABLE)).stream()
                .skip(1)
                .map(line -> line.replaceAll(",1,2026-11-23-week,.*", ""))
                .toList();
    }
}
