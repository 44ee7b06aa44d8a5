package paperbark.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ToldTest {
    private static Finding unknown(int row, String maker) {
        return Finding.of(
                        FindingCode.MAKER_UNKNOWN,
                        new Place.InCell("week.xlsx", "Week 47", row, "Brand", "F" + row),
                        "The makers table has no \"" + maker + "\".",
                        "Correct the name.")
                .seeing(maker)
                .forJob("SB-" + row);
    }

    private static Finding readAs(int row) {
        return Finding.of(
                FindingCode.CELL_SPLIT,
                new Place.InCell("week.xlsx", "Week 47", row, "Address", "C" + row),
                "The cell was read as Site street \"" + row + " Teaspoon Lane\".",
                "");
    }

    @Test
    void theSameNameInThreeRowsIsToldOnceWithItsRowsAndJobs() {
        List<Told> told =
                Told.of(
                        List.of(
                                unknown(4, "Ternlite"),
                                unknown(5, "Ternlite"),
                                unknown(6, "Dunnlin"),
                                unknown(7, "Ternlite"),
                                unknown(8, "Ternlite"),
                                unknown(9, "Ternlite")));

        assertThat(told).hasSize(2);
        assertThat(told.get(0).where())
                .isEqualTo("week.xlsx > Week 47 > column F \"Brand\", rows 4, 5, 7-9");
        assertThat(told.get(0).jobs()).containsExactly("SB-4", "SB-5", "SB-7", "SB-8", "SB-9");
        assertThat(told.get(0).first().severity()).isEqualTo(Severity.STOP);
        assertThat(told.get(0).fact()).isEqualTo("The makers table has no \"Ternlite\".");
        assertThat(told.get(1).where()).isEqualTo("week.xlsx > Week 47 > F6 \"Brand\"");
    }

    @Test
    void twoRowsAreTwoFindings() {
        assertThat(Told.of(List.of(unknown(4, "Ternlite"), unknown(5, "Ternlite"))))
                .extracting(Told::isFolded)
                .containsExactly(false, false);
    }

    @Test
    void aStopAndACheckOfOneNameStayApart() {
        List<Finding> findings = new ArrayList<>();
        for (int row = 4; row < 8; row++) {
            findings.add(unknown(row, "Ternlite"));
            findings.add(unknown(row, "Ternlite").as(Severity.CHECK));
        }

        assertThat(Told.of(findings))
                .extracting(t -> t.first().severity() + " " + t.all().size())
                .containsExactly("STOP 4", "CHECK 4");
    }

    @Test
    void notesOfOneColumnAreAHabitAndTheFirstIsItsExample() {
        List<Told> told = Told.of(List.of(readAs(2), readAs(3), readAs(4)));

        assertThat(told).hasSize(1);
        assertThat(told.get(0).fact())
                .isEqualTo(
                        "For instance in row 2: The cell was read as Site street \"2 Teaspoon Lane\".");
    }

    @Test
    void noFindingIsLost() {
        List<Finding> findings =
                List.of(readAs(2), unknown(4, "A"), readAs(3), unknown(5, "A"), readAs(4));

        assertThat(Told.of(findings).stream().flatMap(t -> t.all().stream()))
                .containsExactlyInAnyOrderElementsOf(findings);
    }
}
