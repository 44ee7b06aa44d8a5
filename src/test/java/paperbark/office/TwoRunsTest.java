package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;

/** A second run while a first one has its batch in the ledger and has not published it yet. */
@Tag("slow")
class TwoRunsTest {
    @TempDir private Path folder;

    private Office office;
    private Path trace;
    private Process first;

    @BeforeEach
    void aFirstRunWaitsBetweenLedgerAndFolder() throws Exception {
        office = Offices.make(folder.resolve("office"));
        Files.writeString(office.intake().resolve("week.csv"), Offices.register(1));
        Files.writeString(office.intake().resolve("other.csv"), Offices.register(2));
        trace = folder.resolve("trace.txt");
        first =
                Child.program(
                        List.of("prepare", office.intake().resolve("week.csv").toString()),
                        folder.resolve("said.txt"),
                        "paperbark.fault=COMMITTED:pause",
                        "paperbark.trace=" + trace);
        while (!Files.exists(trace) || !Files.readString(trace).contains("PAUSE")) {
            assertThat(first.isAlive()).as(Files.readString(folder.resolve("said.txt"))).isTrue();
            Thread.sleep(20);
        }
    }

    @AfterEach
    void endTheFirst() throws InterruptedException {
        first.destroyForcibly().waitFor();
    }

    private Program.Run prepareTheOther(String... more) {
        List<String> words =
                new ArrayList<>(
                        List.of("prepare", office.intake().resolve("other.csv").toString()));
        words.addAll(List.of(more));
        return Program.run(folder, words.toArray(String[]::new));
    }

    private Path batch(String name) {
        return office.packs().resolve("2026-11-23-" + name);
    }

    private long hidden() throws IOException {
        return Office.list(office.packs()).stream().filter(Files::isDirectory).count();
    }

    @Test
    void intoTheSameFolderItSaysSoAndTheFirstOneEndsWell() throws Exception {
        Program.Run second = prepareTheOther();
        assertThat(second.exitCode()).as(second.err()).isEqualTo(20);
        assertThat(second.err()).contains("preparing a register into", "Wait until it has ended");
        Program.Run watch = Program.run(folder, "watch", "office", "--once", "--quiet-for", "0");
        assertThat(watch.exitCode()).as(watch.err()).isEqualTo(20);
        assertThat(office.intake().resolve("other.csv")).exists();
        assertThat(batch("week")).doesNotExist();
        assertThat(hidden()).isEqualTo(1);
        Files.delete(trace);
        assertThat(Child.end(first)).as(Files.readString(folder.resolve("said.txt"))).isZero();
        assertThat(batch("week").resolve("manifest.json")).isRegularFile();
        assertThat(prepareTheOther().exitCode()).isZero();
        assertThat(batch("other").resolve("manifest.json")).isRegularFile();
    }

    @Test
    void intoAnotherFolderItLeavesTheFirstAloneForTheNextRunThere() throws Exception {
        Program.Run second = prepareTheOther("--out", "elsewhere");
        assertThat(second.exitCode()).as(second.err()).isZero();
        assertThat(batch("week")).doesNotExist();
        assertThat(hidden()).isEqualTo(1);
        endTheFirst();
        prepareTheOther("--out", "elsewhere");
        assertThat(batch("week")).doesNotExist();
        prepareTheOther();
        assertThat(batch("week").resolve("manifest.json")).isRegularFile();
    }
}
