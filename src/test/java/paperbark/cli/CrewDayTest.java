package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.SampleWeek;

/**
 * Installed jobs of a list that tells of no visits: one with its day, one whose day cannot be read,
 * one without a claim.
 */
class CrewDayTest {
    @TempDir private static Path folder;
    private static Path batch;
    private static String index;

    @BeforeAll
    static void prepare() throws IOException {
        String list = SampleWeek.only("SB-1101", "SB-1102", "SB-1103");
        Files.writeString(
                folder.resolve("three.csv"),
                list.replace(",1,16/11/2026,16/11/2026,", ",1,,16/11/2026,")
                        .replace(",2,16/11/2026,16/11/2026,", ",2,,the 16th,")
                        .replaceFirst(
                                "SB-1103,installed,([^,]*,[^,]*,[^,]*),[^,]*,[^,]*,",
                                "SB-1103,no claim,$1,,17/11/2026,"));
        Program.Run run =
                Program.run(
                        folder,
                        "prepare",
                        "three.csv",
                        "--by-crew",
                        "--csv",
                        "--as-of",
                        "2026-11-23",
                        "--tables",
                        SampleWeek.TABLES.toAbsolutePath().toString());
        assertThat(run.exitCode()).as(run.out() + run.err()).isEqualTo(10);
        batch = folder.resolve("packs/2026-11-23-three");
        index = Files.readString(batch.resolve("index.html"));
    }

    @Test
    void aCrewsDayWithoutAVisitIsThatOfTheInstallation() {
        assertThat(batch.resolve("print-run-2026-11-16-Heron.pdf")).exists();
        assertThat(index)
                .contains(
                        "data-crew=\"Heron\" data-day=\"16 Nov 2026\"",
                        "<option>16 Nov 2026</option>",
                        "<strong>Heron</strong>, 16 Nov 2026",
                        "Crew Heron, 16 Nov 2026 (PDF)");
    }

    @Test
    void theDayOfAHeaterThatIsInIsNotPlanned() throws IOException {
        assertThat(Files.readString(batch.resolve("summary-csv/certificates.csv")))
                .containsPattern("SB-1102,.*,STC,.*,held,no,")
                .doesNotContain(",yes,");
        assertThat(index).contains("installed, day not known").doesNotContain("(planned day)");
    }

    @Test
    void workThatIsDoneAndClaimsNothingHasNoLastDay() {
        assertThat(row("job-1", index) + row("job-2", index) + row("job-3", index))
                .contains("data-label=\"Last days\"><div>none</div>")
                .containsOnlyOnce("<div>none</div>")
                .contains("<div>not known yet</div>");
    }

    private static String row(String anchor, String page) {
        int start = page.indexOf("id=\"" + anchor + "\"");
        return page.substring(start, page.indexOf("</tr>", start));
    }
}
