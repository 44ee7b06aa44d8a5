package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MainTest {
    private static final String TABLES =
            Path.of("input-samples/tables").toAbsolutePath().toString();

    @TempDir private Path directory;

    @BeforeEach
    void writeARegister() throws IOException {
        Files.writeString(
                directory.resolve("week.csv"),
                """
                Job,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model,Stage,Visit date,Claim STCs
                T-1,Ada Amberwood,4 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,booked,25/11/2026,yes
                """);
    }

    @Test
    void aSoundRegisterEndsWithZeroAndSaysWhereEverythingIs() {
        Program.Run run = Program.run(directory, "prepare", "week.csv", "--tables", TABLES);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(run.out())
                .contains(
                        "All done.",
                        "Jobs:         1, held: 0",
                        "Packs:        1",
                        "14 STCs",
                        directory.resolve("packs/2026-11-23-week").toString());
        assertThat(directory.resolve("packs/2026-11-23-week/packs/T-1.pdf")).isRegularFile();
    }

    @Test
    void aSecondRunEndsWithTwelve() {
        Program.run(directory, "prepare", "week.csv", "--tables", TABLES);
        Program.Run run = Program.run(directory, "prepare", "week.csv", "--tables", TABLES);
        assertThat(run.exitCode()).isEqualTo(12);
        assertThat(run.out()).contains("already prepared", "2026-11-23-week");
    }

    @Test
    void aHeldJobEndsWithTen() throws IOException {
        Files.writeString(
                directory.resolve("week.csv"),
                Files.readString(directory.resolve("week.csv")).replace("D270-A", "D270A"));
        Program.Run run = Program.run(directory, "prepare", "week.csv", "--tables", TABLES);
        assertThat(run.exitCode()).isEqualTo(10);
        assertThat(run.out())
                .contains(
                        "stop T-1: week.csv > H2 \"Model\"  [model-unknown]",
                        "Do: Type \"D270-A\" if that is meant");
    }

    @Test
    void aStopThatHoldsNoPaperOfTheJobIsOnlyACheck() throws IOException {
        Files.writeString(
                directory.resolve("week.csv"),
                """
                Job,Owner,Owner's ABN,Site street,Site suburb,Site state,Site postcode,Maker,Model,Claim STCs
                T-1,Ada Amberwood,99 000 000 001,4 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,no
                """);
        Program.Run run = Program.run(directory, "check", "week.csv", "--tables", TABLES);
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("check T-1: week.csv > C2", "[abn-wrong]");
    }

    @Test
    void aRefusedRegisterEndsWithElevenAndPublishesNothing() throws IOException {
        Files.writeString(directory.resolve("week.csv"), "Apples,Pears\n1,2\n");
        Program.Run run = Program.run(directory, "prepare", "week.csv", "--tables", TABLES);
        assertThat(run.exitCode()).isEqualTo(11);
        assertThat(run.out()).contains("[headings-not-found]", "nothing was published");
        try (Stream<Path> all = Files.list(directory)) {
            assertThat(all).containsExactly(directory.resolve("week.csv"));
        }
    }

    @Test
    void checkingWritesOnlyTheMarkedCopy() throws IOException {
        Program.Run run = Program.run(directory, "check", "week.csv", "--tables", TABLES);
        assertThat(run.exitCode()).as(run.out()).isZero();
        try (Stream<Path> all = Files.list(directory)) {
            assertThat(all)
                    .containsExactlyInAnyOrder(
                            directory.resolve("week.csv"), directory.resolve("week-checked.xlsx"));
        }
        assertThat(run.out()).doesNotContain("Packs:");
    }

    @Test
    void anEarlierMarkedCopyInWhichSomebodyWorkedStays() throws IOException {
        Path first = directory.resolve("week-checked.xlsx");
        Path second = directory.resolve("week-checked-2.xlsx");
        String[] check = {"check", "week.csv", "--tables", TABLES};
        Program.run(directory, check);
        byte[] asWritten = Files.readAllBytes(first);
        assertThat(Program.run(directory, check).out()).contains("Result:       " + first);
        assertThat(second).as("the same once more needs no second file").doesNotExist();

        Files.writeString(first, "mended in the copy");
        assertThat(Program.run(directory, check).out()).contains("Result:       " + second);
        assertThat(first).hasContent("mended in the copy");
        assertThat(second).hasBinaryContent(asWritten);
    }

    @Test
    void machinesGetJson() throws IOException {
        Files.writeString(
                directory.resolve("week.csv"),
                Files.readString(directory.resolve("week.csv")).replace("3342", "2331"));
        Program.Run run = Program.run(directory, "check", "week.csv", "--tables", TABLES, "--json");
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(json.get("exitCode").asInt()).isEqualTo(run.exitCode());
        JsonNode finding = json.get("findings").get(0);
        assertThat(finding.get("code").asText()).isEqualTo("postcode-of-other-state");
        assertThat(finding.get("cell").asText()).isEqualTo("F2");
        assertThat(finding.get("rule").asText()).contains("postcode-states.csv");
    }

    @Test
    void wrongUsageEndsWithTwo() {
        assertThat(Program.run(directory).exitCode()).isEqualTo(2);
        assertThat(Program.run(directory, "bake").exitCode()).isEqualTo(2);
        assertThat(Program.run(directory, "prepare").exitCode()).isEqualTo(2);
        Program.Run run = Program.run(directory, "prepare", "week.csv", "--as-of", "31/11/2026");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("\"31/11/2026\" is no day");
    }

    @Test
    void tablesThatAreNotThereEndWithTwentyThree() {
        Program.Run run = Program.run(directory, "prepare", "week.csv");
        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.out()).contains("[table-missing]");
    }

    @Test
    void aTableWithoutTheFirmsNumberEndsWithTwentyThree() throws IOException {
        copyTables();
        Files.writeString(directory.resolve("tables/firm.csv"), "fact,value\nname,Saltmarsh\n");
        assertThat(Program.run(directory, "prepare", "week.csv").exitCode()).isEqualTo(23);
    }

    @Test
    void aShortRowOfATableIsLeftOutAndTheWeekGoesOn() throws IOException {
        copyTables();
        Path sellers = directory.resolve("tables/sellers.csv");
        Files.writeString(sellers, Files.readString(sellers) + "Extra Seller Pty Ltd\n");
        Program.Run run = Program.run(directory, "prepare", "week.csv");
        assertThat(run.exitCode()).as(run.out()).isZero();
        assertThat(run.out()).contains("[table-row-wrong]");
    }

    private void copyTables() throws IOException {
        Files.createDirectories(directory.resolve("tables"));
        try (Stream<Path> tables = Files.list(Path.of(TABLES))) {
            for (Path table : tables.filter(Files::isRegularFile).toList()) {
                Files.copy(table, directory.resolve("tables").resolve(table.getFileName()));
            }
        }
    }

    @Test
    void ruleTablesThatCannotBeUsedEndWithTwentyThree() throws IOException {
        Path rules = directory.resolve("tables/rules/stc");
        Files.createDirectories(rules);
        try (Stream<Path> tables = Files.list(Path.of(TABLES))) {
            for (Path table : tables.filter(Files::isRegularFile).toList()) {
                Files.copy(table, directory.resolve("tables").resolve(table.getFileName()));
            }
        }
        Files.writeString(
                rules.resolve("years.csv"),
                "from,to,years,source,pinpoint,confidence,confirmed_on,note\n2027-01-01,,x,nobody,,sure,,\n");
        Program.Run run = Program.run(directory, "prepare", "week.csv");
        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.err()).contains("stc/years.csv (the firm's) row 2");
    }

    @Test
    void aRegisterThatIsNotThereIsAFinding() {
        Program.Run run = Program.run(directory, "prepare", "nowhere.xlsx", "--tables", TABLES);
        assertThat(run.exitCode()).isEqualTo(11);
        assertThat(run.out()).contains("nowhere.xlsx");
    }

    @Test
    void anOutFolderThatIsAFileEndsWithTwentyTwo() throws IOException {
        Files.writeString(directory.resolve("taken"), "x");
        Program.Run run =
                Program.run(directory, "prepare", "week.csv", "--tables", TABLES, "--out", "taken");
        assertThat(run.exitCode()).isEqualTo(22);
        assertThat(run.err()).contains("taken");
    }

    @Test
    void theFieldsOfAFormAreListedAsATableToStartFrom() {
        String form = Path.of("templates/forms/whimbrel-stc.pdf").toAbsolutePath().toString();
        Program.Run run = Program.run(directory, "form-fields", form);
        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .startsWith("field,value,type,page,required,max_length,format,options\n")
                .contains(
                        "Owner,,text,1,yes,,,\n",
                        "Owner ABN,,comb,1,,11,,\n",
                        "Day it worked,,text,1,yes,,dd/mm/yyyy,\n",
                        "Paid,,radio group,1,,,,discount; payment; other\n");
    }

    @Test
    void aFormIsRuledInMillimetres() throws IOException {
        String form = Path.of("templates/forms/whimbrel-veec.pdf").toAbsolutePath().toString();
        Program.Run run = Program.run(directory, "form-grid", form, "--out", "grid.pdf");
        assertThat(run.exitCode()).as(run.err()).isZero();
        try (PDDocument ruled = Loader.loadPDF(directory.resolve("grid.pdf").toFile())) {
            assertThat(new PDFTextStripper().getText(ruled))
                    .contains("Transfer slip: VEECs", "10", "200", "290");
        }
        assertThat(Program.run(directory, "form-grid", form, "--out", form).exitCode())
                .isEqualTo(23);
    }

    @Test
    void aFileThatIsNoFormIsRefused() {
        Program.Run run = Program.run(directory, "form-fields", "week.csv");
        assertThat(run.exitCode()).isEqualTo(23);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("week.csv", "no PDF", "Do: ");
        assertThat(Program.run(directory, "form-grid", "none.pdf", "--out", "x.pdf").exitCode())
                .isEqualTo(22);
    }

    @Test
    void helpNamesEveryCommandAndOption() {
        assertThat(Program.run(directory, "--help").out())
                .contains(
                        "prepare",
                        "check",
                        "explain",
                        "rules",
                        "form-fields",
                        "form-grid",
                        "Exit codes");
        assertThat(Program.run(directory, "prepare", "--help").out())
                .contains(
                        "--sheet",
                        "--tables",
                        "--templates",
                        "--out",
                        "--as-of",
                        "--json",
                        "--explain",
                        "--site-sheets");
        assertThat(Program.run(directory, "explain", "--help").out())
                .contains("JOB", "--what-if", "--sheet", "--tables", "--as-of", "--json")
                .doesNotContain("--out", "--templates");
        assertThat(Program.run(directory, "rules", "--help").out())
                .contains("--table=", "--within", "--tables", "--as-of", "--json");
    }
}
