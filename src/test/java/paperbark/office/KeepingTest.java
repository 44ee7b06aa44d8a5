package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.ledger.Entries;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Ledger;

/** From which day on the time runs for which what is told of a job is kept. */
class KeepingTest {
    private static final LocalDate BATCH = LocalDate.of(2026, 11, 23);

    @TempDir private Path folder;

    private Ledger ledger;

    @BeforeEach
    void open() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private static JobVersion version(Optional<LocalDate> installed, Optional<LocalDate> warranty) {
        return new JobVersion(1, "one", "one", BATCH, "x.pdf", installed, warranty, false);
    }

    private static JobVersion installed(LocalDate day) {
        return version(Optional.of(day), Optional.empty());
    }

    private LocalDate until(JobVersion... versions) {
        return Keeping.of(ledger, "SB-1", List.of(versions), Optional.empty(), Optional.empty())
                .get(0)
                .until();
    }

    @Test
    void itRunsFromTheLatestInstallation() {
        LocalDate early = BATCH.minusYears(2);
        assertThat(until(installed(BATCH))).isEqualTo(until(installed(early)).plusYears(2));
        assertThat(until(installed(BATCH), installed(early))).isEqualTo(until(installed(BATCH)));
    }

    @Test
    void aJobThatWasNeverInstalledCountsFromItsBatch() {
        assertThat(until(version(Optional.empty(), Optional.empty())))
                .isEqualTo(until(installed(BATCH)));
    }

    @Test
    void theLongestWarrantyCounts() {
        assertThat(
                        Keeping.warrantyUntil(
                                List.of(
                                        version(Optional.empty(), Optional.of(BATCH)),
                                        version(Optional.empty(), Optional.empty()),
                                        version(
                                                Optional.empty(),
                                                Optional.of(BATCH.minusDays(1))))))
                .contains(BATCH);
        assertThat(Keeping.warrantyUntil(List.of(installed(BATCH)))).isEmpty();
    }
}
