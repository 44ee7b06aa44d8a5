package paperbark.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.outside.Outside;

/** What is in the archive that people get. */
class PackageIT {
    private static final int MAY_BE_STARTED = 0111;

    @TempDir private Path folder;

    private static Path zip() {
        Path program = Unpacked.packaged();
        return program.resolveSibling(program.getFileName() + ".zip");
    }

    private static Map<String, byte[]> files() throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (ZipFile zip = ZipFile.builder().setPath(zip()).get()) {
            for (ZipArchiveEntry entry : java.util.Collections.list(zip.getEntries())) {
                if (!entry.isDirectory()) {
                    files.put(entry.getName(), zip.getInputStream(entry).readAllBytes());
                }
            }
        }
        return files;
    }

    @Test
    void theBillOfMaterialsListsWhatIsInTheJarAndNoLibraryOfTheTests() throws IOException {
        JsonNode bill = new ObjectMapper().readTree(Files.readAllBytes(Path.of("target/bom.json")));
        List<String> listed = new ArrayList<>();
        bill.path("components")
                .forEach(
                        c ->
                                listed.add(
                                        c.path("name").asText()
                                                + "-"
                                                + c.path("version").asText()));
        List<String> there =
                Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
                        .map(path -> Path.of(path).getFileName().toString())
                        .filter(name -> name.endsWith(".jar"))
                        .map(name -> name.replaceFirst("\\.jar$", ""))
                        .toList();
        assertThat(listed)
                .hasSizeGreaterThan(40)
                .allMatch(library -> there.stream().anyMatch(jar -> jar.startsWith(library)))
                .anyMatch(library -> library.startsWith("sqlite-jdbc-"))
                .noneMatch(library -> library.matches("(junit|assertj|archunit|jqwik|jazzer).*"));
    }

    @Test
    void theZipHoldsLaunchersProgramTemplatesSamplesAndManual() throws IOException {
        String top = Unpacked.packaged().getFileName() + "/";
        Map<String, byte[]> files = files();

        assertThat(files.keySet())
                .allMatch(name -> name.startsWith(top))
                .contains(
                        top + "paperbark",
                        top + "paperbark.cmd",
                        top + "new-office.command",
                        top + "new-office.cmd",
                        top + "lib/paperbark.jar",
                        top + "manual/starting.html",
                        top + "samples/week-47.xlsx",
                        top + "LICENSE")
                .noneMatch(name -> name.endsWith(".jsa"));
        try (Stream<Path> templates = Files.walk(Path.of("templates"))) {
            for (Path template : templates.filter(Files::isRegularFile).toList()) {
                assertThat(files.get(top + template)).isEqualTo(Files.readAllBytes(template));
            }
        }
        try (ZipFile zip = ZipFile.builder().setPath(zip()).get()) {
            assertThat(zip.getEntry(top + "paperbark").getUnixMode() & MAY_BE_STARTED)
                    .isEqualTo(MAY_BE_STARTED);
            assertThat(zip.getEntry(top + "LICENSE").getUnixMode() & MAY_BE_STARTED).isZero();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"paperbark.cmd", "new-office.cmd"})
    void whatWindowsRunsIsPlainAndKnowsAllItsLabels(String name) throws IOException {
        String text =
                new String(
                        Files.readAllBytes(Unpacked.packaged().resolve(name)),
                        StandardCharsets.ISO_8859_1);

        assertThat(text.chars()).allMatch(c -> c < 0x7f);
        assertThat(text.replace("\r\n", "")).doesNotContain("\n", "\r");
        Matcher jumps = Pattern.compile("(?:goto |call :)(\\w+)").matcher(text);
        while (jumps.find()) {
            assertThat(text).contains("\r\n:" + jumps.group(1) + "\r\n");
        }
        assertThat(text.lines().filter(line -> line.startsWith("\"%JAVA%\"")).count())
                .isEqualTo(name.equals("paperbark.cmd") ? 1 : 0);
    }

    @Test
    void bothLaunchersGiveJavaTheSameWords() throws IOException {
        String[] words = {
            "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Dsun.reflect.inflationThreshold=2147483647",
            "-XX:+IgnoreUnrecognizedVMOptions -XX:+UnlockDiagnosticVMOptions -XX:ArchiveRelocationMode=0",
            "-Xms384m -Xmn200m",
            "-Xshare:auto -Xlog:disable -Xlog:all=error:stderr",
            "-Dpaperbark.home=",
            "-Dpaperbark.launcher="
        };
        for (String name : new String[] {"paperbark", "paperbark.cmd"}) {
            assertThat(Files.readString(Unpacked.packaged().resolve(name))).contains(words);
        }
    }

    /** The first of the README's commands builds; what follows it is tried on what was built. */
    @Test
    void theFirstCommandOfTheReadmePreparesTheSampleWeek() throws Exception {
        String readme = Files.readString(Path.of("README.md"));
        Matcher command =
                Pattern.compile("(?m)^mvn -q -DskipTests package && (target/paperbark-.*)$")
                        .matcher(readme);
        assertThat(command.find()).isTrue();
        String there = command.group(1).replace("--out target/", "--out " + folder + "/");
        assertThat(there).contains(folder.toString());
        Outside.Result run =
                Outside.run(
                        folder,
                        "sh",
                        "-c",
                        "cd '" + Path.of("").toAbsolutePath() + "' && " + there);

        assertThat(run.exitCode()).as(run.out() + run.err()).isEqualTo(10);
        assertThat(folder.resolve("sample-week/2026-11-23-week-47/index.html")).isRegularFile();
        assertThat(Outside.run(folder, "sh", "-c", again(there)).exitCode()).isEqualTo(10);
        assertThat(digests("again")).hasSizeGreaterThan(40).isEqualTo(digests("sample-week"));
    }

    // What goes through a set in an order of this one process shows only beside another process.
    private static String again(String command) {
        return "cd '"
                + Path.of("").toAbsolutePath()
                + "' && "
                + command.replace("/sample-week", "/again");
    }

    private Map<String, String> digests(String run) throws IOException {
        Map<String, String> digests = new TreeMap<>();
        Path top = folder.resolve(run);
        try (Stream<Path> files = Files.walk(top)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                digests.put(
                        top.relativize(file).toString(),
                        DigestUtils.sha256Hex(Files.readAllBytes(file)));
            }
        }
        digests.keySet().removeIf(name -> name.startsWith("."));
        return digests;
    }

    // shellcheck of Debian as the judge of a POSIX shell script.
    @ParameterizedTest
    @ValueSource(strings = {"paperbark", "new-office.command"})
    @Tag("outside")
    void theScriptsAreSound(String name) {
        Outside.Result checked =
                Outside.run(folder, "shellcheck", Unpacked.packaged().resolve(name).toString());
        assertThat(checked.exitCode()).as(checked.out()).isZero();
    }
}
