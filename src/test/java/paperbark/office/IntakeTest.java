package paperbark.office;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.cli.Program;
import paperbark.cli.ProgramProcess;

/** What waits in the intake, why, and who may read what comes of it. */
class IntakeTest {
    private static final Instant NOW = Instant.parse("2026-11-23T12:00:00Z");

    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
    }

    private Path drop(String name) throws IOException {
        return aged(
                Files.writeString(office.intake().resolve(name), Offices.register(1)),
                Duration.ofMinutes(5));
    }

    private static Path aged(Path file, Duration age) throws IOException {
        return Files.setLastModifiedTime(file, FileTime.from(NOW.minus(age)));
    }

    private Program.Run watchOnce() {
        return Program.run(
                NOW, folder, "watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    @ParameterizedTest
    @ValueSource(strings = {"~$week.csv", ".~lock.week.csv#"})
    void aRegisterThatIsOpenElsewhereIsNamedAndNotAllIsDone(String lock) throws IOException {
        drop("week.csv");
        aged(Files.createFile(office.intake().resolve(lock)), Duration.ofHours(23));
        Program.Run run = watchOnce();
        assertThat(run.out()).contains("week.csv waits. It is open in another program.");
        assertThat(run.exitCode()).isEqualTo(20);
    }

    @ParameterizedTest
    @ValueSource(strings = {"~$week.csv", ".~lock.week.csv#"})
    void aLockThatACrashedProgramLeftIsNoneAfterADay(String lock) throws IOException {
        drop("week.csv");
        aged(Files.createFile(office.intake().resolve(lock)), Duration.ofHours(25));
        Program.Run run = watchOnce();
        assertThat(run.out()).contains("packs/2026-11-23-week").doesNotContain("waits");
        assertThat(run.exitCode()).isZero();
    }

    @Test
    @Tag("slow")
    void withoutALanguageSetOneNameKeepsNoOtherFileWaiting() throws Exception {
        drop("B\u00fcro week.csv");
        drop("plain.csv");
        Path said = folder.resolve("said.txt");
        List<String> command =
                new ArrayList<>(
                        List.of(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-XX:TieredStopAtLevel=1",
                                "-Dsun.jnu.encoding=ANSI_X3.4-1968",
                                "-Dfile.encoding=ANSI_X3.4-1968",
                                "-cp",
                                System.getProperty(
                                        "surefire.test.class.path",
                                        System.getProperty("java.class.path")),
                                ProgramProcess.class.getName()));
        command.addAll(List.of("watch", office.root().toString(), "--once", "--quiet-for", "0"));
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile());
        builder.environment().remove("LANG");
        builder.environment().put("LC_ALL", "C");
        int exit = builder.start().waitFor();
        String text = Files.readString(said, UTF_8);
        assertThat(exit).as(text).isEqualTo(20);
        assertThat(text)
                .contains("packs/2026-11-23-plain", "ro week.csv waits", "LC_ALL=C.UTF-8")
                .doesNotContain("Exception");
        try (Stream<Path> left = Files.list(office.intake())) {
            assertThat(left).hasSize(1);
        }
    }

    @Test
    void umlautsAndBracketsStayInTheNamesOfFolders() throws IOException {
        drop("B\u00fcro (new) [2].csv");
        watchOnce();
        assertThat(office.packs().resolve("2026-11-23-B\u00fcro-(new)-[2]")).isDirectory();
    }

    @ParameterizedTest
    @CsvSource({"rwx------, rw-------", "rwxr-x---, rw-r-----", "rwxrwx---, rw-rw----"})
    void theRightsOfTheOfficeFolderDecideForAllThatIsMade(String folders, String files)
            throws IOException {
        Path root = Files.createDirectory(folder.resolve("share"));
        Files.setPosixFilePermissions(root, PosixFilePermissions.fromString(folders));
        Path made = Offices.make(root).root();
        office = new Office(made);
        drop("week.csv");
        assertThat(watchOnce().exitCode()).isZero();
        try (Stream<Path> all =
                Stream.of("packs", "filed", "work", "backups")
                        .map(made::resolve)
                        .filter(Files::exists)
                        .flatMap(IntakeTest::below)) {
            assertThat(all)
                    .isNotEmpty()
                    .filteredOn(path -> !path.getFileName().toString().equals(".lock"))
                    .allSatisfy(
                            path ->
                                    assertThat(rights(path))
                                            .as(path.toString())
                                            .isEqualTo(Files.isDirectory(path) ? folders : files));
        }
    }

    private static Stream<Path> below(Path folder) {
        try {
            return Files.walk(folder);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static String rights(Path path) {
        try {
            return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void whatSetupMakesIsPrivateAndDoctorSaysWhoMayRead() throws IOException {
        Program.run(NOW, folder, "setup", "own");
        assertThat(rights(folder.resolve("own"))).isEqualTo("rwx------");
        assertThat(rights(folder.resolve("own/tables/firm.csv"))).isEqualTo("rw-------");
        assertThat(Program.run(NOW, folder, "doctor", "own").out())
                .contains("what is made here can be read by you alone");
        Files.setPosixFilePermissions(
                folder.resolve("own"), PosixFilePermissions.fromString("rwxr-xr-x"));
        assertThat(Program.run(NOW, folder, "doctor", "own").out())
                .contains("by everybody on this computer too");
        assertThat(new File(folder.toFile(), "own")).exists();
    }
}
