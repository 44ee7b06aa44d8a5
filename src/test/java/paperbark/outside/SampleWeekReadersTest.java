package paperbark.outside;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.SampleWeek;

/** The published sample week, read by programs that other people wrote. */
@Tag("outside")
class SampleWeekReadersTest {
    private static final Pattern PAGES = Pattern.compile("(?m)^Pages:\\s+(\\d+)$");
    private static final Pattern LINK = Pattern.compile("href=\"([^\"]+)\"");

    @TempDir private static Path directory;
    private static Path batch;

    @BeforeAll
    static void prepare() throws IOException {
        batch = SampleWeek.published();
    }

    @Test
    void popplerReadsEveryPageAndTheJobOfEveryPack() throws IOException {
        Outside.needs("pdfinfo");
        Outside.needs("pdftotext");
        for (Path pack : packs()) {
            String job = pack.getFileName().toString().replace(".pdf", "");
            int pages = pages(pack);
            assertThat(poppler(pack)).as(job).isEqualTo(pages);
            String text = Outside.run(directory, "pdftotext", pack.toString(), "-").out();
            assertThat(text.split("\f", -1)).as(job).hasSize(pages + 1);
            assertThat(text)
                    .contains(job, "Page " + pages + " of " + pages)
                    .doesNotContain("null", "N/A", "${");
        }
    }

    @Test
    void popplerReadsThePrintRun() throws IOException {
        Path run = batch.resolve("print-run.pdf");
        assertThat(poppler(run)).isEqualTo(pages(run));
    }

    @Test
    void qpdfFindsNoError() throws IOException {
        Outside.needs("qpdf");
        List<Path> all = new ArrayList<>(packs());
        all.add(batch.resolve("print-run.pdf"));
        for (Path pdf : all) {
            Outside.Result result = Outside.run(directory, "qpdf", "--check", pdf.toString());
            assertThat(result.exitCode())
                    .as(pdf.getFileName() + "\n" + result.out() + result.err())
                    .isZero();
        }
    }

    @Test
    void chromiumShowsThePageAndEveryLinkLeadsSomewhere() throws IOException {
        Outside.Result page =
                Outside.run(
                        directory,
                        "chromium",
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--user-data-dir=" + directory.resolve("chromium"),
                        "--dump-dom",
                        batch.resolve("index.html").toUri().toString());
        assertThat(page.exitCode()).as(page.err()).isZero();
        Matcher links = LINK.matcher(page.out());
        int files = 0;
        while (links.find()) {
            String target = links.group(1);
            if (target.startsWith("#")) {
                assertThat(page.out()).contains("id=\"" + target.substring(1) + "\"");
            } else {
                assertThat(batch.resolve(target)).isRegularFile();
                files++;
            }
        }
        assertThat(files).isGreaterThan(40);
    }

    @Test
    void theIndexOfAWeekPrintsOnFourPagesAtMost() {
        Path pdf = directory.resolve("index.pdf");
        Outside.Result printed =
                Outside.run(
                        directory,
                        "chromium",
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--user-data-dir=" + directory.resolve("chromium"),
                        "--no-pdf-header-footer",
                        "--print-to-pdf=" + pdf,
                        batch.resolve("index.html").toUri().toString());
        assertThat(printed.exitCode()).as(printed.err()).isZero();
        assertThat(poppler(pdf)).isLessThanOrEqualTo(4);
    }

    private static int poppler(Path pdf) {
        Matcher pages = PAGES.matcher(Outside.run(directory, "pdfinfo", pdf.toString()).out());
        assertThat(pages.find()).isTrue();
        return Integer.parseInt(pages.group(1));
    }

    private static int pages(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return document.getNumberOfPages();
        }
    }

    private static List<Path> packs() throws IOException {
        try (Stream<Path> all = Files.list(batch.resolve("packs"))) {
            return all.sorted().toList();
        }
    }
}
