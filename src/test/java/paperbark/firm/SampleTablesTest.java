package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.sheet.Reading;
import paperbark.value.HeaterKind;
import paperbark.value.State;
import paperbark.value.Trade;

class SampleTablesTest {
    private static final Path TABLES = Path.of("input-samples", "tables");

    @Test
    void theSampleTablesAreReadWithoutAFinding() {
        Reading<FirmTables> reading = FirmTablesReader.read(TABLES);
        assertThat(reading.findings()).isEmpty();
        FirmTables tables = reading.result().orElseThrow();
        assertThat(tables.firm().name()).isEqualTo("Saltmarsh Hot Water Pty Ltd");
        assertThat(tables.products()).extracting(Product::kind).contains(HeaterKind.values());
        for (State state : State.values()) {
            assertThat(tables.statePaper(state, Trade.PLUMBING)).isPresent();
            assertThat(tables.statePaper(state, Trade.ELECTRICAL)).isPresent();
        }
        Product product = tables.product("ternlight", "tl-f2-300").orElseThrow();
        assertThat(product.listing(LocalDate.of(2026, 11, 16)).orElseThrow().registerVersion())
                .isEqualTo("53");
    }

    @Test
    void aWorkbookWithASheetPerTableSaysTheSame(@TempDir Path folder) throws IOException {
        Path workbook = folder.resolve("tables.xlsx");
        writeWorkbook(workbook, "");
        Reading<FirmTables> reading = FirmTablesReader.read(workbook);
        assertThat(reading.findings()).isEmpty();
        FirmTables expected = FirmTablesReader.read(TABLES).result().orElseThrow();
        FirmTables tables = reading.result().orElseThrow();
        assertThat(tables.firm()).isEqualTo(expected.firm());
        assertThat(tables.people()).isEqualTo(expected.people());
        assertThat(tables.offers()).isEqualTo(expected.offers());
        assertThat(tables.products())
                .usingRecursiveComparison()
                .ignoringFields("serialPattern")
                .isEqualTo(expected.products());
    }

    @Test
    void aWorkbookWithoutOneOfTheSheetsNamesIt(@TempDir Path folder) throws IOException {
        Path workbook = folder.resolve("tables.xlsx");
        writeWorkbook(workbook, "offers");
        Reading<FirmTables> reading = FirmTablesReader.read(workbook);
        assertThat(reading.result()).isEmpty();
        assertThat(reading.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.TABLE_MISSING);
    }

    @Test
    void aTableOfHeadingsAloneIsEmptyAndNoted(@TempDir Path folder) throws IOException {
        try (var files = Files.newDirectoryStream(TABLES, "*.csv")) {
            for (Path file : files) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        Files.writeString(folder.resolve("sellers.csv"), "seller,phone\n");
        Reading<FirmTables> reading = FirmTablesReader.read(folder);
        assertThat(reading.result().orElseThrow().sellers()).isEmpty();
        assertThat(reading.findings())
                .singleElement()
                .matches(f -> f.severity() == Severity.NOTE)
                .matches(f -> f.where().equals("sellers.csv > row 1"));
    }

    private static void writeWorkbook(Path target, String leftOut) throws IOException {
        try (XSSFWorkbook book = new XSSFWorkbook();
                var files = Files.newDirectoryStream(TABLES, "*.csv")) {
            for (Path file : files) {
                String name = file.getFileName().toString().replace(".csv", "");
                if (!name.equals(leftOut) && !name.equals("columns")) {
                    fill(book.createSheet(name), file);
                }
            }
            try (OutputStream out = Files.newOutputStream(target)) {
                book.write(out);
            }
        }
    }

    private static void fill(Sheet sheet, Path csv) throws IOException {
        try (Reader reader = Files.newBufferedReader(csv);
                var records = CSVFormat.RFC4180.parse(reader)) {
            for (CSVRecord record : records) {
                Row row = sheet.createRow(sheet.getLastRowNum() + 1);
                List<String> texts = record.toList();
                for (int i = 0; i < texts.size(); i++) {
                    row.createCell(i).setCellValue(texts.get(i));
                }
            }
        }
    }
}
