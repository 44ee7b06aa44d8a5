package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import org.apache.commons.io.file.PathUtils;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.finding.FindingCode;
import paperbark.firm.ColumnGuide;
import paperbark.firm.ColumnGuide.Holds;
import paperbark.firm.FirmTablesReader;
import paperbark.firm.TableGuide;
import paperbark.firm.TableRows;
import paperbark.output.table.SafeCsv;
import paperbark.output.workbook.TablesWorkbook;
import paperbark.outside.Typist;

/** The firm's tables as a workbook and as CSV files. */
class TableDeskTest {
    private static final Path SAMPLE = Path.of("input-samples/tables");
    private static final List<String> AWKWARD =
            List.of(
                    "0042",
                    "=1+1",
                    "'=1+1",
                    "'quoted",
                    "+61 3 5550 0100",
                    "@home",
                    "-3",
                    "1e5",
                    "36.90",
                    "12345678901234567890",
                    "2026-11-30",
                    "30/11/2026",
                    "a;b",
                    "a,\"b\"",
                    "Nguyễn",
                    "yes",
                    "TRUE",
                    "00",
                    "0.10",
                    "_x0041_",
                    "-",
                    "1/2");

    @TempDir private Path folder;

    @Test
    void theSampleTablesSayTheSameAsAWorkbookAndBack() throws IOException {
        Path tables = copied();
        List<TableRows> before = read(tables);
        TableDesk.Result made = TableDesk.convert(tables, TableDesk.Form.XLSX);
        assertThat(made.findings()).isEmpty();
        assertThat(tables.resolve("firm.csv")).doesNotExist();
        assertThat(FirmTablesReader.read(tables).findings()).isEmpty();
        assertThat(FirmTablesReader.read(tables).result().orElseThrow().offers())
                .usingRecursiveComparison()
                .ignoringFields("row")
                .isEqualTo(FirmTablesReader.read(SAMPLE).result().orElseThrow().offers());
        assertSame(before, read(tables));
        assertThat(TableDesk.convert(tables, TableDesk.Form.CSV).made()).hasSize(12);
        assertThat(tables.resolve("tables.xlsx")).doesNotExist();
        assertSame(before, read(tables));
        assertThat(Files.readString(tables.resolve("before/firm.csv")))
                .isEqualTo(Files.readString(SAMPLE.resolve("firm.csv")));
    }

    @Property(tries = 15, shrinking = ShrinkingMode.OFF)
    void anyTextIsReadTheSameFromEitherForm(
            @ForAll("tables") String name, @ForAll("texts") List<String> texts) throws IOException {
        Path place = Files.createTempDirectory("tables");
        try {
            TableRows empty = TableRows.empty(name);
            int width = empty.headings().size();
            List<List<String>> rows =
                    IntStream.range(0, texts.size() / width)
                            .mapToObj(i -> texts.subList(i * width, (i + 1) * width))
                            .toList();
            Files.write(
                    place.resolve(name + ".csv"),
                    SafeCsv.of(empty.headings(), rows.stream().map(SafeCsv::cells).toList()));
            List<TableRows> before = read(place);
            TableDesk.convert(place, TableDesk.Form.XLSX);
            assertSame(before, read(place));
            TableDesk.convert(place, TableDesk.Form.CSV);
            assertSame(before, read(place));
        } finally {
            PathUtils.deleteDirectory(place);
        }
    }

    @Provide
    Arbitrary<String> tables() {
        return Arbitraries.of("people", "makers", "sellers", "offers", "products", "state-papers");
    }

    @Provide
    Arbitrary<List<String>> texts() {
        Arbitrary<String> awkward = Arbitraries.of(AWKWARD);
        Arbitrary<String> any =
                Arbitraries.strings().withCharRange(' ', '~').ofMinLength(1).ofMaxLength(12);
        Arbitrary<String> blank = Arbitraries.just("");
        return Arbitraries.oneOf(awkward, any, blank).list().ofMinSize(30).ofMaxSize(90);
    }

    @Test
    void aTableInBothFormsIsOneStopAndAnEmptySheetIsNone() throws IOException {
        Path tables = copied();
        TableDesk.convert(tables, TableDesk.Form.XLSX);
        Files.copy(SAMPLE.resolve("offers.csv"), tables.resolve("offers.csv"));
        assertThat(FirmTablesReader.read(tables).findings())
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.TABLE_TWICE);
                            assertThat(f.where()).contains("offers.csv");
                            assertThat(f.fact()).contains("tables.xlsx");
                        });
        List<TableRows> without =
                read(tables.resolve("tables.xlsx")).stream()
                        .map(t -> t.name().equals("offers") ? t.with(List.of()) : t)
                        .toList();
        Path other = Files.createDirectories(tables.resolve("other"));
        Files.copy(tables.resolve("tables.xlsx"), other.resolve("tables.xlsx"));
        TableDesk.change(other, without);
        Files.copy(SAMPLE.resolve("offers.csv"), tables.resolve("other/offers.csv"));
        assertThat(FirmTablesReader.read(tables.resolve("other")).findings()).isEmpty();
        assertThat(FirmTablesReader.read(tables.resolve("other")).result().orElseThrow().offers())
                .isNotEmpty();
    }

    @Test
    void anExampleRowCountsForNothingAndAnEmptyWorkbookSaysWhatIsMissing() throws IOException {
        Files.write(
                folder.resolve("tables.xlsx"),
                TablesWorkbook.of(TableDesk.completed(List.of()), TableDesk.words()));
        assertThat(read(folder))
                .filteredOn(t -> !t.name().equals("firm"))
                .allSatisfy(t -> assertThat(t.rows()).isEmpty());
        assertThat(FirmTablesReader.read(folder).findings())
                .filteredOn(f -> f.stops())
                .singleElement()
                .satisfies(f -> assertThat(f.where()).contains("tables.xlsx > firm"));
        try (XSSFWorkbook book = open(folder.resolve("tables.xlsx"))) {
            assertThat(book.getSheet("people").getRow(1).getCell(0).getStringCellValue())
                    .startsWith("Example: ");
            for (Cell cell : book.getSheet("people").getRow(1)) {
                assertThat(book.getSheet("people").getColumnWidth(cell.getColumnIndex()) / 256)
                        .as(cell.getStringCellValue())
                        .isGreaterThan(cell.getStringCellValue().length());
            }
        }
    }

    @Test
    void whatWouldBeLostIsToldAndNothingIsDone() throws IOException {
        Path tables = copied();
        Files.writeString(
                tables.resolve("makers.csv"), "maker,phone\nTernlight,03 5550 0210,lost\n");
        TableDesk.Result result = TableDesk.convert(tables, TableDesk.Form.XLSX);
        assertThat(result.findings()).isNotEmpty();
        assertThat(result.findings().get(0).where()).contains("makers.csv");
        assertThat(tables.resolve("tables.xlsx")).doesNotExist();
        assertThat(tables.resolve("firm.csv")).exists();
    }

    @Test
    void headingsAreLockedAndCellsKeepZerosAndOfferWords() throws IOException {
        Path tables = copied();
        TableDesk.convert(tables, TableDesk.Form.XLSX);
        try (XSSFWorkbook book = open(tables.resolve("tables.xlsx"))) {
            XSSFSheet people = book.getSheet("people");
            assertThat(people.getProtect()).isTrue();
            assertThat(people.getRow(0).getCell(0).getCellStyle().getLocked()).isTrue();
            assertThat(people.getRow(0).getCell(0).getCellComment().getString().getString())
                    .contains("Needed");
            for (TableGuide guide : TableGuide.all()) {
                Sheet sheet = book.getSheet(guide.name());
                for (Cell heading : sheet.getRow(0)) {
                    ColumnGuide column = guide.column(heading.getStringCellValue());
                    if (column.holds() == Holds.POSTCODE || column.holds() == Holds.PHONE) {
                        assertThat(
                                        sheet.getColumnStyle(heading.getColumnIndex())
                                                .getDataFormatString())
                                .isEqualTo("@");
                    }
                }
            }
            assertThat(book.getSheet("products").getDataValidations())
                    .extracting(v -> v.getValidationConstraint().getFormula1())
                    .anyMatch(f -> f != null && f.contains("heat pump"))
                    .anyMatch(f -> f != null && f.contains("makers"));
        }
    }

    /** LibreOffice opens the workbook, somebody types into it there, and saves it. */
    @Test
    @Tag("outside")
    void whatLibreOfficeSavesIsReadTheSame() throws IOException {
        Path tables = copied();
        List<TableRows> before = read(tables);
        TableDesk.convert(tables, TableDesk.Form.XLSX);
        Map<String, String> typed = new LinkedHashMap<>();
        typed.put("$offers.$E$3", "36.95");
        typed.put("$offers.$D$3", "2026-10-30");
        typed.put("$sellers.$A$6", "Dotterel Depot");
        typed.put("$sellers.$D$6", "NT");
        typed.put("$sellers.$E$6", "0801");
        typed.put("$sellers.$F$6", "08 5550 0101");
        typed.put("$sellers.$A$1", "locked");
        new Typist(folder).type(tables.resolve("tables.xlsx"), typed);
        List<TableRows> after = read(tables);
        TableRows offers = table(after, "offers");
        assertThat(offers.rows().get(0).get(offers.column("price_per_certificate")))
                .isEqualTo("36.95");
        assertThat(offers.rows().get(0).get(offers.column("to"))).isEqualTo("2026-10-30");
        TableRows sellers = table(after, "sellers");
        assertThat(sellers.rows().get(sellers.rows().size() - 1))
                .containsExactly("Dotterel Depot", "", "", "NT", "0801", "08 5550 0101");
        List<String> others = List.of("firm", "people", "makers", "products", "buyers", "words");
        assertSame(
                before.stream().filter(t -> others.contains(t.name())).toList(),
                after.stream().filter(t -> others.contains(t.name())).toList());
        assertThat(FirmTablesReader.read(tables).findings()).isEmpty();
    }

    @Test
    void theCommandTurnsAnOfficesTables() throws IOException {
        Path office = folder.resolve("office");
        Offices.copy(SAMPLE, Files.createDirectories(office).resolve("tables"));
        Files.createDirectories(office.resolve("intake"));
        Program.Run run = Program.run(folder, "tables", "office", "--to", "xlsx");
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        assertThat(office.resolve("tables/tables.xlsx")).exists();
        assertThat(Program.run(folder, "tables", "office", "--to", "ods").exitCode()).isEqualTo(2);
        assertThat(Program.run(folder, "tables", "nowhere", "--to", "csv").exitCode()).isEqualTo(2);
    }

    private Path copied() throws IOException {
        Path tables = folder.resolve("tables");
        Offices.copy(SAMPLE, tables);
        return tables;
    }

    private static XSSFWorkbook open(Path file) throws IOException {
        return new XSSFWorkbook(Files.newInputStream(file));
    }

    private static TableRows table(List<TableRows> tables, String name) {
        return tables.stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow();
    }

    private static List<TableRows> read(Path tables) {
        return TableRows.read(tables).result().orElseThrow();
    }

    /** Numbers by their value, all else to the letter; empty facts of the firm left aside. */
    private static void assertSame(List<TableRows> expected, List<TableRows> actual) {
        for (TableRows table : expected) {
            assertThat(plain(table(actual, table.name()))).isEqualTo(plain(table));
        }
    }

    private static List<List<String>> plain(TableRows table) {
        TableGuide guide = TableGuide.of(table.name());
        return table.rows().stream()
                .filter(row -> !table.name().equals("firm") || !table.said(row, "value").isEmpty())
                .map(
                        row ->
                                IntStream.range(0, row.size())
                                        .mapToObj(
                                                i ->
                                                        plain(
                                                                row.get(i),
                                                                guide.column(
                                                                        table.headings().get(i))))
                                        .toList())
                .toList();
    }

    private static String plain(String text, ColumnGuide column) {
        boolean number = column.holds() == Holds.NUMBER || column.holds() == Holds.MONEY;
        return number && text.matches("[0-9]+(\\.[0-9]+)?")
                ? new BigDecimal(text).stripTrailingZeros().toPlainString()
                : text;
    }
}
