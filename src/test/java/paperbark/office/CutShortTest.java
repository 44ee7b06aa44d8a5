package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.cli.Program;
import paperbark.fault.FaultPoint;

/**
 * The program is killed, at every step and at random; after the next start the office is as if
 * nothing had happened. {@code -Dcut.kills=200} sets how many random kills there are.
 */
@Tag("slow")
class CutShortTest {
    private static final int KILLS = Integer.getInteger("cut.kills", 12);
    private static final int HALTED = 137;

    @TempDir private Path folder;

    private Office office;
    private final List<String> dropped = new ArrayList<>();

    @BeforeEach
    void dropTwoRegisters() throws IOException {
        office = Offices.make(folder.resolve("office"));
        drop("good.csv", Offices.register(1, 2));
        drop("short.csv", "Job,Owner,Model\nJ-9,Ada Amberwood,D270-A\n");
    }

    private void drop(String name, String content) throws IOException {
        dropped.add(Invariants.sha256(Files.writeString(office.intake().resolve(name), content)));
    }

    private Process start(String... properties) throws IOException {
        List<String> all = new ArrayList<>(List.of(properties));
        all.add("java.io.tmpdir=" + Files.createDirectories(temporary()));
        return Child.watch(office, said(), all.toArray(String[]::new));
    }

    /** What the computer offers every program for temporary files. */
    private Path temporary() {
        return folder.resolve("temporary");
    }

    private Path said() {
        return folder.resolve("said.txt");
    }

    private int run(String fault) throws Exception {
        return Child.end(start("paperbark.fault=" + fault));
    }

    /** The start that mends is not cut, so it can do without a process of its own. */
    private void startsAgain() {
        Program.run(folder, "watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    private void comesToItsEnd(int claims) throws Exception {
        startsAgain();
        Invariants.hold(office.root(), dropped);
        Invariants.atRest(office.root(), claims);
        assertThat(temporary()).as("nothing is left in the computer's own").isEmptyDirectory();
        assertThat(Invariants.files(office.returned()))
                .filteredOn(f -> f.getFileName().toString().equals("short.csv"))
                .hasSize(1);
    }

    private List<String> state() throws IOException {
        List<String> state = new ArrayList<>();
        for (String place : List.of("intake", "work", "packs", "filed", "returned")) {
            for (Path file : Invariants.files(office.root().resolve(place))) {
                if (file.endsWith(ProvedFiles.NAME)) {
                    // What was proved is remembered anew by each start, of the same files.
                    continue;
                }
                state.add(office.root().relativize(file) + " " + Invariants.sha256(file));
            }
        }
        state.add(Invariants.query(office.root(), "SELECT group_concat(chain_sha256) FROM entry"));
        return state;
    }

    @ParameterizedTest
    @EnumSource(
            value = FaultPoint.class,
            names = {"SORTED", "PLACED"},
            mode = EnumSource.Mode.EXCLUDE)
    void killedAtAnyStepTheNextStartMakesItWhole(FaultPoint point) throws Exception {
        assertThat(run(point.name())).as(Files.readString(said())).isEqualTo(HALTED);
        Invariants.hold(office.root(), dropped);
        comesToItsEnd(2);
    }

    @Test
    void whatAKilledRunHadInTemporaryFilesLiesInTheOfficeUntilTheNextStart() throws Exception {
        assertThat(run("STAGED")).isEqualTo(HALTED);
        assertThat(Invariants.files(office.temporary()))
                .anyMatch(f -> f.getFileName().toString().contains("sqlite"));
        comesToItsEnd(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"PAPER:io:2", "STAGED:io", "IN_TRANSACTION:io", "READ:io"})
    void aDiskThatFailsLeavesTheRegisterInTheIntake(String fault) throws Exception {
        assertThat(run(fault)).as(Files.readString(said())).isEqualTo(22);
        Invariants.hold(office.root(), dropped);
        assertThat(office.intake().resolve("good.csv")).exists();
        comesToItsEnd(2);
    }

    @Test
    void aDiskThatFailsOnceDoesNotEndTheWatch() throws Exception {
        Process process =
                Child.program(
                        List.of("watch", office.root().toString(), "--poll=1", "--quiet-for=0"),
                        said(),
                        "paperbark.fault=STAGED:io",
                        "java.io.tmpdir=" + Files.createDirectories(temporary()));
        try {
            String said = "";
            while (process.isAlive() && !said.contains("The trouble is over")) {
                Thread.sleep(50);
                said = Files.readString(said());
            }
            assertThat(said)
                    .contains("Trouble: No space left on device. Make room on the disk.")
                    .contains("good.csv: All done.");
        } finally {
            process.destroyForcibly().waitFor();
        }
        comesToItsEnd(2);
    }

    /**
     * Proves that the invariants bite: published before it is claimed, a folder can be unclaimed.
     */
    @Test
    void publishedBeforeTheCommitTheHarnessNoticesIt() throws Exception {
        Process process =
                Child.watch(
                        Weakened.PUBLISH_FIRST,
                        office,
                        said(),
                        "paperbark.fault=IN_TRANSACTION",
                        "java.io.tmpdir=" + Files.createDirectories(temporary()));
        assertThat(Child.end(process)).as(Files.readString(said())).isEqualTo(HALTED);
        assertThatThrownBy(() -> Invariants.hold(office.root(), dropped))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("published means claimed");
    }

    @Test
    void killedAtRandomAgainAndAgainNothingIsLostOrClaimedTwice() throws Exception {
        Random random = new Random(47);
        int next = 3;
        int cut = 0;
        for (int i = 0; i < KILLS; i++) {
            Process process = start();
            if (!process.waitFor(200 + random.nextInt(2_500), TimeUnit.MILLISECONDS)) {
                process.destroyForcibly().waitFor();
                cut++;
            }
            Invariants.hold(office.root(), dropped);
            if (i % 4 == 3) {
                drop("more-" + next + ".csv", Offices.register(next));
                next++;
            }
        }
        assertThat(cut).isPositive();
        comesToItsEnd(next - 1);
        List<String> before = state();
        startsAgain();
        assertThat(state()).as("a further start changes nothing").isEqualTo(before);
    }
}
