package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import paperbark.rules.Rulebook;
import paperbark.value.SchemeName;

/** The years are those of {@code au/records.csv}; its sources and doubts stand there. */
class RetentionTest {
    private static final LocalDate DONE = LocalDate.of(2026, 11, 16);

    private static List<String> periods(
            Map<SchemeName, LocalDate> lastDays, Optional<LocalDate> warranty) {
        return Retention.of(
                        new Retention.Job(DONE, lastDays, warranty),
                        Rulebook.load(Optional.empty()))
                .stream()
                .map(p -> p.what() + " " + p.until())
                .toList();
    }

    @Test
    void fiveYearsForTaxSixForCertificatesSevenForTheFile() {
        assertThat(periods(Map.of(), Optional.empty()))
                .containsExactly(
                        "a company's accounts 2033-11-16",
                        "the file of the job 2033-11-16",
                        "copies of compliance certificates 2032-11-16",
                        "tax and GST records 2031-11-16");
    }

    @Test
    void aLongWarrantyGoesBeforeAll() {
        assertThat(periods(Map.of(), Optional.of(LocalDate.of(2036, 11, 15))))
                .first()
                .isEqualTo("longest warranty 2036-11-15");
    }

    /** STC papers five years, VEEC papers six, each from the last day of creating. */
    @Test
    void papersOfCertificatesFromTheDayOnWhichTheyCouldLastBeCreated() {
        assertThat(
                        periods(
                                Map.of(
                                        SchemeName.STC, LocalDate.of(2027, 11, 16),
                                        SchemeName.VEEC, LocalDate.of(2027, 6, 30)),
                                Optional.empty()))
                .contains("papers of its STCs 2032-11-16", "papers of its VEECs 2033-06-30");
    }

    @Test
    void aLeapDayEndsOnTheLastOfFebruary() {
        List<Retention.Period> periods =
                Retention.of(
                        new Retention.Job(LocalDate.of(2024, 2, 29), Map.of(), Optional.empty()),
                        Rulebook.load(Optional.empty()));
        assertThat(periods.get(0).until()).isEqualTo(LocalDate.of(2031, 2, 28));
    }
}
