package paperbark.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import paperbark.value.SchemeName;

class FindingTest {
    private static final Place CELL =
            new Place.InCell("week.xlsx", "Week 47", 14, "Tank serial", "F14");

    @Test
    void theDefaultsComeFromTheCatalogue() {
        Finding finding =
                Finding.of(FindingCode.SERIAL_TWICE, CELL, "It is there twice.", "Look again.");
        assertThat(finding.severity()).isEqualTo(Severity.STOP);
        assertThat(finding.holds())
                .containsExactlyInAnyOrder(
                        Concern.claim(SchemeName.STC),
                        Concern.claim(SchemeName.VEEC),
                        Concern.WARRANTY);
        assertThat(finding.where()).isEqualTo("week.xlsx > Week 47 > F14 \"Tank serial\"");
    }

    @Test
    void aMilderFindingHoldsNothing() {
        Finding finding =
                Finding.of(FindingCode.SERIAL_TWICE, CELL, "It is there twice.", "Look again.")
                        .as(Severity.CHECK);
        assertThat(finding.holds()).isEmpty();
    }

    @Test
    void aStopWithoutARemedyIsRefused() {
        assertThatThrownBy(
                        () -> Finding.of(FindingCode.SERIAL_TWICE, CELL, "It is there twice.", ""))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void controlAndDirectionCharactersAreMadeVisible() {
        Finding finding =
                Finding.of(FindingCode.SERIAL_TWICE, CELL, "Fact\u001b[31m.", "Do.")
                        .seeing("a\u202eb\nc");
        assertThat(finding.seen()).isEqualTo("a\\u202eb\\u000ac");
        assertThat(finding.fact()).isEqualTo("Fact\\u001b[31m.");
    }

    @Test
    void longValuesAreShortened() {
        Finding finding =
                Finding.of(FindingCode.SERIAL_TWICE, CELL, "Fact.", "Do.").seeing("x".repeat(500));
        assertThat(finding.seen()).hasSize(60).endsWith("…");
    }

    @Test
    void findingsStandInReadingOrderAndOnce() {
        Finding b14 =
                Finding.of(
                        FindingCode.SERIAL_TWICE,
                        new Place.InCell("w", "s", 14, "b", "B14"),
                        "Fact.",
                        "Do.");
        Finding aa14 =
                Finding.of(
                        FindingCode.SERIAL_TWICE,
                        new Place.InCell("w", "s", 14, "aa", "AA14"),
                        "Fact.",
                        "Do.");
        Finding row2 =
                Finding.of(FindingCode.JOB_UNNAMED, new Place.InRow("w", "s", 2), "Fact.", "Do.");
        assertThat(Finding.inOrder(List.of(aa14, b14, row2, b14))).containsExactly(row2, b14, aa14);
    }
}
