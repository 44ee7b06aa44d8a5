package paperbark.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.apache.commons.codec.digest.DigestUtils;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.SampleWeek;
import paperbark.cli.ProgramProcess;
import paperbark.office.Offices;

/**
 * A scheme that nobody has goes through the whole program, with no more than the recipe in
 * DEVELOPERS.md asks for: what it adds lies in {@code src/test/resources/made-up-scheme}. An enum
 * cannot grow while a program runs, so the sources with a new line are compiled anew and put in
 * front of the others.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class MadeUpSchemeTest {
    private static final Path MAIN = Path.of("src/main/java/paperbark").toAbsolutePath();
    private static final Path RESOURCES = Path.of("src/main/resources").toAbsolutePath();
    private static final Path ADDED = Path.of("src/test/resources/made-up-scheme").toAbsolutePath();
    private static final int FEWEST_THAT_NAME_A_SCHEME = 8;

    @TempDir private static Path program;
    @TempDir private static Path office;

    @BeforeAll
    static void addTheSchemeAndPrepareTheWeek() throws Exception {
        addTheScheme();
        Files.createDirectories(office.resolve("tables"));
        Offices.copy(SampleWeek.TABLES, office.resolve("tables"));
        append(
                office.resolve("tables/columns.csv"),
                Files.readString(ADDED.resolve("columns.csv")));
        append(
                office.resolve("tables/offers.csv"),
                "Whimbrel Exchange,PEBBLE,2026-11-01,2026-11-30,10.00,included,,,,,14,,,either,\n");
        Files.writeString(
                office.resolve("week.csv"),
                register(SampleWeek.only("SB-1101", "SB-1102").replace("3654.00", "3634.00")));
        run("ledger-new");
    }

    @Test
    @Order(1)
    void theWeekIsPreparedWithItsPaperAndItsClaim() throws Exception {
        String said = run("prepare", "week.csv", "--ledger", "paperbark.db", "--out", "packs");

        assertThat(said).contains("Jobs:         2, held: 0").contains("PEBBLE");
        Path batch = office.resolve("packs/2026-11-23-week");
        String pack = text(batch, "SB-1101");
        assertThat(pack)
                .contains("Assignment of certificates (PEBBLE)", "Whimbrel Exchange")
                .contains("PEBBLE: pebble certificates", "270 / 50")
                .contains("Less the value of assigning 5 pebble certificates (PEBBLEs)");
        assertThat(text(batch, "SB-1102")).doesNotContain("(PEBBLE)");
        assertThat(said).doesNotContain("amounts-differ");
    }

    @Test
    @Order(2)
    void itsClaimIsExplainedLikeAnyOther() throws Exception {
        assertThat(run("explain", "week.csv", "SB-1101"))
                .contains("PEBBLEs for this job", "270 / 50");
    }

    @Test
    @Order(3)
    void itsPaymentIsSettledAndThenNoLongerOwed() throws Exception {
        assertThat(run("owed", "--as-of", "2027-02-01")).contains("SB-1101-PEBBLE");
        Files.writeString(
                office.resolve("advice.csv"),
                "Your ref,Type,Date,Amount paid\nSB-1101-PEBBLE,PEBBLE,23/11/2026,50.00\n");

        assertThat(run("settle", "advice.csv")).contains("matched:      1");

        assertThat(run("owed", "--as-of", "2027-02-01"))
                .contains("SB-1101-STC")
                .doesNotContain("SB-1101-PEBBLE");
        assertThat(run("quarters", "--as-of", "2027-02-01")).contains("PEBBLEs");
    }

    @Test
    void hardlyAnyFileOutsideTheRoomOfTheSchemesNamesOne() throws IOException {
        try (Stream<Path> files = Files.walk(MAIN)) {
            List<String> naming =
                    files.filter(f -> f.toString().endsWith(".java"))
                            .filter(f -> !f.startsWith(MAIN.resolve("entitlement")))
                            .filter(MadeUpSchemeTest::namesAScheme)
                            .map(f -> MAIN.relativize(f).toString())
                            .toList();
            assertThat(naming).hasSizeLessThan(FEWEST_THAT_NAME_A_SCHEME);
        }
    }

    private static boolean namesAScheme(Path file) {
        try {
            return Files.readString(file)
                    .lines()
                    .anyMatch(l -> l.matches(".*(\\b(STC|VEEC)\\b|stc\\(\\)|veec\\(\\)).*"));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** The recipe, step by step. */
    private static void addTheScheme() throws IOException {
        Path sources = program.resolve("sources");
        patched(
                sources,
                "value/SchemeName.java",
                "Optional.of(State.VIC));",
                "Optional.of(State.VIC)),\n"
                        + "    PEBBLE(\"PEBBLE\", \"pebble certificate\", Optional.empty());");
        patched(
                sources,
                "entitlement/Schemes.java",
                "new VeecScheme()",
                "new VeecScheme(), new PebbleScheme()");
        patched(
                sources,
                "rules/RulebookLoader.java",
                " files);",
                " settings(PebbleFigure.LAYOUT, PebbleFigure.class), files);");
        patched(
                sources,
                "rules/Rulebook.java",
                "        List<TableFile> tables) {",
                "        RuleTable<PebbleFigure, Setting> pebbles,\n"
                        + "        List<TableFile> tables) {");
        patched(sources, "rules/Rulebook.java", "List.of(", "List.of(pebbles, ");
        copy("PebbleScheme.java.txt", sources.resolve("entitlement/PebbleScheme.java"));
        copy("PebbleFigure.java.txt", sources.resolve("rules/PebbleFigure.java"));
        Path classes = program.resolve("classes");
        copy("figures.csv", classes.resolve("rules/pebble/figures.csv"));
        copy("default.ftlh", classes.resolve("templates/pebble/default.ftlh"));
        Path checksums = classes.resolve("rules/checksums.csv");
        Files.copy(RESOURCES.resolve("rules/checksums.csv"), checksums);
        append(
                checksums,
                "pebble/figures.csv,"
                        + DigestUtils.sha256Hex(Files.readAllBytes(ADDED.resolve("figures.csv")))
                        + "\n");
        compile(sources, classes);
    }

    private static void patched(Path sources, String file, String before, String after)
            throws IOException {
        Path target = sources.resolve(file);
        String text = Files.readString(Files.exists(target) ? target : MAIN.resolve(file));
        assertThat(text).as(file).containsOnlyOnce(before);
        Files.createDirectories(target.getParent());
        Files.writeString(target, text.replace(before, after));
    }

    private static void copy(String added, Path target) throws IOException {
        Files.createDirectories(target.getParent());
        Files.copy(ADDED.resolve(added), target);
    }

    private static void append(Path file, String lines) throws IOException {
        String text = Files.readString(file);
        Files.writeString(file, text + (text.endsWith("\n") ? "" : "\n") + lines);
    }

    private static void compile(Path sources, Path classes) throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (Stream<Path> files = Files.walk(sources);
                StandardJavaFileManager manager =
                        compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
            List<Path> all = files.filter(f -> f.toString().endsWith(".java")).toList();
            List<String> options =
                    List.of("-proc:none", "-d", classes.toString(), "-cp", classPath());
            assertThat(
                            compiler.getTask(
                                            null,
                                            manager,
                                            null,
                                            options,
                                            null,
                                            manager.getJavaFileObjectsFromPaths(all))
                                    .call())
                    .isTrue();
        }
    }

    private static String classPath() {
        return System.getProperty(
                "surefire.test.class.path", System.getProperty("java.class.path"));
    }

    /** The sample rows with the columns of the scheme, which only SB-1101 claims under. */
    private static String register(String rows) {
        return rows.lines()
                .map(
                        line ->
                                line
                                        + (line.startsWith("SB-1101")
                                                ? ",yes,Whimbrel Exchange,5,20.00"
                                                : line.startsWith("SB-")
                                                        ? ",no,,,"
                                                        : ",Pebbles?,Pebbles to,Pebble qty,Pebble value"))
                .collect(Collectors.joining("\n", "", "\n"));
    }

    private static String run(String... words) throws IOException, InterruptedException {
        List<String> command =
                new ArrayList<>(
                        List.of(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-XX:TieredStopAtLevel=1",
                                "-cp",
                                program.resolve("classes")
                                        + java.io.File.pathSeparator
                                        + classPath(),
                                ProgramProcess.class.getName()));
        command.addAll(List.of(words));
        Path said = Files.createTempFile(program, "said", ".txt");
        Process process =
                new ProcessBuilder(command)
                        .directory(office.toFile())
                        .redirectErrorStream(true)
                        .redirectOutput(said.toFile())
                        .start();
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        String text = Files.readString(said);
        assertThat(process.exitValue()).as(text).isIn(0, 10);
        return text;
    }

    private static String text(Path batch, String job) throws IOException {
        try (Stream<Path> files = Files.walk(batch)) {
            Path pack =
                    files.filter(f -> f.getFileName().toString().startsWith(job))
                            .filter(f -> f.toString().endsWith(".pdf"))
                            .findFirst()
                            .orElseThrow();
            try (PDDocument document = Loader.loadPDF(pack.toFile())) {
                return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            }
        }
    }
}
