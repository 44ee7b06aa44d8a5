package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.cli.ProgramProcess;
import paperbark.fault.FaultPoint;

/**
 * The program is killed, at every step and at random; after the next start the office is as if
 * nothing had happened. {@code -Dcut.kills=200} sets how many random kills there are.
 */
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

    private Process start(String fault) throws IOException {
        List<String> command =
                new ArrayList<>(
                        List.of(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-XX:TieredStopAtLevel=1",
                                "-Xshare:auto",
                                "-Xmx512m"));
        if (!fault.isEmpty()) {
            command.add("-Dpaperbark.fault=" + fault);
        }
        command.addAll(
                List.of(
                        "-cp",
                        System.getProperty(
                                "surefire.test.class.path", System.getProperty("java.class.path")),
                        ProgramProcess.class.getName(),
                        "watch",
                        office.root().toString(),
                        "--once",
                        "--quiet-for",
                        "0"));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(new File(folder.toFile(), "said.txt"))
                .start();
    }

    private int run(String fault) throws Exception {
        Process process = start(fault);
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        return process.exitValue();
    }

    private void comesToItsEnd(int claims) throws Exception {
        run("");
        Invariants.hold(office.root(), dropped);
        Invariants.atRest(office.root(), claims);
        assertThat(Invariants.files(office.returned()))
                .filteredOn(f -> f.getFileName().toString().equals("short.csv"))
                .hasSize(1);
    }

    private List<String> state() throws IOException {
        List<String> state = new ArrayList<>();
        for (String place : List.of("intake", "work", "packs", "filed", "returned")) {
            for (Path file : Invariants.files(office.root().resolve(place))) {
                state.add(office.root().relativize(file) + " " + Invariants.sha256(file));
            }
        }
        state.add(Invariants.query(office.root(), "SELECT group_concat(chain_sha256) FROM entry"));
        return state;
    }

    @ParameterizedTest
    @EnumSource(FaultPoint.class)
    void killedAtAnyStepTheNextStartMakesItWhole(FaultPoint point) throws Exception {
        assertThat(run(point.name()))
                .as(Files.readString(folder.resolve("said.txt")))
                .isEqualTo(HALTED);
        Invariants.hold(office.root(), dropped);
        comesToItsEnd(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"PAPER:io:2", "STAGED:io", "IN_TRANSACTION:io", "READ:io"})
    void aDiskThatFailsLeavesTheRegisterInTheIntake(String fault) throws Exception {
        assertThat(run(fault)).as(Files.readString(folder.resolve("said.txt"))).isEqualTo(22);
        Invariants.hold(office.root(), dropped);
        assertThat(office.intake().resolve("good.csv")).exists();
        comesToItsEnd(2);
    }

    @Test
    void killedAtRandomAgainAndAgainNothingIsLostOrClaimedTwice() throws Exception {
        Random random = new Random(47);
        int next = 3;
        int cut = 0;
        for (int i = 0; i < KILLS; i++) {
            Process process = start("");
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
        run("");
        assertThat(state()).as("a further start changes nothing").isEqualTo(before);
    }
}
