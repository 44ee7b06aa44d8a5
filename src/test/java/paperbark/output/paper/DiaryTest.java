package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import paperbark.output.CaseFiles;

class DiaryTest {
    @Test
    void countsHalfYearsFromTheDayOfInstallation() {
        Diary diary =
                Diary.of(
                        CaseFiles.installedSolar().job(),
                        CaseFiles.installedSolar().doneOn(),
                        "The firm",
                        Optional.of(6));

        assertThat(diary.entries()).hasSize(10);
        assertThat(diary.entries().get(0))
                .isEqualTo(
                        new DiaryEntry(
                                "6 months",
                                Optional.of(LocalDate.of(2027, 5, 18)),
                                java.util.List.of(DiaryTask.RELIEF_VALVE)));
        assertThat(diary.entries())
                .extracting(DiaryEntry::after)
                .containsExactly(
                        "6 months",
                        "1 year",
                        "1½ years",
                        "2 years",
                        "2½ years",
                        "3 years",
                        "3½ years",
                        "4 years",
                        "4½ years",
                        "5 years");
        assertThat(diary.entries().get(9).tasks()).contains(DiaryTask.WEARING_PARTS);
    }

    @Test
    void endsAWarrantyOnTheDayBeforeItsAnniversary() {
        Diary diary =
                Diary.of(
                        CaseFiles.installedSolar().job(),
                        CaseFiles.installedSolar().doneOn(),
                        "The firm",
                        Optional.of(6));

        assertThat(diary.warranties())
                .containsExactly(
                        new Diary.Cover(
                                "Our work", "The firm", 6, Optional.of(LocalDate.of(2032, 11, 17))),
                        new Diary.Cover(
                                "Tank", "Ternlight", 7, Optional.of(LocalDate.of(2033, 11, 17))),
                        new Diary.Cover(
                                "Collectors",
                                "Ternlight",
                                10,
                                Optional.of(LocalDate.of(2036, 11, 17))),
                        new Diary.Cover(
                                "Other parts",
                                "Ternlight",
                                2,
                                Optional.of(LocalDate.of(2028, 11, 17))));
    }

    @Test
    void leavesTheDaysOpenWhileTheJobIsBooked() {
        Diary diary =
                Diary.of(
                        CaseFiles.bookedHeatPump().job(),
                        Optional.empty(),
                        "The firm",
                        Optional.empty());

        assertThat(diary.entries()).allMatch(e -> e.due().isEmpty());
        assertThat(diary.warranties()).allMatch(w -> w.ends().isEmpty());
    }
}
