package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lock names who has it, and nobody else. */
class OfficeLockTest {
    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Office.in(folder);
    }

    @Test
    void aNoteOfAProcessThatHasEndedIsNotTakenForTheOneThatHasTheLock() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, Instant.EPOCH)) {
            assertThat(lock.office()).isEqualTo(office);
            // Larger than any process number there can be.
            Files.writeString(office.lockInfo(), "process 99999999, since 1970-01-01T00:00:00Z");
            assertThatThrownBy(() -> OfficeLock.take(office, Instant.EPOCH))
                    .hasMessageContaining("has not said which one it is")
                    .hasMessageNotContaining("99999999");
        }
    }

    @Test
    void whoGivesTheLockBackLeavesNoNote() throws Exception {
        OfficeLock.take(office, Instant.EPOCH).close();
        assertThat(office.lockInfo()).doesNotExist();
    }

    @Test
    void whoHasTheLockIsNamedToWhoeverComesSecond() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, Instant.EPOCH)) {
            assertThat(lock.office()).isEqualTo(office);
            assertThatThrownBy(() -> OfficeLock.take(office, Instant.EPOCH))
                    .isInstanceOf(OfficeLock.Busy.class)
                    .hasMessageContaining("process " + ProcessHandle.current().pid())
                    .hasMessageContaining("since 1970-01-01T00:00:00Z");
        }
        OfficeLock.take(office, Instant.EPOCH).close();
    }

    @Test
    void aNoteOfAnotherComputersProcessIsBelievedAndOneThatIsEmptyIsNot() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, Instant.EPOCH)) {
            assertThat(lock.office()).isEqualTo(office);
            Files.writeString(
                    office.lockInfo(), "process 99999999 on another-desk, since 1970-01-01");
            assertThatThrownBy(() -> OfficeLock.take(office, Instant.EPOCH))
                    .hasMessageContaining("another-desk");
            Files.writeString(office.lockInfo(), " ");
            assertThatThrownBy(() -> OfficeLock.take(office, Instant.EPOCH))
                    .hasMessageContaining("has not said which one it is");
            Files.delete(office.lockInfo());
            assertThatThrownBy(() -> OfficeLock.take(office, Instant.EPOCH))
                    .hasMessageContaining("has not said which one it is");
        }
    }

    @Test
    void whatAKilledRunLeftAmongTheFilesOfAMomentIsCleared() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, Instant.EPOCH)) {
            Path temporary = lock.clearedTemporary();
            assertThat(temporary).isEmptyDirectory();
            Files.writeString(temporary.resolve("left.bin"), "x");
            assertThat(lock.clearedTemporary()).isEqualTo(temporary).isEmptyDirectory();
        }
    }
}
