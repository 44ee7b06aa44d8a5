package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.batch.SampleWeek;

/** A {@code prepare} that is told to end, from the keyboard or by the system, leaves nothing. */
@Tag("slow")
class InterruptedTest {
    @TempDir private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"INT", "TERM"})
    void leavesNothingHalfMade(String signal) throws Exception {
        assumeThat(Files.isExecutable(Path.of("/bin/kill"))).isTrue();
        Path register = Files.writeString(folder.resolve("week.csv"), SampleWeek.only("SB-1101"));
        Path out = Files.createDirectory(folder.resolve("packs"));
        Process prepare =
                Child.program(
                        List.of(
                                "prepare",
                                register.toString(),
                                "--tables",
                                SampleWeek.TABLES.toAbsolutePath().toString(),
                                "--out",
                                out.toString(),
                                "--threads",
                                "1"),
                        folder.resolve("said"),
                        "paperbark.fault=PAPER:pause",
                        "paperbark.trace=" + folder.resolve("trace"));
        while (prepare.isAlive() && papers(out).isEmpty()) {
            Thread.sleep(50);
        }
        assertThat(papers(out)).isNotEmpty();
        new ProcessBuilder("/bin/kill", "-" + signal, Long.toString(prepare.pid()))
                .start()
                .waitFor();
        assertThat(prepare.waitFor()).isNotZero();
        assertThat(Office.list(out)).noneMatch(Files::isDirectory);
    }

    private static List<Path> papers(Path out) throws IOException {
        try (var files = Files.walk(out)) {
            return files.filter(f -> f.toString().endsWith(".pdf")).toList();
        } catch (java.io.UncheckedIOException movingOn) {
            return List.of();
        }
    }
}
