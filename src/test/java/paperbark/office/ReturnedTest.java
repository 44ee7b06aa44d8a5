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
        Returned.pile(office, halfGivenBack(pile), refused(FindingCode.SCAN_UNREADABLE), TODAY);
        assertThat(note("2026-11-23-pile"))
                .startsWith("pile.pdf could not be read, and nothing was taken from it.")
                .contains("A fact of SCAN_UNREADABLE.", "What to do: Do something.");

        Returned.unread(office, halfGivenBack(taken("poison.csv")), TODAY);
        assertThat(note("2026-11-23-poison"))
                .startsWith("poison.csv could not be prepared: the program failed 3 times at it.");
        assertThat(files("2026-11-23-pile")).containsExactly("WHAT-TO-DO.txt", "pile.pdf");
        assertThat(files("2026-11-23-poison")).containsExactly("WHAT-TO-DO.txt", "poison.csv");
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

    private void refusedWith(String name, String content, FindingCode code) throws IOException {
        WorkItem item =
                halfGivenBack(
                        WorkItem.take(
                                office, Files.writeString(office.intake().resolve(name), content)));
        Returned.register(office, item, List.of(refused(code)), TODAY);
    }

    /** What a run that was cut had begun to give back is begun anew. */
    private static WorkItem halfGivenBack(WorkItem item) throws IOException {
        Files.createDirectory(item.returning());
        Files.writeString(item.returning().resolve("half.txt"), "x");
        return item;
    }

    private List<String> files(String back) throws IOException {
        return Office.list(office.returned().resolve(back)).stream()
                .map(f -> f.getFileName().toString())
                .toList();
    }

    @Test
    void aProposalComesWhereTheHeadingsAreTheTroubleAndSomeCanBeTold() throws IOException {
        Offices.copy(Path.of("input-samples/tables"), office.root().resolve("tables"));
        String list =
                """
                Ref,How far,Client name,Brand,Unit,P/Code
                PL-1,booked,Nora Nettle,Dunlin,D270-A,3342
                PL-2,booked,Otto Oakum,Dunlin,D200-A,3345
                """;
        refusedWith("own.csv", list, FindingCode.HEADINGS_NOT_FOUND);
        assertThat(files("2026-11-23-own"))
                .contains("WHAT-TO-DO.txt", "columns-proposed.csv", "own.csv", "own-checked.xlsx")
                .doesNotContain("half.txt");
        assertThat(note("2026-11-23-own")).contains("columns-proposed.csv says which column");

        refusedWith("cut.csv", list, FindingCode.FILE_MAY_BE_CUT);
        assertThat(files("2026-11-23-cut")).doesNotContain("columns-proposed.csv");
        refusedWith("odd.csv", "x\n1\n", FindingCode.HEADINGS_NOT_FOUND);
        assertThat(files("2026-11-23-odd")).doesNotContain("columns-proposed.csv");
        assertThat(note("2026-11-23-odd")).doesNotContain("columns-proposed.csv");
    }
}
