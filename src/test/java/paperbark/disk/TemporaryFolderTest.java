package paperbark.disk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What killed processes left among temporary files goes with the next start. */
class TemporaryFolderTest {
    private static final Instant NOW = Instant.parse("2026-11-23T12:00:00Z");
    private static final String ME = System.getProperty("user.name");

    @TempDir private Path folder;

    @Test
    void whatIsADayOldGoesAndWhatIsInUseStays() throws IOException {
        Path own = TemporaryFolder.of(folder, ME, NOW).orElseThrow();
        Path old = Files.createFile(own.resolve("library.so"));
        Files.setLastModifiedTime(old, FileTime.from(NOW.minus(Duration.ofDays(2))));
        Path fresh = Files.createFile(own.resolve("page.tmp"));
        Files.setLastModifiedTime(fresh, FileTime.from(NOW));
        assertThat(TemporaryFolder.of(folder, ME, NOW)).contains(own);
        assertThat(old).doesNotExist();
        assertThat(fresh).exists();
    }

    @Test
    void aLinkOfThatNameIsNotTaken() throws IOException {
        Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
        Files.createSymbolicLink(folder.resolve("paperbark-" + FileNames.slug(ME)), elsewhere);
        assertThat(TemporaryFolder.of(folder, ME, NOW)).isEmpty();
    }
}
