package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.office.FirmOffice;
import paperbark.office.NewFirm;
import paperbark.value.Trade;

/** An office that belongs to somebody: its tables, its register, and nothing invented. */
class NewFirmTest {
    // Check digits after the tax office's own rule; the numbers belong to nobody.
    private static final String[] SETUP = {
        "setup",
        "office",
        "--name",
        "Any Firm Pty Ltd",
        "--abn",
        "61 000 000 002",
        "--gst",
        "yes",
        "--street",
        "1 Any Lane",
        "--suburb",
        "Ballan",
        "--state",
        "VIC",
        "--postcode",
        "3342",
        "--phone",
        "03 5550 0199",
        "--bsb",
        "000-000",
        "--account",
        "00000200",
        "--person",
        "Nora Nettle; plumbing; 00123; VIC",
        "--maker",
        "Merganser",
        "--buyer",
        "Teal"
    };

    @TempDir private Path directory;

    @Test
    void theOfficeHoldsTheFirmAndNothingOfTheSample() throws IOException {
        Files.writeString(
                directory.resolve("ours.svg"), "<svg xmlns='http://www.w3.org/2000/svg'/>");
        Program.Run run = Program.run(directory, with("--logo", "ours.svg"));
        assertThat(run.exitCode()).as(run.err()).isZero();
        Path office = directory.resolve("office");
        FirmTables tables = tables(office);
        Firm firm = tables.firm();
        assertThat(firm.name()).isEqualTo("Any Firm Pty Ltd");
        assertThat(firm.abn().digits()).isEqualTo("61000000002");
        assertThat(firm.account().orElseThrow().full()).contains("00000200");
        assertThat(tables.person("nora nettle").orElseThrow().licences().get(0).number())
                .isEqualTo("00123");
        assertThat(tables.statePapers()).hasSize(16);
        assertThat(tables.accounts()).as("no journal unless asked for").isEmpty();
        assertThat(office.resolve("templates/logo.svg")).exists();
        assertThat(office.resolve("sample-register.xlsx")).doesNotExist();
        assertThat(office.resolve("tables/rules")).doesNotExist();
        try (Stream<Path> files = Files.list(office.resolve("tables"))) {
            assertThat(files).containsExactly(office.resolve("tables/tables.xlsx"));
        }
        assertThat(Program.run(directory, "doctor", "office").out())
                .contains("well  tables")
                .doesNotContain("sample firm");
    }

    @ParameterizedTest
    @CsvSource({
        "--abn,61 000 000 003",
        "--state,Victoria West",
        "--postcode,33421",
        "--gst,perhaps",
        "--acn,123",
        "--person,Nora Nettle; gardening; 1; VIC",
        "--person,Nora Nettle",
        "--logo,nowhere.png",
        "--maker,Ternlight",
        "--buyer,Kestrel Certificates",
        "--phone,03 5550 0100",
    })
    void whatCannotBeIsAWrongUseAndMakesNothing(String option, String value) {
        List<String> words = new ArrayList<>(List.of(SETUP));
        int at = words.indexOf(option);
        if (at >= 0 && !option.equals("--person")) {
            words.set(at + 1, value);
        } else {
            words.addAll(List.of(option, value));
        }
        Program.Run run = Program.run(directory, words.toArray(String[]::new));
        assertThat(run.exitCode()).as(run.err()).isEqualTo(2);
        if (run.err().contains("the sample firm's")) {
            assertThat(run.err()).contains(option.equals("--phone") ? "phone" : value);
        } else if (!option.equals("--person")) {
            assertThat(run.err()).contains(option);
        }
        assertThat(directory.resolve("office")).doesNotExist();
    }

    @Test
    void anUntouchedSampleIsMovedAsideAndATouchedOneIsKept() throws IOException {
        Program.run(directory, "setup", "office", "--sample");
        assertThat(Program.run(directory, SETUP).exitCode()).isZero();
        Path office = directory.resolve("office");
        assertThat(tables(office).firm().name()).isEqualTo("Any Firm Pty Ltd");
        assertThat(office.resolve("sample-tables/tables/firm.csv")).exists();
        assertThat(office.resolve("sample-register.xlsx")).doesNotExist();

        Path other = directory.resolve("touched/office");
        Program.run(Files.createDirectories(other.getParent()), "setup", "office");
        Files.writeString(other.resolve("tables/sellers.csv"), "seller,phone\nMine,\n");
        Program.Run kept = Program.run(other.getParent(), SETUP);
        assertThat(kept.out()).contains("Kept as is").contains("tables/");
        assertThat(tables(other).firm().name()).isEqualTo("Saltmarsh Hot Water Pty Ltd");
    }

    @Test
    void questionsAreAskedAgainUntilTheAnswerCanBe() throws IOException {
        Path logo = directory.resolve("our logo.svg");
        Files.writeString(logo, "<svg xmlns='http://www.w3.org/2000/svg'/>");
        Deque<String> answers =
                new ArrayDeque<>(
                        List.of(
                                "Any Firm Pty Ltd",
                                "61 000 000 003",
                                "",
                                "61 000 000 002",
                                "",
                                "perhaps",
                                "y",
                                "1 Any Lane",
                                "Ballan",
                                "Victoria",
                                "33421",
                                "3342",
                                "",
                                "",
                                "",
                                "12",
                                "000-000",
                                "",
                                "Wanda Wattle",
                                "Nora Nettle",
                                "gardener",
                                "Plumber",
                                "00123",
                                "VIC",
                                "Otto Oakum",
                                "electrician",
                                "E-7",
                                "VIC",
                                "",
                                "Ternlight",
                                "Merganser",
                                "",
                                "kestrel certificates",
                                "Teal",
                                "",
                                "our logo.jpg",
                                "nowhere.svg",
                                "'our logo.svg'"));
        List<String> told = new ArrayList<>();
        FirmOffice office = asked(answers, told).orElseThrow();
        NewFirm firm = office.firm();
        assertThat(answers).isEmpty();
        assertThat(firm.troubles()).isEmpty();
        assertThat(firm.facts())
                .containsEntry("abn", "61 000 000 002")
                .containsEntry("postcode", "3342")
                .containsEntry("bsb", "000-000")
                .doesNotContainKey("acn");
        assertThat(firm.licences()).hasSize(2);
        assertThat(firm.makers()).containsExactly("Merganser");
        assertThat(firm.buyers()).containsExactly("Teal");
        assertThat(office.logo()).contains(logo);
        assertThat(told.stream().filter(line -> line.startsWith("  ")))
                .containsExactly(
                        "  The check digits do not fit, so at least one digit is wrong. Compare it"
                                + " with one of your invoices or the Business Register.",
                        "  This one is needed.",
                        "  Type yes or no.",
                        "  A postcode has four digits.",
                        "  A BSB has six digits, such as 000-000. It is on the account's statement.",
                        "  Wanda Wattle is the sample firm's and made up; papers that show it are"
                                + " held. Name one of your own.",
                        "  Type plumber or electrician.",
                        "  Ternlight is the sample firm's and made up; papers that show it are held."
                                + " Name one of your own.",
                        "  kestrel certificates is the sample firm's and made up; papers that show it"
                                + " are held. Name one of your own.",
                        "  our logo.jpg is no .png or .svg file.",
                        "  There is no file " + directory.resolve("nowhere.svg") + ".");
        assertThat(asked(null, told)).isEmpty();
    }

    private Optional<FirmOffice> asked(Deque<String> answers, List<String> told) {
        return new FirmQuestions(
                        question ->
                                answers == null ? null : answers.isEmpty() ? "" : answers.poll(),
                        told::add,
                        directory)
                .asked();
    }

    /** The people table takes the words that people use for the trades. */
    @Test
    void aPersonOfATradeIsTakenByWhatPeopleCallThem() throws IOException {
        Program.Run run =
                Program.run(directory, with("--person", "Otto Oakum; electrician; E-7; VIC"));
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(
                        tables(directory.resolve("office"))
                                .person("Otto Oakum")
                                .orElseThrow()
                                .licences()
                                .get(0)
                                .trade())
                .isEqualTo(Trade.ELECTRICAL);
    }

    /** A new firm has no offers and no sellers; that is no trouble of its list. */
    @Test
    void anEmptyTableIsToldAsATableAndNotAsARegister() throws IOException {
        Program.run(directory, SETUP);
        Program.run(directory, "tables", "office", "--to", "csv");
        Files.writeString(
                directory.resolve("office/x.csv"),
                "Job,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model\n"
                        + "A-1,Ada Amberwood,4 Teaspoon Lane,Ballan,VIC,3342,Merganser,M-1\n");
        String said = Program.run(directory, "check", "office/x.csv", "--explain").out();
        assertThat(said)
                .contains("The table \"offers\" has no rows yet.", "[table-empty]")
                .doesNotContain("There is no row below", "[register-empty]");
    }

    /** Names of the sample firm in the tables of another, one paper after the other. */
    @Test
    void whatIsLeftOfTheSampleHoldsThePapersThatShowIt() throws IOException {
        Program.run(directory, "setup", "office");
        Path tables = directory.resolve("office/tables");
        String firm = Files.readString(tables.resolve("firm.csv"));
        Files.writeString(
                tables.resolve("firm.csv"),
                firm.replace("99 000 000 000", "61 000 000 002")
                        .replace("name,Saltmarsh Hot Water Pty Ltd", "name,Any Firm Pty Ltd"));
        Program.Run run =
                Program.run(directory, "check", "office/sample-register.xlsx", "--explain");
        List<String> said =
                Stream.of(run.out().split("\\R\\R"))
                        .filter(block -> block.contains("[sample-shown]"))
                        .collect(Collectors.toList());
        assertThat(String.join("\n", said))
                .contains("Wanda Wattle is one of")
                .contains("Ternlight is one of")
                .contains("Kestrel Certificates is one of")
                .contains("still the sample firm's: street, phone, after hours, email, account");
        assertThat(run.exitCode()).isEqualTo(10);
        assertThat(run.out()).contains("held: 40");

        assertThat(
                        Program.run(
                                        directory.resolve("office"),
                                        "check",
                                        "sample-register.xlsx",
                                        "--tables",
                                        Path.of("input-samples/tables").toAbsolutePath().toString())
                                .out())
                .as("the sample firm's own papers may show it")
                .doesNotContain("sample-shown");
    }

    @Test
    void theEmptyRegisterIsReadOnceItIsFilledIn() throws IOException {
        Program.run(directory, SETUP);
        Path office = directory.resolve("office");
        Program.Run made = Program.run(directory, "new-register", "office/week-48.xlsx");
        assertThat(made.exitCode()).as(made.err()).isZero();
        assertThat(Program.run(directory, "new-register", "office/week-48.xlsx").exitCode())
                .as("never overwritten")
                .isEqualTo(2);
        Path register = office.resolve("week-48.xlsx");
        try (XSSFWorkbook book = open(register)) {
            XSSFSheet sheet = book.getSheetAt(0);
            assertThat(sheet.getPrintSetup().getLandscape()).isTrue();
            assertThat(sheet.getPrintSetup().getFitWidth()).isBetween((short) 3, (short) 6);
            assertThat(sheet.getRepeatingRows().formatAsString()).isEqualTo("1:1");
            assertThat(sheet.getRepeatingColumns().formatAsString()).isEqualTo("A:A");
        }
        fill(
                register,
                List.of(
                        "Job=A-1",
                        "Stage=booked",
                        "Visit date=2026-11-25",
                        "Owner=Ada Amberwood",
                        "Owner's phone=0491 570 156",
                        "Site street=4 Teaspoon Lane",
                        "Site suburb=Ballan",
                        "Site state=VIC",
                        "Site postcode=3342",
                        "Maker=Merganser",
                        "Model=M-1",
                        "Tank serial=0012"));
        Program.Run checked = Program.run(directory, "check", "office/week-48.xlsx", "--explain");
        assertThat(checked.out()).contains("Jobs:         1").contains("[model-unknown]");
        assertThat(checked.out()).doesNotContain("column-unknown").doesNotContain("sheet-hidden");
        assertThat(checked.out()).doesNotContain("leading-zero-lost");
    }

    @Test
    void theRegisterHasTheFirmsHeadingsItsSheetAndItsNames() throws IOException {
        Path tables = Files.createDirectories(directory.resolve("tables"));
        try (Stream<Path> sample = Files.list(Path.of("input-samples/tables"))) {
            for (Path table : sample.filter(Files::isRegularFile).toList()) {
                Files.copy(table, tables.resolve(table.getFileName()));
            }
        }
        Files.writeString(
                tables.resolve("columns.csv"),
                """
                field,alias,always
                sheet,newest month,
                job,Ref,
                owner-name,Client,
                site-one-cell,Address,
                maker,Brand,
                model,Unit,
                plumber,Who,
                installed-date,Done,
                full-price,Price,
                benefit-form,,discount
                """);
        assertThat(Program.run(directory, "new-register", "ours.xlsx").err()).isEmpty();
        try (XSSFWorkbook book = open(directory.resolve("ours.xlsx"))) {
            XSSFSheet sheet = book.getSheet("Nov 2026");
            List<String> headings = new ArrayList<>();
            sheet.getRow(0).forEach(cell -> headings.add(cell.getStringCellValue()));
            assertThat(headings)
                    .containsExactly(
                            "Ref", "Done", "Client", "Address", "Brand", "Unit", "Who", "Price");
            assertThat(rule(sheet, 4)).contains("Ternlight", "Dunlin");
            assertThat(rule(sheet, 5)).contains("D270-A");
            assertThat(rule(sheet, 6)).contains("Wanda Wattle");
            assertThat(sheet.getColumnStyle(1).getDataFormatString()).isEqualTo("d mmm yyyy");
            assertThat(sheet.getColumnStyle(3).getDataFormatString()).isEqualTo("@");
            assertThat(sheet.getPrintSetup().getFitWidth()).isEqualTo((short) 1);
        }
    }

    private static String rule(XSSFSheet sheet, int column) {
        return sheet.getDataValidations().stream()
                .filter(v -> v.getRegions().getCellRangeAddress(0).getFirstColumn() == column)
                .map(DataValidation::getValidationConstraint)
                .map(
                        c ->
                                c.getExplicitListValues() == null
                                        ? c.getFormula1()
                                        : String.join(",", c.getExplicitListValues()))
                .collect(Collectors.joining());
    }

    private static void fill(Path register, List<String> facts) throws IOException {
        byte[] filled;
        try (XSSFWorkbook book = open(register)) {
            XSSFSheet sheet = book.getSheetAt(0);
            XSSFRow row = sheet.createRow(1);
            for (String fact : facts) {
                String heading = fact.substring(0, fact.indexOf('='));
                String value = fact.substring(fact.indexOf('=') + 1);
                List<String> headings = new ArrayList<>();
                sheet.getRow(0).forEach(cell -> headings.add(cell.getStringCellValue()));
                int column = headings.indexOf(heading);
                assertThat(column).as(heading + " in " + headings).isNotNegative();
                var cell = row.createCell(column);
                cell.setCellStyle(sheet.getColumnStyle(column));
                if (value.matches("[0-9-]{10}")) {
                    cell.setCellValue(LocalDate.parse(value));
                } else {
                    cell.setCellValue(value);
                }
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            filled = out.toByteArray();
        }
        Files.write(register, filled);
    }

    private static XSSFWorkbook open(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return new XSSFWorkbook(in);
        }
    }

    private static FirmTables tables(Path office) {
        return FirmTablesReader.read(office.resolve("tables")).result().orElseThrow();
    }

    private static String[] with(String... more) {
        return Stream.concat(Stream.of(SETUP), Stream.of(more)).toArray(String[]::new);
    }
}
