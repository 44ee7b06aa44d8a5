package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The firm's tables as sheets of one workbook. */
class TablesWorkbookTest {
    @TempDir private Path directory;

    @Test
    void oneWorkbookDoesAsWellAsAFolder() throws IOException {
        Path workbook = directory.resolve("tables.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook();
                Stream<Path> tables = Files.list(SampleWeek.TABLES);
                OutputStream out = Files.newOutputStream(workbook)) {
            for (Path table : tables.filter(Files::isRegularFile).sorted().toList()) {
                copy(table, book.createSheet(table.getFileName().toString().replace(".csv", "")));
            }
            book.write(out);
        }
        Request folder = SampleWeek.request(SampleWeek.CSV, directory);
        Request request =
                new Request(
                        folder.register(),
                        new Request.FirmFiles(workbook, Optional.empty(), folder.firm().rules()),
                        folder.out(),
                        folder.run(),
                        folder.extras(),
                        folder.ledger());
        Inputs fromWorkbook = Inputs.read(request).result().orElseThrow();
        Inputs fromFolder = Inputs.read(folder).result().orElseThrow();
        assertThat(fromWorkbook.tables().people()).isEqualTo(fromFolder.tables().people());
        assertThat(fromWorkbook.tables().offers()).isEqualTo(fromFolder.tables().offers());
        assertThat(fromWorkbook.jobs()).hasSameSizeAs(fromFolder.jobs());
        assertThat(fromWorkbook.findings()).isEqualTo(fromFolder.findings());
    }

    private static void copy(Path table, Sheet sheet) throws IOException {
        try (CSVParser records =
                CSVParser.parse(table, StandardCharsets.UTF_8, CSVFormat.RFC4180)) {
            for (CSVRecord record : records) {
                Row row = sheet.createRow(sheet.getPhysicalNumberOfRows());
                for (int i = 0; i < record.size(); i++) {
                    row.createCell(i).setCellValue(record.get(i));
                }
            }
        }
    }
}
