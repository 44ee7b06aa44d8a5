package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.ledger.Ledger;
import paperbark.ledger.ScanBook;
import paperbark.ledger.ScanEntry;
import paperbark.outside.Outside;

/** The status page says what happens now, and its reader decides whether it shows itself anew. */
class StatusPageTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 23);

    @TempDir private Path folder;

    private Instant now = Instant.parse("2026-11-23T01:00:00Z");
    private final List<String> seen = new ArrayList<>();
    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
    }

    private Attendant.World world() {
        return new Attendant.World(
                () -> {
                    seen.add(page());
                    return now;
                },
                () -> TODAY,
                Duration.ofSeconds(10),
                30,
                "test",
                line -> {});
    }

    private String page() {
        try {
            return Files.exists(office.status()) ? Files.readString(office.status()) : "";
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static StatusPage.State workingOn(String register) {
        return new StatusPage.State(
                Map.of(), Optional.of(Path.of(register)), List.of(), List.of(), true, true);
    }

    @Test
    void whileARegisterIsWorkedOnItSaysHowFarItIs() throws Exception {
        Path register =
                Files.writeString(
                        office.intake().resolve("week.csv"), Offices.register(1, 2, 3, 4));
        Files.setLastModifiedTime(register, FileTime.from(now.minusSeconds(60)));
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant = new Attendant(lock, world());
            attendant.round();
            now = now.plusSeconds(11);
            attendant.round();
        }

        assertThat(seen)
                .anyMatch(p -> p.contains("Working on <strong>week.csv</strong>: 1 of 4 packs."));
        assertThat(page())
                .contains("Nothing is being worked on.", "packs/2026-11-23-week/index.html")
                .doesNotContain("of 4 packs");
    }

    @Test
    void aRegisterThatWentBackWaitsUntilItsNameHasABatch() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant = new Attendant(lock, world());
            drop(attendant, "week.csv", "Hello,World\n1,2\n");
            drop(attendant, "other.csv", "Hello,World\n1,2\n");
            assertThat(page()).contains("2026-11-23-week</a>: could not be used");

            drop(attendant, "week.csv", Offices.register(1, 2));
            assertThat(page())
                    .contains("packs/2026-11-23-week/index.html", "2026-11-23-other</a>: could not")
                    .doesNotContain("2026-11-23-week</a>: could not be used");
            assertThat(office.returned().resolve("2026-11-23-week/WHAT-TO-DO.txt")).exists();

            drop(attendant, "week.csv", "Hello,World\n1,2\n");
            assertThat(page()).contains("2026-11-23-week-2</a>: could not be used");
        }
    }

    private void drop(Attendant attendant, String name, String content) throws Exception {
        Path register = Files.writeString(office.intake().resolve(name), content);
        Files.setLastModifiedTime(register, FileTime.from(now.minusSeconds(60)));
        attendant.round();
        now = now.plusSeconds(11);
        attendant.round();
    }

    @Test
    void itIsWrittenAnewForProgressOnceInThreeSecondsAtMost() throws IOException {
        StatusPage status = new StatusPage(office, world());
        status.write(workingOn("week.csv"));
        status.progress("packs", 1, 40);
        assertThat(page()).contains("1 of 40 packs");

        now = now.plusSeconds(1);
        status.progress("packs", 2, 40);
        assertThat(page()).contains("1 of 40 packs");

        now = now.plusSeconds(2);
        status.progress("packs", 3, 40);
        assertThat(page()).contains("3 of 40 packs");
    }

    @Test
    void progressOfNothingShowsNothing() throws IOException {
        StatusPage status = new StatusPage(office, world());
        status.progress("packs", 1, 40);
        assertThat(office.status()).doesNotExist();
    }

    @Test
    void whoStopsAttendingSaysSo() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant = new Attendant(lock, world());
            attendant.round();
            assertThat(page()).doesNotContain("Nobody attends");
            attendant.leave();
        }
        assertThat(page())
                .contains("Nobody attends this folder.")
                .doesNotContain("Nothing is being worked on");
    }

    @Test
    void theManualIsLinkedWhereItLies() throws IOException {
        StatusPage status = new StatusPage(office, world());
        status.write(workingOn("week.csv"));
        assertThat(page()).doesNotContain("manual/");

        Files.createDirectory(office.root().resolve("manual"));
        Files.writeString(office.root().resolve("manual/index.html"), "<title>Manual</title>");
        status.write(workingOn("week.csv"));
        assertThat(page()).contains("<a href=\"manual/index.html\">");
    }

    @Test
    void whatIsReadyToLodgeIsAskedAnewAfterEachEntryAndWhatIsToPlaceAtEachLook()
            throws IOException {
        Path register = Files.writeString(folder.resolve("week.csv"), Offices.register(1, 2));
        run(
                "prepare",
                register.toString(),
                "--tables",
                "tables",
                "--ledger",
                "paperbark.db",
                "--out",
                "packs");
        StatusPage status = new StatusPage(office, world());
        status.write(workingOn("week.csv"));
        assertThat(page()).doesNotContain("ready to lodge");

        ScanEntry.Page back = new ScanEntry.Page(1, "J-1", 1, "stc", 1, 1, 0);
        try (Ledger ledger = Ledger.open(office.ledger())) {
            new ScanBook(ledger)
                    .enter(new ScanEntry("pile.pdf", "1", List.of(back), TODAY, now, "test"));
        }
        status.write(workingOn("week.csv"));
        assertThat(page())
                .contains("Claims ready to lodge: <strong>1</strong>")
                .contains("Not ready: <strong>1</strong>", "Job J-2: STC assignment");

        run("lodged", "J-2");
        Files.createDirectories(office.toPlace());
        Files.writeString(office.toPlace().resolve("page-1.pdf"), "");
        status.write(workingOn("week.csv"));
        assertThat(page())
                .contains("Not ready: <strong>0</strong>", "1 scanned page in")
                .doesNotContain("Job J-2: STC assignment");
        Files.delete(office.toPlace().resolve("page-1.pdf"));
        status.write(workingOn("week.csv"));
        assertThat(page()).doesNotContain("scanned page");
    }

    private void run(String... words) {
        Program.Run run = Program.run(office.root(), words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
    }

    @Test
    void theWeekAndTheCalendarAreLinkedOnceTheyAreThere() throws IOException {
        StatusPage status = new StatusPage(office, world());
        status.write(workingOn("week.csv"));
        assertThat(page()).doesNotContain("week.html", "calendar.ics", "See also");

        Files.writeString(office.calendar(), "BEGIN:VCALENDAR");
        status.write(workingOn("week.csv"));
        assertThat(page()).contains("<a href=\"calendar.ics\">").doesNotContain("week.html");

        Files.writeString(office.week(".html"), "<title>Week</title>");
        status.write(workingOn("week.csv"));
        assertThat(page())
                .contains("<a href=\"week.html\">the week</a>, <a href=\"calendar.ics\">");
    }

    @Test
    void whatWentBackIsListedTheNewestFirstAndWhatIsInTheMakingIsNot() throws IOException {
        for (String name : List.of("2026-11-20-old", "2026-11-23-new", ".2026-11-23-made")) {
            Files.createDirectories(office.returned().resolve(name));
        }
        Files.writeString(office.returned().resolve("2026-11-22-note.txt"), "x");
        new StatusPage(office, world()).write(workingOn("week.csv"));
        assertThat(page()).doesNotContain("2026-11-23-made", "2026-11-22-note");
        assertThat(page().indexOf("2026-11-23-new")).isPositive();
        assertThat(page().indexOf("2026-11-20-old")).isGreaterThan(page().indexOf("23-new"));
    }

    @Test
    void theLastSealIsShownUnlessTheLedgerCannotBeAsked() throws IOException {
        String seal;
        try (Ledger ledger = Ledger.open(office.ledger())) {
            seal = ledger.records().lastSeal();
        }
        new StatusPage(office, world()).write(workingOn("week.csv"));
        assertThat(page()).contains(seal);
        Files.delete(office.ledgerFile());
        new StatusPage(office, world())
                .write(
                        new StatusPage.State(
                                Map.of(), Optional.empty(), List.of(), List.of(), false, true));
        assertThat(page()).doesNotContain("entry 0, seal");
    }

    // WCAG 2.1, success criterion 2.2.1: a reader can turn a time limit off before meeting it.
    @Test
    void nothingIsShownAnewButByTheOneScriptThatThePageAllows() throws Exception {
        new StatusPage(office, world()).write(workingOn("week.csv"));

        assertThat(page()).doesNotContainIgnoringCase("http-equiv=\"refresh\"");
        Matcher script = Pattern.compile("<script>(.*?)</script>", Pattern.DOTALL).matcher(page());
        assertThat(script.find()).isTrue();
        byte[] hash =
                MessageDigest.getInstance("SHA-256")
                        .digest(script.group(1).getBytes(StandardCharsets.UTF_8));
        assertThat(page())
                .contains("script-src 'sha256-" + Base64.getEncoder().encodeToString(hash) + "'");
        assertThat(script.find()).as("a second script").isFalse();
    }

    @Test
    @Tag("outside")
    void inABrowserTheBoxIsThereAndStaysAsItWasSet() throws IOException {
        new StatusPage(office, world()).write(workingOn("week.csv"));

        String address = office.status().toUri().toString();
        assertThat(inChromium(address)).containsPattern("id=\"refreshing\" data-refresh=\"yes\">");
        assertThat(inChromium(address + "#still"))
                .containsPattern("id=\"refreshing\" data-refresh=\"no\">");
    }

    private String inChromium(String address) {
        return Outside.run(
                        folder,
                        "chromium",
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--user-data-dir=" + folder.resolve("chromium"),
                        "--dump-dom",
                        address)
                .out();
    }
}
