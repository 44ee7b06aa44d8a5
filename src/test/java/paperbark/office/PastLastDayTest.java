package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.ledger.Lodging;
import paperbark.scan.Scanned;

/**
 * A claim that can be lodged no longer is ready nowhere, and whoever tells of claims to be lodged
 * tells what became of it. Status page, page of the week, both lists of papers, drafts and {@code
 * owed} say the same.
 */
class PastLastDayTest {
    private static final String STC = "SB-1101-STC";
    private static final String VEEC = "SB-1101-VEEC";
    private static final LocalDate MADE = LocalDate.of(2026, 11, 23);

    // The activity's own rule ends it before the twelve months of the STCs are over.
    private static final LocalDate LAST_VEEC = LocalDate.of(2027, 6, 30);
    private static final LocalDate LAST_STC = LocalDate.of(2027, 11, 16);

    @TempDir private static Path shared;
    @TempDir private Path folder;

    private Office office;

    /** One job of the sample week, with a claim of each scheme, whose assignments are back. */
    @BeforeAll
    static void papersComeBack() throws IOException {
        Office office = Offices.make(shared.resolve("office"));
        drop(office, MADE, register());
        Path batch = office.packs().resolve(MADE + "-week");
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, batch, "SB-1101", "stc");
            ScannedOffice.add(pile, batch, "SB-1101", "veec");
            pile.save(office.scans().resolve("pile.pdf"));
        }
        run(office, MADE, "watch", ".", "--once", "--quiet-for", "0");
    }

    @BeforeEach
    void takeACopy() throws IOException {
        Offices.copy(shared.resolve("office"), folder.resolve("office"));
        office = Office.in(folder.resolve("office"));
    }

    private static String register() throws IOException {
        List<String> lines =
                Files.readAllLines(Path.of("input-samples/week-47.csv"), StandardCharsets.UTF_8);
        return String.join("\n", lines.subList(0, 2)) + "\n";
    }

    private static Program.Run run(Office office, LocalDate day, String... words) {
        Program.Run run = Program.run(Instant.parse(day + "T02:00:00Z"), office.root(), words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10);
        return run;
    }

    private static void drop(Office office, LocalDate day, String register) throws IOException {
        Files.writeString(office.intake().resolve("week.csv"), register);
        run(office, day, "watch", ".", "--once", "--quiet-for", "0");
    }

    private static List<String> found(String text, String pattern) {
        return Pattern.compile(pattern)
                .matcher(text)
                .results()
                .map(MatchResult::group)
                .distinct()
                .sorted()
                .toList();
    }

    /** What stands between two headings of a page. */
    private static String part(String page, String from) {
        int start = page.indexOf("<h2 id=\"" + from + "\"");
        return start < 0 ? "" : page.substring(start, page.indexOf("</section>", start));
    }

    /** The names of drafts to buyers. */
    private List<String> bundles() throws IOException {
        try (Stream<Path> all = Files.walk(office.send())) {
            return all.map(f -> f.getFileName().toString())
                    .filter(name -> name.matches("SB-1101-(STC|VEEC)\\.eml"))
                    .map(name -> name.replace(".eml", ""))
                    .sorted()
                    .toList();
        }
    }

    private List<String> inTable(String ready, String claim) throws IOException {
        List<String> claims = new ArrayList<>();
        for (String line : Files.readAllLines(office.root().resolve(PaperList.TABLE))) {
            if (line.contains("," + ready + ",") && line.contains(claim)) {
                claims.addAll(found(line, "SB-1101-(STC|VEEC)"));
            }
        }
        return claims.stream().sorted().toList();
    }

    /** Whoever tells it tells the same. */
    private void assertStanding(LocalDate day, List<String> ready, List<String> tooLate)
            throws IOException {
        run(office, day, "watch", ".", "--once", "--quiet-for", "0");
        run(office, day, "week", ".");
        String status = Files.readString(office.status());
        assertThat(status).contains("Claims ready to lodge: <strong>" + ready.size() + "</strong>");
        assertThat(found(status, "\\d claims? (is|are) past"))
                .hasSize(tooLate.isEmpty() ? 0 : 1)
                .allMatch(said -> said.startsWith(tooLate.size() + " "));

        String week = Files.readString(office.week(".html"));
        assertThat(week).contains("with their assignment back: " + ready.size() + ".");
        assertThat(found(part(week, "too-late"), "SB-1101-(STC|VEEC)")).isEqualTo(tooLate);
        assertThat(part(week, "lodge") + part(week, "soon") + part(week, "failed"))
                .doesNotContain(" ago")
                .matches(still -> tooLate.stream().noneMatch(still::contains));

        String papers = Files.readString(office.papersPage());
        List<String> names = ready.stream().map(c -> c.replace("SB-1101-", "")).toList();
        assertThat(found(part(papers, "ready"), "(STC|VEEC)(?= assignment)")).isEqualTo(names);
        names = tooLate.stream().map(c -> c.replace("SB-1101-", "")).toList();
        assertThat(found(part(papers, "too-late"), "(STC|VEEC)(?= assignment)")).isEqualTo(names);
        assertThat(inTable("yes", "to be lodged")).isEqualTo(ready);
        assertThat(inTable("no", "past its last day")).isEqualTo(tooLate);

        String page = Files.readString(office.send().resolve(SendDesk.PAGE));
        // What is awaited has its bundle too, which says that it waits.
        assertThat(bundles())
                .containsAll(ready)
                .matches(drafts -> drafts.stream().noneMatch(tooLate::contains));
        assertThat(page.contains("the last day is over")).isEqualTo(!tooLate.isEmpty());

        String owed = run(office, day, "owed").out();
        int late = owed.indexOf("Past their last day");
        assertThat(found(late < 0 ? "" : owed.substring(late), "SB-1101-(STC|VEEC)"))
                .isEqualTo(tooLate);
        assertThat(owed.contains(Lodging.WHEN_TOO_LATE)).isEqualTo(!tooLate.isEmpty());
    }

    @Test
    void onItsLastDayAClaimIsReadyAndOnTheNextItIsPastIt() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            assertThat(ledger.claims(MADE))
                    .extracting(ClaimState::reference, c -> c.lodgeBy().orElseThrow())
                    .containsExactlyInAnyOrder(tuple(STC, LAST_STC), tuple(VEEC, LAST_VEEC));
        }
        assertStanding(LAST_VEEC, List.of(STC, VEEC), List.of());
        assertStanding(LAST_VEEC.plusDays(1), List.of(STC), List.of(VEEC));
        assertStanding(LAST_STC, List.of(STC), List.of(VEEC));
        assertStanding(LAST_STC.plusDays(1), List.of(), List.of(STC, VEEC));
    }

    @Test
    void whatWasLodgedInTimeOrCalledOffIsNotPastIt() throws IOException {
        LocalDate after = LAST_STC.plusDays(1);
        run(office, after, "lodged", STC, "--on", LAST_STC.toString());
        assertStanding(after, List.of(), List.of(VEEC));
        run(office, after, "withdraw", "SB-1101", "--because", "called off");
        assertStanding(after, List.of(), List.of());
    }

    @Test
    void whatFailedCanBeLodgedAgainUntilItsLastDay() throws IOException {
        Files.writeString(
                office.root().resolve("failed.csv"),
                "Claim reference,Paid on,Status\n" + STC + ",01/07/2027,failed\n");
        run(office, LAST_VEEC.plusDays(1), "settle", "failed.csv");
        assertStanding(LAST_STC, List.of(STC), List.of(VEEC));
        assertStanding(LAST_STC.plusDays(1), List.of(), List.of(STC, VEEC));
    }

    /** Of a claim that is corrected in time the new assignment is awaited, and then is too late. */
    @Test
    void whatIsCorrectedIsAwaitedUntilItsLastDay() throws IOException {
        LocalDate changed = MADE.plusDays(7);
        drop(office, changed, register().replace("2610040004512037", "2610040004512099"));
        assertStanding(changed, List.of(), List.of());
        assertThat(part(Files.readString(office.papersPage()), "awaited")).contains("STC", "VEEC");
        assertStanding(LAST_STC.plusDays(1), List.of(), List.of(STC, VEEC));
    }

    /** Its register brings the stop that the claim is closed, which takes the claim back. */
    @Test
    void whatIsHeldSinceIsClaimedNoLonger() throws IOException {
        LocalDate after = LAST_STC.plusDays(1);
        assertStanding(after, List.of(), List.of(STC, VEEC));
        drop(office, after, register().replace("Ada Amberwood", "Ada May Amberwood"));
        assertStanding(after, List.of(), List.of());
    }

    /** The pages say to drop it again, which is mostly the very file that was dropped before. */
    @Test
    void itsRegisterTakesItBackThoughNothingInItChanged() throws IOException {
        LocalDate after = LAST_VEEC.plusDays(1);
        tellOfOneThatIsLodged(MADE);
        assertStanding(after, List.of(STC), List.of(VEEC));
        drop(office, after, register());
        assertStanding(after, List.of(STC), List.of());
        drop(office, LAST_STC.plusDays(1), register() + "\n");
        assertStanding(LAST_STC.plusDays(1), List.of(), List.of());
    }

    /** Papers, calendar and ledger have the same last day. */
    @Test
    void aCorrectedDayOfInstallationMovesTheLastDayEverywhere() throws IOException {
        drop(office, MADE.plusDays(1), register().replace("16/11/2026", "17/11/2026"));
        try (Ledger ledger = Ledger.open(office.ledger())) {
            assertThat(ledger.claims(MADE.plusDays(1)))
                    .extracting(ClaimState::reference, c -> c.lodgeBy().orElseThrow())
                    .contains(tuple(STC, LAST_STC.plusDays(1)));
        }
        assertStanding(LAST_STC.plusDays(1), List.of(), List.of(VEEC));
    }

    /** Of a claim the office must tell that it is lodged, or none is known to be. */
    private void tellOfOneThatIsLodged(LocalDate day) throws IOException {
        List<String> lines =
                Files.readAllLines(Path.of("input-samples/week-47.csv"), StandardCharsets.UTF_8);
        drop(office, MADE, lines.get(0) + "\n" + lines.get(2) + "\n");
        run(office, day, "lodged", "SB-1102");
    }

    /** What was made before may be lodged without a word, and is left as it is. */
    @Test
    void whatWasClaimedBeforeTheOfficeBeganToTellDoesNotFallAway() throws IOException {
        tellOfOneThatIsLodged(MADE.plusDays(1));
        LocalDate after = LAST_VEEC.plusDays(1);
        assertThat(dropAgain(after)).contains("Nothing in this register is new");
        assertStanding(after, List.of(STC), List.of(VEEC));
    }

    private String dropAgain(LocalDate day) throws IOException {
        Files.writeString(office.intake().resolve("week.csv"), register() + "\n");
        return Program.run(
                        Instant.parse(day + "T02:00:00Z"),
                        office.root(),
                        "watch",
                        ".",
                        "--once",
                        "--quiet-for",
                        "0")
                .out();
    }

    /** A list that runs for years would take back every job of an office that tells nothing. */
    @Test
    void whereNothingIsToldOfClaimsARegisterTakesNothingBack() throws IOException {
        LocalDate after = LAST_STC.plusDays(1);
        assertThat(dropAgain(after)).contains("Nothing in this register is new");
        assertStanding(after, List.of(), List.of(STC, VEEC));
    }

    @Test
    void ofItsRegisterNoOtherJobIsTakenInAgain() throws IOException {
        List<String> lines =
                Files.readAllLines(Path.of("input-samples/week-47.csv"), StandardCharsets.UTF_8);
        String both = String.join("\n", lines.subList(0, 3)) + "\n";
        drop(office, MADE, both);
        run(office, MADE, "lodged", "SB-1102");
        LocalDate after = LAST_VEEC.plusDays(1);
        drop(office, after, both);
        assertThat(office.packs().resolve(after + "-week/packs/SB-1101.pdf")).exists();
        assertThat(office.packs().resolve(after + "-week/packs/SB-1102.pdf")).doesNotExist();
    }

    /** What failed is owed by nobody, and its register takes it back as it does any other. */
    @Test
    void whatFailedIsClaimedNoLongerEither() throws IOException {
        Files.writeString(
                office.root().resolve("failed.csv"),
                "Claim reference,Paid on,Status\n" + STC + ",01/07/2027,failed\n");
        run(office, LAST_VEEC.plusDays(1), "settle", "failed.csv");
        LocalDate after = LAST_STC.plusDays(1);
        assertStanding(after, List.of(), List.of(STC, VEEC));
        drop(office, after, register().replace("Ada Amberwood", "Ada May Amberwood"));
        assertStanding(after, List.of(), List.of());
    }
}
