package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamReader;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.poi.xssf.streaming.SXSSFRow;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A register of thousands of jobs, each with two findings, in a process with little memory: 4,000
 * jobs and 192 MB in the usual tests, 20,000 and 512 MB where asked.
 */
class LargeRegisterTest {
    private static final int JOBS = Integer.getInteger("large.jobs", 4_000);
    private static final String HEAP = JOBS > 4_000 ? "-Xmx512m" : "-Xmx192m";

    @TempDir private Path folder;
    private List<String> headings;
    private List<String> job;

    @BeforeEach
    void aJobOfTheSampleWeek() throws IOException {
        try (CSVParser parser =
                CSVParser.parse(
                        Files.newBufferedReader(Path.of("input-samples/week-47.csv")),
                        CSVFormat.RFC4180)) {
            List<List<String>> rows =
                    parser.stream().limit(2).map(r -> List.of(r.values())).toList();
            headings = rows.get(0).stream().map(h -> h.replace("\ufeff", "")).toList();
            job = rows.get(1);
        }
    }

    private List<String> job(int number) {
        return headings.stream()
                .map(
                        heading ->
                                switch (heading) {
                                    case "Job no." -> "SB-" + (100_000 + number);
                                    case "Tank S/N" -> "26100400" + (10_000_000 + number);
                                    case "Site address" -> (number + 1) + " Teaspoon Lane";
                                    case "E-mail" -> "person" + number + "@@example";
                                    case "P/code" -> "33x2";
                                    default -> job.get(headings.indexOf(heading));
                                })
                .toList();
    }

    @Test
    void aWorkbookIsCheckedAndMarkedInLittleMemory() throws Exception {
        Path register = folder.resolve("large.xlsx");
        try (SXSSFWorkbook workbook = new SXSSFWorkbook(100);
                OutputStream out = new BufferedOutputStream(Files.newOutputStream(register))) {
            SXSSFSheet sheet = workbook.createSheet("Week");
            write(sheet.createRow(0), headings);
            for (int i = 0; i < JOBS; i++) {
                write(sheet.createRow(i + 1), job(i));
            }
            workbook.write(out);
        }
        check(register);
    }

    private static void write(SXSSFRow row, List<String> values) {
        for (int i = 0; i < values.size(); i++) {
            row.createCell(i).setCellValue(values.get(i));
        }
    }

    @Test
    void aCsvFileIsCheckedAndMarkedInLittleMemory() throws Exception {
        Path register = folder.resolve("large.csv");
        try (CSVPrinter printer =
                new CSVPrinter(Files.newBufferedWriter(register), CSVFormat.RFC4180)) {
            printer.printRecord(headings);
            for (int i = 0; i < JOBS; i++) {
                printer.printRecord(job(i));
            }
        }
        check(register);
    }

    private void check(Path register) throws Exception {
        Process process =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                HEAP,
                                "-XX:+UseSerialGC",
                                "-classpath",
                                System.getProperty("java.class.path"),
                                Main.class.getName(),
                                "check",
                                register.toString(),
                                "--tables",
                                "input-samples/tables",
                                "--out",
                                folder.toString())
                        .redirectErrorStream(true)
                        .redirectOutput(folder.resolve("said.txt").toFile())
                        .start();
        process.waitFor(30, TimeUnit.MINUTES);
        Path marked = folder.resolve("large-checked.xlsx");

        assertThat(Files.readString(folder.resolve("said.txt"))).contains("Jobs:         " + JOBS);
        assertThat(marked).exists();
        assertThat(rows(marked, "xl/worksheets/sheet1.xml")).isEqualTo(JOBS + 1);
        // Each e-mail address has a row of its own there; the postcodes, all alike, share one.
        assertThat(rows(marked, "xl/worksheets/sheet2.xml")).isGreaterThan(JOBS);
    }

    private static int rows(Path workbook, String sheet) throws Exception {
        try (ZipFile zip = new ZipFile(workbook.toFile())) {
            XMLStreamReader xml =
                    XMLInputFactory.newDefaultFactory()
                            .createXMLStreamReader(zip.getInputStream(zip.getEntry(sheet)));
            int rows = 0;
            while (xml.hasNext()) {
                xml.next();
                rows += xml.isStartElement() && xml.getLocalName().equals("row") ? 1 : 0;
            }
            return rows;
        }
    }
}
