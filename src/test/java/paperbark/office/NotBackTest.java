package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.scan.Scanned;

/** Whoever tells of assignments that are not back tells the same; common practice, no source. */
class NotBackTest {
    private static final Pattern IN_STATUS = Pattern.compile("<li>Job (J-\\d): STC assignment");
    private static final Pattern IN_WEEK =
            Pattern.compile("<strong>(J-\\d)-STC</strong></th><td data-label=\"Paper\">");
    private static final Pattern IN_PAPERS =
            Pattern.compile(
                    "<strong>(J-\\d)</strong></th><td role=\"cell\" data-label=\"Paper\">(?:<a[^>]*>)?STC assignment<");
    private static final Pattern IN_TABLE =
            Pattern.compile("(?m)^(J-\\d),STC assignment,.*to be lodged.*,no,");
    private static final Pattern IN_OWED = Pattern.compile("(J-\\d)-STC .*  assignment ");

    @TempDir private Path folder;

    private Office office;
    private Path batch;

    @BeforeEach
    void printTwoJobs() throws IOException {
        office = Offices.make(folder.resolve("office"));
        Files.writeString(office.intake().resolve("week.csv"), Offices.register(1, 2));
        office("watch", ".", "--once", "--quiet-for", "0");
        batch = office.packs().resolve("2026-11-23-week");
    }

    private Program.Run office(String... words) {
        Program.Run run = Program.run(office.root(), words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10);
        return run;
    }

    /** Jobs whose assignment is awaited, as each of those says that tells it. */
    private static List<String> awaited(Pattern pattern, String text) {
        return pattern.matcher(text).results().map(found -> found.group(1)).sorted().toList();
    }

    private void allAwait(String... jobs) throws IOException {
        office("watch", ".", "--once", "--quiet-for", "0");
        office("week", ".");
        String week = Files.readString(office.week(".html"));
        String owed = office("owed", "--as-of", "2027-11-01").out();
        assertThat(awaited(IN_STATUS, Files.readString(office.status()))).containsExactly(jobs);
        assertThat(awaited(IN_WEEK, week)).containsExactly(jobs);
        String papers = Files.readString(office.papersPage());
        String first = papers.substring(0, papers.indexOf("<h2 id=\"ready\""));
        assertThat(awaited(IN_PAPERS, first)).containsExactly(jobs);
        String table = Files.readString(office.root().resolve(PaperList.TABLE));
        assertThat(awaited(IN_TABLE, table)).containsExactly(jobs);
        assertThat(awaited(IN_OWED, owed)).containsExactly(jobs);
    }

    @Test
    void statusPageWeekAndOwedTellTheSameAssignmentsThatAreNotBack() throws IOException {
        office("week", ".");
        assertThat(Files.readString(office.week(".html"))).doesNotContain("What is not back");
        assertThat(Files.readString(office.papersPage()))
                .contains("No scanned papers were taken in yet")
                .doesNotContain("J-1");
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, batch, "J-1", "warranty");
            pile.page(
                    ScannedOffice.pack(batch, "J-2"),
                    ScannedOffice.paper(batch, "J-2", "stc").first(),
                    ScannedOffice.paper(batch, "J-2", "stc").boxes(),
                    true,
                    false);
            pile.save(office.scans().resolve("pile.pdf"));
        }
        allAwait("J-1", "J-2");
        assertThat(Files.readString(office.week(".html")))
                .contains("What is not back", "not back yet", "back in part", "16 Nov 2027");
        try (PDDocument sheet = Loader.loadPDF(office.week(".pdf").toFile())) {
            assertThat(new PDFTextStripper().getText(sheet).replaceAll("\\s+", " "))
                    .contains("What is not back", "J-2-STC STC assignment back in part");
        }
        // RFC 5322, 2.2.3: a long subject is folded.
        assertThat(Files.readString(office.week(".eml")).replaceAll("\\r\\n ", " "))
                .contains("2 assignments not back");

        String said = office("lodged", "J-1").out().replaceAll("(?s).*(advice-\\d+).*", "$1");
        allAwait("J-2");
        office("unsay", said);
        allAwait("J-1", "J-2");
        Files.writeString(
                office.root().resolve("failed.csv"),
                "Claim reference,Paid on,Status\nJ-1-STC,23/11/2026,lodged\nJ-2-STC,23/11/2026,failed\n");
        office("settle", "failed.csv");
        allAwait("J-2");
        office("withdraw", "J-2", "--because", "called off");
        allAwait();
        assertThat(Files.readString(office.week(".html")))
                .contains("Every assignment of a claim to be lodged is back.");
    }

    @Test
    void anAssignmentThatWasTakenBackIsNotReadyWhileTheNewOneIsHeld() throws IOException {
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, batch, "J-1", "stc");
            ScannedOffice.add(pile, batch, "J-2", "stc");
            pile.save(office.scans().resolve("pile.pdf"));
        }
        allAwait();
        assertThat(Files.readString(office.status()))
                .contains("ready to lodge: <strong>2</strong>");
        String used =
                Offices.row(1, "2610040004512333").replace("price,yes,yes,no", "price,no,yes,no");
        Files.writeString(office.intake().resolve("more.csv"), Offices.register() + used);
        office("watch", ".", "--once", "--quiet-for", "0");
        assertThat(Files.readString(office.papersPage()))
                .contains("taken back, and the new one is held");
        assertThat(Files.readString(office.status()))
                .contains("ready to lodge: <strong>1</strong>");
        // Once the facts are as they were the paper counts again.
        Files.writeString(office.intake().resolve("back.csv"), Offices.register(1));
        allAwait();
    }
}
