package paperbark.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import paperbark.outside.Outside;

/** The launcher for Linux and macOS, on the program as people get it. */
@EnabledOnOs({OS.LINUX, OS.MAC})
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class LauncherIT {
    @TempDir private static Path shared;

    private static Unpacked odd;

    @TempDir private Path folder;

    private Unpacked program;

    @BeforeAll
    static void unpack() throws IOException {
        odd = Unpacked.of(Unpacked.packaged(), shared, Unpacked.ODD);
    }

    @BeforeEach
    void begin() {
        program = odd.in(folder);
    }

    @Test
    void itStartsFromAnotherFolderThroughASymbolicLinkWithNoLanguageSet() throws Exception {
        Path first = Files.createDirectories(folder.resolve("bin ü")).resolve("pb");
        Files.createSymbolicLink(first, first.getParent().relativize(program.launcher()));
        Path second = Files.createSymbolicLink(folder.resolve("zweiter"), first);
        Path register = folder.resolve("Wöche.csv");
        Files.writeString(register, "Job,Owner\n");

        Outside.Result version = program.run(second, Path.of("/"), Map.of(), "--version");
        assertThat(version.exitCode()).as(version.err()).isZero();
        assertThat(version.out())
                .isEqualTo("Paperbark " + System.getProperty("program.version") + "\n");
        assertThat(version.err()).isEmpty();

        Outside.Result check = program.run(second, folder, Map.of(), "check", "Wöche.csv");
        assertThat(check.exitCode()).as("no tables: " + check.err()).isEqualTo(23);
        assertThat(check.out()).contains("Wöche.csv > row 1");
    }

    @Test
    void wordsAndExitCodesPassThroughAsTheyAre() throws Exception {
        Outside.Result odd = program.run("rules", "--table", "a  b'\"*$HOME");
        assertThat(odd.exitCode()).isEqualTo(2);
        assertThat(odd.err()).contains("There is no rule table \"a  b'\"*$HOME\".");
        Outside.Result none = program.run();
        assertThat(none.exitCode()).isEqualTo(2);
    }

    @Test
    void messagesNameTheLauncherSoThatTheyCanBePasted() throws Exception {
        Outside.Result wrong = program.run("prepare", "--nonsense");
        String command = wrong.err().lines().reduce((a, b) -> b).orElseThrow();
        String help = command.substring(command.indexOf(": ") + 2);
        assertThat(Outside.run(folder, "sh", "-c", help).out())
                .startsWith("Usage: paperbark prepare");
    }

    @Test
    void aMissingJavaIsSaidInASentence() throws Exception {
        Path nothing = Files.createDirectories(folder.resolve("nothing"));
        Outside.Result run =
                program.run(
                        program.launcher(),
                        folder,
                        Map.of("PATH", nothing.toString()),
                        "--version");
        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.err())
                .contains("Paperbark needs Java 17 or newer. No Java was found.")
                .doesNotContain("not found\n");
    }

    @Test
    void anOldJavaIsNamedAndANewerOneBesideItIsTaken() throws Exception {
        Path old = Files.createDirectories(folder.resolve("old java/bin"));
        Files.writeString(
                old.resolve("java"), "#!/bin/sh\necho 'java version \"1.8.0_401\"' >&2\nexit 1\n");
        assertThat(old.resolve("java").toFile().setExecutable(true)).isTrue();
        String home = old.getParent().toString();
        Path nothing = Files.createDirectories(folder.resolve("tools"));
        for (String tool : List.of("sed", "head")) {
            Files.createSymbolicLink(nothing.resolve(tool), Path.of("/usr/bin", tool));
        }

        Outside.Result alone =
                program.run(
                        program.launcher(),
                        folder,
                        Map.of("PATH", nothing.toString(), "JAVA_HOME", home),
                        "--version");
        assertThat(alone.exitCode()).isEqualTo(23);
        assertThat(alone.err())
                .contains("Java 1.8.0_401 (" + old.resolve("java") + ") is too old.");

        Files.writeString(
                old.getParent().resolve("release"), "OS=\"x\"\nJAVA_VERSION=\"16.0.2\"\n");
        Outside.Result beside =
                program.run(program.launcher(), folder, Map.of("JAVA_HOME", home), "--version");
        assertThat(beside.exitCode()).as(beside.err()).isZero();
    }

    /**
     * Java 17 leaves out what comes from a path with spaces or umlauts, so a plain one is taken.
     */
    @Test
    void setupMakesTheProgramStartFasterAndLeavesStartersThatWork() throws Exception {
        program = Unpacked.of(Unpacked.packaged(), folder, "plain");
        Files.deleteIfExists(program.home().resolve("lib/paperbark.jsa"));
        Outside.Result setup = program.run("setup", "office");
        assertThat(setup.exitCode()).as(setup.err()).isZero();
        assertThat(setup.out())
                .contains("Starters:   ", "start.", "From now on the program starts faster")
                .doesNotContain("java -jar");
        assertThat(program.run("setup", "office").out()).doesNotContain("faster", "Starters:");

        Path loaded = folder.resolve("loaded.txt");
        program.run(
                program.launcher(),
                folder,
                Map.of("PAPERBARK_JAVA_OPTIONS", "-Xlog:class+load=info:file=" + loaded),
                "rules");
        assertThat(Files.readAllLines(loaded))
                .anyMatch(l -> l.endsWith("paperbark.cli.Main source: shared objects file"))
                .anyMatch(l -> l.endsWith("picocli.CommandLine source: shared objects file"))
                .anyMatch(l -> l.endsWith("paperbark.rules.Rulebook source: shared objects file"));

        assertThat(folder.resolve("office/manual/starting.html")).isRegularFile();
        Path stop =
                folder.resolve("office").resolve(OS.MAC.isCurrentOs() ? "stop.command" : "stop.sh");
        Outside.Result stopped = Outside.run(folder, "sh", "-c", "exec \"$0\"", stop.toString());
        assertThat(stopped.exitCode()).as(stopped.err()).isZero();
        assertThat(stopped.out()).contains("Nobody attends");
    }

    @Test
    void aDoubleClickMakesAnOfficeInTheHomeFolder() throws Exception {
        Outside.Result made =
                Outside.run(
                        folder,
                        "sh",
                        "-c",
                        "exec \"$0\" </dev/null",
                        program.home().resolve("new-office.command").toString());
        assertThat(made.exitCode()).as(made.out() + made.err()).isZero();
        assertThat(folder.resolve("Paperbark office/intake")).isDirectory();
    }

    @Test
    void interruptedAndTerminatedItEndsAndLeavesTheFolderFree() throws Exception {
        program.run("setup", "office");
        for (String signal : List.of("INT", "TERM")) {
            Process watch = program.start(program.launcher(), folder, Map.of(), "watch", "office");
            Path status = folder.resolve("office/status.html");
            while (watch.isAlive() && !Files.exists(status)) {
                Thread.sleep(100);
            }
            assertThat(watch.isAlive()).isTrue();
            assertThat(watch.descendants()).as("the launcher has become Java").isEmpty();
            Outside.run(folder, "sh", "-c", "kill -" + signal + " " + watch.pid());

            assertThat(watch.waitFor(1, TimeUnit.MINUTES)).isTrue();
            assertThat(watch.exitValue()).isEqualTo(signal.equals("INT") ? 130 : 143);
            assertThat(program.run("stop", "office").out()).contains("Nobody attends");
            Files.delete(status);
        }
    }

    @Test
    void aKilledCommandLeavesNoLibraryInTheSystemsTemporaryFolder() throws Exception {
        Path temporary = Files.createDirectories(folder.resolve("temporary"));
        program.run("setup", "office");
        Path status = folder.resolve("office/status.html");
        Process watch =
                program.start(
                        program.launcher(),
                        folder,
                        Map.of("PAPERBARK_JAVA_OPTIONS", "-Djava.io.tmpdir=" + temporary),
                        "watch",
                        "office");
        while (watch.isAlive() && !Files.exists(status)) {
            Thread.sleep(100);
        }
        watch.destroyForcibly().waitFor();

        assertThat(status).as("the ledger was opened").isRegularFile();
        for (Path around : List.of(temporary, folder.resolve("office/work"))) {
            try (Stream<Path> left = Files.walk(around)) {
                assertThat(left.filter(Files::isRegularFile)).as("left in " + around).isEmpty();
            }
        }
    }
}
