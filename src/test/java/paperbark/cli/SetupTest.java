package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An office folder made by {@code setup} runs at once, and nothing in it is ever overwritten. */
class SetupTest {
    @TempDir private Path directory;

    private Map<String, String> contents() throws IOException {
        Map<String, String> all = new TreeMap<>();
        Path office = directory.resolve("office");
        try (Stream<Path> files = Files.walk(office)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                all.put(
                        office.relativize(file).toString().replace('\\', '/'),
                        Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1));
            }
        }
        return all;
    }

    private static Map<String, String> below(Path folder, String prefix) throws IOException {
        Map<String, String> all = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                all.put(
                        prefix + folder.relativize(file).toString().replace('\\', '/'),
                        Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1));
            }
        }
        return all;
    }

    @Test
    void aNewFolderHoldsTheShippedTemplatesTheSampleTablesAndWhatElseAnOfficeNeeds()
            throws IOException {
        Program.Run run = Program.run(directory, "setup", "office");

        assertThat(run.exitCode()).as(run.err()).isZero();
        for (String name :
                new String[] {
                    "intake", "scans", "photos", "packs", "returned", "filed", "templates", "tables"
                }) {
            assertThat(directory.resolve("office").resolve(name)).isDirectory();
        }
        Map<String, String> expected = below(Path.of("templates"), "templates/");
        expected.keySet()
                .removeIf(
                        name ->
                                name.matches(
                                        "templates/(index\\.|status|week|scans|send|bundle|typing).*"));
        expected.putAll(below(Path.of("input-samples/tables"), "tables/"));
        Map<String, String> contents = contents();
        assertThat(contents).containsAllEntriesOf(expected);
        contents.keySet().removeAll(expected.keySet());
        assertThat(contents).containsKey("manual/starting.html");
        contents.keySet().removeIf(name -> name.startsWith("manual/"));
        assertThat(contents)
                .containsOnlyKeys(
                        "guide.pdf",
                        "paperbark.db",
                        "paperbark.key",
                        "photos/HOW-TO.txt",
                        "sample-register.xlsx",
                        "tables/SAMPLE-TABLES.txt");
        assertThat(run.out())
                .contains(
                        "guide.pdf",
                        "The tables are a sample firm's.",
                        "prepare "
                                + directory.resolve("office/sample-register.xlsx")
                                + " --as-of 2026-11-23");
    }

    @Test
    void theNoteBesideTheTablesNamesEachOfThem() throws IOException {
        Program.run(directory, "setup", "office");

        String note = Files.readString(directory.resolve("office/tables/SAMPLE-TABLES.txt"));
        try (Stream<Path> tables = Files.list(Path.of("input-samples/tables"))) {
            assertThat(tables.map(t -> t.getFileName().toString()))
                    .allSatisfy(name -> assertThat(note).contains(name));
        }
    }

    @Test
    void whereTheLedgerIsOnAServerNoneIsMadeInAFile() throws IOException {
        Path office = Files.createDirectory(directory.resolve("office"));
        Files.writeString(office.resolve("ledger.txt"), "jdbc:postgresql://server.example/ledger");
        Program.Run run = Program.run(directory, "setup", "office");

        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("Kept as is: ledger.txt");
        assertThat(office.resolve("paperbark.db")).doesNotExist();
    }

    @Test
    void theSampleRegisterIsReadWithTheTablesBesideIt() {
        Program.run(directory, "setup", "office");
        Path office = directory.resolve("office");
        Program.Run run = Program.run(office, "check", "sample-register.xlsx");

        assertThat(run.exitCode()).as("its honest mistakes hold some jobs").isEqualTo(10);
        assertThat(run.out()).contains("Jobs:         40");
    }

    @Test
    void aRegisterInTheIntakeTakesTheOfficesTablesAndTemplates() throws IOException {
        Program.run(directory, "setup", "office");
        Path office = directory.resolve("office");
        Files.writeString(
                office.resolve("templates/cover/default.ftlh"), "<section>Our own cover</section>");
        Files.writeString(
                office.resolve("intake/week.csv"),
                """
                Job,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model,Stage,Claim STCs
                T-1,Ada Amberwood,4 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,booked,yes
                """);

        assertThat(Program.run(office, "prepare", "intake/week.csv").exitCode()).isZero();
        assertThat(Program.run(office, "check", "intake/week.csv").exitCode()).isZero();

        byte[] pack = Files.readAllBytes(office.resolve("packs/2026-11-23-week/packs/T-1.pdf"));
        try (PDDocument document = Loader.loadPDF(pack)) {
            assertThat(new PDFTextStripper().getText(document)).contains("Our own cover");
        }
        assertThat(office.resolve("returned/week-checked.xlsx")).isRegularFile();
        try (Stream<Path> intake = Files.list(office.resolve("intake"))) {
            assertThat(intake).containsExactly(office.resolve("intake/week.csv"));
        }
    }

    @Test
    void theGuideIsOnePageThatNamesEveryFolderAndEveryWord() throws IOException {
        Program.run(directory, "setup", "office");
        byte[] guide = Files.readAllBytes(directory.resolve("office/guide.pdf"));

        try (PDDocument document = Loader.loadPDF(guide)) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            assertThat(new PDFTextStripper().getText(document))
                    .contains("intake", "packs", "returned", "filed", "tables", "templates")
                    .contains("STOP", "CHECK", "note", "print-run.pdf", "register-checked.xlsx")
                    .contains("Whom to ask", "23 Nov 2026");
        }
    }

    @Test
    void aSecondRunChangesNothingAndSaysSo() throws IOException {
        Program.run(directory, "setup", "office");
        Map<String, String> before = contents();
        Program.Run run = Program.run(directory, "setup", "office");

        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("Nothing was missing.").doesNotContain("Made:");
        assertThat(contents()).isEqualTo(before);
    }

    @Test
    void aSecondRunCompletesWhatIsMissingAndLeavesWhatTheFirmChanged() throws IOException {
        Program.run(directory, "setup", "office");
        Path office = directory.resolve("office");
        Files.writeString(office.resolve("templates/cover/default.ftlh"), "ours");
        Files.delete(office.resolve("templates/parts.ftlh"));
        Files.delete(office.resolve("filed"));
        Program.Run run = Program.run(directory, "setup", "office");

        assertThat(run.out()).contains("Made:       filed/, templates/parts.ftlh");
        assertThat(office.resolve("templates/cover/default.ftlh")).hasContent("ours");
        assertThat(office.resolve("filed")).isDirectory();
    }

    @Test
    void sampleTablesNeverComeBesideTheFirmsOwn() throws IOException {
        Path tables = Files.createDirectories(directory.resolve("office/tables"));
        Files.writeString(tables.resolve("firm.csv"), "fact,value\nname,Ours\n");
        Program.Run run = Program.run(directory, "setup", "office");

        assertThat(tables).isDirectoryNotContaining("glob:**products.csv");
        assertThat(tables.resolve("firm.csv")).hasContent("fact,value\nname,Ours\n");
        assertThat(run.out()).contains("Left out:", "do not belong beside yours");
    }

    @Test
    void aFileInThePlaceOfTheFolderIsToldAndLeftAlone() throws IOException {
        Files.writeString(directory.resolve("office"), "a file");
        Program.Run run = Program.run(directory, "setup", "office");

        assertThat(run.exitCode()).isEqualTo(22);
        assertThat(directory.resolve("office")).hasContent("a file");
    }
}
