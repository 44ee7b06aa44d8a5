package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** When a file in the intake is ready, and why it is not. */
class IntakeLooksTest {
    private static final Instant NOW = Instant.parse("2026-11-23T12:00:00Z");
    private static final Duration QUIET = Duration.ofSeconds(10);

    @TempDir private Path folder;

    private Intake intake;

    @BeforeEach
    void anEmptyIntake() {
        intake = new Intake(folder, QUIET);
    }

    private Path drop(String name, Instant modified) throws IOException {
        Path file = Files.writeString(folder.resolve(name), "Job\n");
        return Files.setLastModifiedTime(file, FileTime.from(modified));
    }

    private List<Path> ready(Instant now) throws IOException {
        return intake.look(now).ready();
    }

    private String why(Path file, Instant now) throws IOException {
        return intake.look(now).waiting().getOrDefault(file, "");
    }

    @Test
    void aFileIsReadyOnceItStayedTheSameForJustSoLong() throws IOException {
        Path file = drop("week.csv", NOW.minusSeconds(60));
        assertThat(why(file, NOW)).isEqualTo(Intake.JUST_COME);
        assertThat(why(file, NOW.plusSeconds(9))).isEqualTo(Intake.JUST_COME);
        assertThat(ready(NOW.plusSeconds(10))).containsExactly(file);
        assertThat(intake.look(NOW.plusSeconds(10)).waiting()).isEmpty();
    }

    @Test
    void aFileThatWasWrittenAMomentAgoWaitsThoughItLooksTheSame() throws IOException {
        Path file = drop("week.csv", NOW.plusSeconds(5));
        assertThat(why(file, NOW)).isEqualTo(Intake.JUST_COME);
        assertThat(why(file, NOW.plusSeconds(14))).isEqualTo(Intake.JUST_COME);
        assertThat(ready(NOW.plusSeconds(15))).containsExactly(file);
    }

    @Test
    void aNewSizeOrANewTimeBeginsTheWaitAnew() throws IOException {
        Path file = drop("week.csv", NOW.minusSeconds(60));
        ready(NOW);
        Files.writeString(file, "Job\nJ-1\n");
        Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(60)));
        assertThat(why(file, NOW.plusSeconds(10))).isEqualTo(Intake.JUST_COME);
        Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(50)));
        assertThat(why(file, NOW.plusSeconds(20))).isEqualTo(Intake.JUST_COME);
        assertThat(ready(NOW.plusSeconds(30))).containsExactly(file);
    }

    @Test
    void aClockThatWasPutBackLetsNothingWaitUntilItHasCaughtUp() throws IOException {
        Path file = drop("week.csv", NOW.minusSeconds(7200));
        ready(NOW);
        Instant earlier = NOW.minusSeconds(3600);
        assertThat(why(file, earlier)).isEqualTo(Intake.JUST_COME);
        assertThat(ready(earlier.plusSeconds(10))).containsExactly(file);
    }

    @Test
    void aFileOfATimeToComeIsTakenAsSoonAsItIsSteady() throws IOException {
        Path file = drop("week.csv", NOW.plusSeconds(86_400));
        ready(NOW);
        assertThat(ready(NOW.plusSeconds(10))).containsExactly(file);
    }

    @Test
    void theOldestIsTakenFirstAndOfTwoOfOneMomentTheFirstByName() throws IOException {
        Path last = drop("a.csv", NOW.minusSeconds(60));
        Path second = drop("c.csv", NOW.minusSeconds(120));
        Path first = drop("b.csv", NOW.minusSeconds(120));
        ready(NOW);
        assertThat(ready(NOW.plusSeconds(10))).containsExactly(first, second, last);
    }

    @Test
    void anEmptyFileAFolderAndALinkWaitWithAReasonOfTheirOwn() throws IOException {
        Path empty = Files.createFile(folder.resolve("empty.csv"));
        Path inner = Files.createDirectory(folder.resolve("folder"));
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), folder.resolve("x"));
        assertThat(why(empty, NOW)).isEqualTo("It is still empty.");
        assertThat(why(inner, NOW)).startsWith("It is no file but a folder, link or device.");
        assertThat(why(link, NOW)).startsWith("It is no file but a folder, link or device.");
    }

    @Test
    void aFileIsHeldByALockOfLessThanADay() throws IOException {
        Path file = drop("week.csv", NOW.minusSeconds(60));
        for (String name : List.of("~$week.csv", ".~lock.week.csv#")) {
            Path lock = drop(name, NOW.minus(Duration.ofDays(1)).plusSeconds(20));
            assertThat(why(file, NOW)).startsWith("It is open in another program.");
            assertThat(why(file, NOW.plusSeconds(19))).startsWith("It is open");
            assertThat(ready(NOW.plusSeconds(20))).containsExactly(file);
            Files.delete(lock);
        }
    }

    @Test
    void whatWentAwayAndCameAgainIsNew() throws IOException {
        Path file = drop("week.csv", NOW.minusSeconds(60));
        ready(NOW);
        Files.delete(file);
        assertThat(ready(NOW.plusSeconds(5))).isEmpty();
        drop("week.csv", NOW.minusSeconds(60));
        assertThat(why(file, NOW.plusSeconds(10))).isEqualTo(Intake.JUST_COME);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                ".hidden",
                "~$week.xlsx",
                "week.xlsx~",
                "x.tmp",
                "x.temp",
                "x.part",
                "x.partial",
                "x.CRDOWNLOAD",
                "x.download",
                "x.lnk",
                "Thumbs.db",
                "desktop.ini",
                "A1B2C3D4"
            })
    void whatBelongsToOtherProgramsIsNotSeen(String name) throws IOException {
        drop(name, NOW.minusSeconds(60));
        assertThat(intake.look(NOW).waiting()).isEmpty();
        assertThat(ready(NOW.plusSeconds(10))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"week.csv", "part.csv", "A1B2C3D", "A1B2C3D45", "tmp", "week~1.csv"})
    void anyOtherNameIsARegisters(String name) throws IOException {
        Path file = drop(name, NOW.minusSeconds(60));
        ready(NOW);
        assertThat(ready(NOW.plusSeconds(10))).containsExactly(file);
    }
}
