package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.PageMap;
import paperbark.batch.SampleWeek;
import paperbark.cli.Program;
import paperbark.scan.Scanned;

/**
 * Three jobs of the sample week from the register's drop to the money's coming, by the files and
 * commands that an office uses. At each step whatever tells of a claim must tell the same.
 */
class DropToPaidTest {
    private static final String MONDAY = "2026-11-23";
    private static final String TUESDAY = "2026-11-24";

    @TempDir private Path folder;

    private Office office;
    private Path batch;

    @BeforeEach
    void theRegisterIsDropped() throws IOException {
        run(MONDAY, "setup", "office", "--sample");
        folder = folder.resolve("office");
        office = Office.in(folder);
        // The third is held: its model is not in the products table.
        Files.writeString(
                office.intake().resolve("week.csv"),
                SampleWeek.only("SB-1101", "SB-1102", "SB-1106"));
        watch(MONDAY);
        batch = office.packs().resolve(MONDAY + "-week");
    }

    private Program.Run run(String day, String... words) {
        Program.Run run = Program.run(Instant.parse(day + "T02:00:00Z"), folder, words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10);
        return run;
    }

    private Program.Run watch(String day) {
        return run(day, "watch", ".", "--once", "--quiet-for", "0");
    }

    /** Each job's last day and whether it still counts. */
    private Map<String, String> lastDays() throws IOException, ParserException {
        Map<String, String> days = new TreeMap<>();
        try (var in = Files.newInputStream(folder.resolve("calendar.ics"))) {
            for (VEvent event : new CalendarBuilder().build(in).<VEvent>getComponents("VEVENT")) {
                String title = event.getSummary().getValue();
                if (title.startsWith("Last day to create ")) {
                    days.put(
                            title.replace("Last day to create ", ""), event.getStatus().getValue());
                }
            }
        }
        return days;
    }

    private String week(String day) throws IOException {
        run(day, "week", ".");
        return Files.readString(office.week(".html"))
                .replaceAll("(?s)<style.*?</style>|<[^>]*>", " ")
                .replaceAll("\\s+", " ");
    }

    @Test
    void fromDropToPaid() throws Exception {
        assertThat(run(MONDAY, "owed").out())
                .containsPattern("Kestrel Certificates +\\$965.30 ")
                .containsPattern("Pipit and Wren +\\$32.05 ")
                .containsPattern("Total +\\$997.35 ")
                .doesNotContain("SB-1106");
        assertThat(lastDays())
                .hasSize(6)
                .containsKeys("18 STCs: SB-1102", "STCs: SB-1106, held")
                .doesNotContainValue("CANCELLED");

        theSignedPapersComeBack();
        theBundlesWaitForWhatIsNotSigned();
        theClaimIsLodged();
        theMoneyComes();
    }

    private void theSignedPapersComeBack() throws Exception {
        PageMap.PaperSpan whole = ScannedOffice.paper(batch, "SB-1102", "stc");
        PageMap.PaperSpan half = ScannedOffice.paper(batch, "SB-1101", "stc");
        Path pack = ScannedOffice.pack(batch, "SB-1102");
        try (Scanned pile = new Scanned()) {
            pile.page(pack, whole.first() + 1, whole.boxes(), true, true);
            pile.empty();
            pile.page(ScannedOffice.pack(batch, "SB-1101"), half.first(), List.of(), true, false);
            pile.page(pack, whole.first(), whole.boxes(), true, false);
            pile.page(pack, whole.first(), whole.boxes(), true, false);
            ScannedOffice.add(pile, batch, "SB-1102", "veec");
            pile.page(ScannedOffice.pack(batch, "SB-1106"), 1, List.of(), false, false);
            pile.save(office.scans().resolve("pile.pdf"));
        }
        assertThat(watch(TUESDAY).out())
                .contains(
                        "pile.pdf: 6 pages of 3 papers sorted into signed/, 1 empty, 1 to be placed by a person.");
        assertThat(office.signed().resolve("SB-1102/SB-1102-stc-assignment.pdf")).isRegularFile();
        assertThat(office.signed().resolve("to-place/page-1.pdf")).isRegularFile();
        assertThat(office.filed().resolve("2026/scans/pile.pdf")).isRegularFile();
        assertThat(week(TUESDAY))
                .containsPattern("SB-1101-STC STC assignment back in part")
                .containsPattern("SB-1101-VEEC VEEC assignment not back yet")
                .contains("ready to lodge, with their assignment back: 2.");
    }

    private void theBundlesWaitForWhatIsNotSigned() throws IOException {
        assertThat(subject("SB-1102-STC")).startsWith("Claim SB-1102-STC ");
        assertThat(subject("SB-1101-STC")).startsWith("NOT SIGNED YET: Claim SB-1101-STC ");
        assertThat(office.send().resolve(batch.getFileName() + "/SB-1106-STC.eml")).doesNotExist();
    }

    private String subject(String claim) throws IOException {
        // RFC 5322, 2.2.3: a long subject is folded.
        return Files.readString(office.send().resolve(batch.getFileName() + "/" + claim + ".eml"))
                .replaceAll("\\r\\n ", " ")
                .replaceAll("(?s).*?\\nSubject: ([^\\r]*).*", "$1");
    }

    private void theClaimIsLodged() throws Exception {
        assertThat(run(TUESDAY, "lodged", "SB-1102-STC").out())
                .contains("18 certificates to Pipit and Wren: lodged", "$10.80 still to come");
        assertThat(week(TUESDAY)).contains("ready to lodge, with their assignment back: 1.");
        watch(TUESDAY);
        assertThat(office.send().resolve(batch.getFileName() + "/SB-1102-STC.eml")).doesNotExist();
        assertThat(lastDays())
                .containsEntry("18 STCs: SB-1102", "CANCELLED")
                .containsEntry("17 VEECs: SB-1102", "CONFIRMED");
    }

    private void theMoneyComes() throws IOException {
        Files.writeString(
                folder.resolve("advice.csv"),
                "Your ref,Date,Amount,Outcome\nSB-1102-STC,08/12/2026,658.80,paid\n");
        assertThat(run("2026-12-09", "settle", "advice.csv").out()).contains("matched:      1");
        assertThat(run("2026-12-09", "owed").out())
                .containsPattern("Pipit and Wren +\\$21.25 ")
                .containsPattern("Total +\\$21.25 +\\$965.30 .*\\$986.55")
                .containsPattern("SB-1101-STC +\\$505.80 +due 30 Nov 2026 +9 days")
                .doesNotContain("SB-1102-STC");
        assertThat(run("2026-12-09", "quarters").out())
                .containsPattern("Oct to Dec 2026 .* 32 +24 +\\$997.35 +\\$10.80 ");
        assertThat(week("2026-12-14"))
                .contains(
                        "Kestrel Certificates (03) 7010 0410 $965.30 2 SB-1101-STC, due 30 Nov 2026")
                .contains("ready to lodge, with their assignment back: 1.");
        assertThat(run("2026-12-14", "doctor", ".").out()).contains("as it was written");
    }
}
