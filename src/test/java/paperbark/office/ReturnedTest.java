package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** What goes back to whoever dropped it, under which name, and what it says. */
class ReturnedTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 23);

    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Office.in(folder);
    }

    private WorkItem taken(String name) throws IOException {
        return WorkItem.take(
                office, Files.writeString(office.intake().resolve(name), "Job,Owner\nJ-1,Ada\n"));
    }

    private static Finding refused(FindingCode code) {
        return Finding.of(
                code, new Place.InFile("week.csv"), "A fact of " + code + ".", "Do something.");
    }

    private List<String> back() throws IOException {
        return Office.list(office.returned()).stream()
                .map(f -> f.getFileName().toString())
                .toList();
    }

    private String note(String back) throws IOException {
        return Files.readString(office.returned().resolve(back).resolve("WHAT-TO-DO.txt"));
    }

    @ParameterizedTest
    @CsvSource({
        "week.csv, 2026-11-23-week",
        "Week 47 (final).csv, 2026-11-23-week-47-(final)",
        "--week--.csv, 2026-11-23-week",
        "Büro Nº 3.csv, 2026-11-23-büro-nº-3",
        "!!!.csv, 2026-11-23-register",
        "a234567890b234567890c234567890d2345678901.csv,"
                + " 2026-11-23-a234567890b234567890c234567890d234567890",
        "a234567890b234567890c234567890d234567890.csv,"
                + " 2026-11-23-a234567890b234567890c234567890d234567890"
    })
    void theFolderIsNamedAfterDayAndRegister(String name, String expected) throws IOException {
        Returned.register(
                office, taken(name), List.of(refused(FindingCode.FILE_UNREADABLE)), TODAY);
        assertThat(back()).containsExactly(expected);
        assertThat(office.returned().resolve(expected).resolve(name)).exists();
        assertThat(office.work()).isEmptyDirectory();
    }

    @Test
    void aSecondOneOfTheSameNameTakesNobodysPlace() throws IOException {
        for (int i = 0; i < 2; i++) {
            Returned.register(
                    office,
                    taken("week.csv"),
                    List.of(refused(FindingCode.FILE_UNREADABLE)),
                    TODAY);
        }
        assertThat(back()).hasSize(2).contains("2026-11-23-week");
    }

    @Test
    void theNoteHasWhatStopsAndNothingElse() throws IOException {
        Returned.register(
                office,
                taken("week.csv"),
                List.of(refused(FindingCode.FILE_UNREADABLE), refused(FindingCode.ROW_IGNORED)),
                TODAY);
        assertThat(note("2026-11-23-week"))
                .startsWith("week.csv could not be used, and nothing was prepared from it.")
                .contains(
                        "A fact of FILE_UNREADABLE.\n  What to do: Do something.",
                        "drop the file into the intake folder again")
                .doesNotContain("ROW_IGNORED", "columns-proposed.csv");
        assertThat(office.returned().resolve("2026-11-23-week/columns-proposed.csv"))
                .doesNotExist();
    }

    @Test
    void aPileAndAFileThatMadeTheProgramFailSaySo() throws IOException {
        WorkItem pile =
                WorkItem.takeScan(
                        office, Files.writeString(office.scans().resolve("pile.pdf"), "no PDF"));
        Returned.pile(office, pile, refused(FindingCode.SCAN_UNREADABLE), TODAY);
        assertThat(note("2026-11-23-pile"))
                .startsWith("pile.pdf could not be read, and nothing was taken from it.")
                .contains("A fact of SCAN_UNREADABLE.", "What to do: Do something.");

        Returned.unread(office, taken("poison.csv"), TODAY);
        assertThat(note("2026-11-23-poison"))
                .startsWith("poison.csv could not be prepared: the program failed 3 times at it.");
    }

    @Test
    void whatWasBegunIsFinishedOnceTheRegisterIsAmongIt() throws IOException {
        WorkItem item = taken("week.csv");
        assertThat(Returned.finish(office, item)).isFalse();
        Files.createDirectory(item.returning());
        Files.writeString(item.folder().resolve("name"), "2026-11-23-week");
        assertThat(Returned.finish(office, item)).isFalse();
        Files.move(item.source().orElseThrow(), item.returning().resolve("week.csv"));
        assertThat(Returned.finish(office, item)).isTrue();
        assertThat(office.returned().resolve("2026-11-23-week/week.csv")).exists();
        assertThat(item.folder()).doesNotExist();
    }
}
