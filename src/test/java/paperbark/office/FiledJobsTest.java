package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.job.Job;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;

/** What registers say of jobs that the ledger has. */
class FiledJobsTest {
    @TempDir private Path folder;

    private Office office;
    private Ledger ledger;
    private FiledJobs filed;

    @BeforeEach
    void twoJobsOfThreeRows() throws IOException {
        office = Offices.make(folder.resolve("office"));
        ledger = Ledger.open(office.ledger());
        Entries.enter(ledger, Entries.batch("one", Entries.job("J-1"), Entries.job("J-2")));
        file("one", Offices.register(1, 2, 3));
        filed = new FiledJobs(office);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private void file(String batch, String register) throws IOException {
        Path place = Files.createDirectories(office.filed().resolve("2026").resolve(batch));
        Files.writeString(place.resolve("week.csv"), register);
    }

    private Optional<String> suburb(String job) {
        return filed.of(ledger, job).map(Job::site).flatMap(s -> s.address().suburb());
    }

    @Test
    void aRegisterIsReadAgainWhenItIsAnotherOne() throws IOException {
        assertThat(suburb("j-1")).contains("Ballan");
        file("one", Offices.register(1, 2).replace("Ballan", "Bungaree"));
        assertThat(suburb("J-1")).contains("Bungaree");
        Files.delete(office.filed().resolve("2026/one/week.csv"));
        assertThat(suburb("J-2")).isEmpty();
    }

    @Test
    void theNewestBatchOfAJobTells() throws IOException {
        assertThat(suburb("J-1")).contains("Ballan");
        Entries.enter(ledger, Entries.batch("two", Entries.job("J-1")));
        file("two", Offices.register(1).replace("Ballan", "Bungaree"));
        assertThat(suburb("J-1")).contains("Bungaree");
        assertThat(suburb("J-2")).contains("Ballan");
    }

    @Test
    void ofAForgottenJobAndOfOneThatIsNotInTheLedgerNothingIsKnown() {
        assertThat(suburb("J-2")).contains("Ballan");
        ledger.forget("J-2", Entries.DAY, Instant.EPOCH, "test");
        assertThat(suburb("J-2")).isEmpty();
        assertThat(suburb("J-3")).isEmpty();
    }
}
