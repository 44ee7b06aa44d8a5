package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.outside.Outside;

/** Ten thousand jobs, in a process that may use 256 MB for jobs and workbook together. */
class ManyJobsTest {
    private static final int JOBS = 10_000;

    @TempDir private Path folder;

    @Test
    void theWorkbookOfTenThousandJobsNeedsLittleMemory() throws Exception {
        Path file = folder.resolve("many.xlsx");
        Outside.Result result =
                Outside.run(
                        folder,
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx256m",
                        "-Djava.io.tmpdir=" + folder,
                        "-classpath",
                        System.getProperty("java.class.path"),
                        ManyJobs.class.getName(),
                        String.valueOf(JOBS),
                        file.toString());

        assertThat(result.exitCode()).as(result.err()).isZero();
        // Two claims a job and two offers a claim; title, two notes and headings besides.
        assertThat(rows(file, "Every offer")).isEqualTo(4 * JOBS + 4);
        assertThat(rows(file, "Jobs")).isEqualTo(JOBS + 4);
        assertThat(leftovers()).isEmpty();
    }

    private List<Path> leftovers() throws IOException {
        try (var all = Files.walk(folder)) {
            return all.filter(p -> p.getFileName().toString().contains("sxssf")).toList();
        }
    }

    /** Rows of a sheet, read as a stream. */
    private static int rows(Path file, String title) throws IOException, XMLStreamException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            String workbook =
                    new String(
                            zip.getInputStream(zip.getEntry("xl/workbook.xml")).readAllBytes(),
                            StandardCharsets.UTF_8);
            int sheet = 0;
            for (String part : workbook.split("<sheet name=\"")) {
                if (part.startsWith(title + "\"")) {
                    return rows(zip, sheet);
                }
                sheet++;
            }
        }
        throw new AssertionError("no sheet " + title);
    }

    private static int rows(ZipFile zip, int sheet) throws IOException, XMLStreamException {
        int rows = 0;
        try (InputStream in =
                zip.getInputStream(zip.getEntry("xl/worksheets/sheet" + sheet + ".xml"))) {
            XMLStreamReader reader = XMLInputFactory.newFactory().createXMLStreamReader(in);
            while (reader.hasNext()) {
                if (reader.next() == XMLStreamConstants.START_ELEMENT
                        && reader.getLocalName().equals("row")) {
                    rows++;
                }
            }
        }
        return rows;
    }
}
