package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.io.FileUtils;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.outside.Outside;

/**
 * The sample week as LibreOffice saves it in its formats: each is read with the same jobs, or
 * refused with one stop, and stays as it was.
 */
@Tag("outside")
class SavedElsewhereTest {
    private static final Path WEEK = Path.of("input-samples/week-47.xlsx").toAbsolutePath();

    @TempDir private static Path profile;
    @TempDir private Path folder;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "xlsx | xlsx:Calc MS Excel 2007 XML | read",
                "xlsm | xlsm:Calc MS Excel 2007 VBA XML | read",
                "xltx | xltx:Calc MS Excel 2007 XML Template | read",
                "xls  | xls:MS Excel 97 | read",
                "ods  | ods:calc8 | read",
                "csv  | csv:Text - txt - csv (StarCalc):44,34,76,1 | read",
                "csv  | csv:Text - txt - csv (StarCalc):59,34,1,1 | read",
                "csv  | csv:Text - txt - csv (StarCalc):9,34,65535,1 | read",
                "ots  | ots:calc8_template | file-unreadable",
                "fods | fods:OpenDocument Spreadsheet Flat XML | file-unreadable",
                "html | html:HTML (StarCalc) | file-unreadable",
                "pdf  | pdf:calc_pdf_Export | file-unreadable",
                "dif  | dif:DIF | headings-not-found",
                "slk  | slk:SYLK | csv-broken"
            })
    void itsJobsAreThereOrOneStopSaysWhyNot(String ending, String form, String told)
            throws IOException {
        Path list = saved(ending, form);
        byte[] before = Files.readAllBytes(list);

        Program.Run run =
                Program.run(
                        folder,
                        "check",
                        list.toString(),
                        "--tables",
                        WEEK.resolveSibling("tables").toString());

        assertThat(Files.readAllBytes(list)).isEqualTo(before);
        if (told.equals("read")) {
            assertThat(run.exitCode()).as(run.out()).isEqualTo(10);
            assertThat(run.out()).contains("Jobs:         40,");
            assertThat(folder.resolve("week-47-checked.xlsx")).exists();
        } else {
            assertThat(run.exitCode()).as(run.out()).isEqualTo(11);
            assertThat(run.out()).containsOnlyOnce("[" + told + "]").contains("1 stop");
        }
    }

    private Path saved(String ending, String form) throws IOException {
        Path in = folder.resolve("in/week-47.xlsx");
        FileUtils.copyFile(WEEK.toFile(), in.toFile());
        Outside.Result result =
                Outside.run(
                        folder,
                        "soffice",
                        "-env:UserInstallation=" + profile.toUri(),
                        "--headless",
                        "--convert-to",
                        form,
                        "--outdir",
                        folder.toString(),
                        in.toString());
        assertThat(result.exitCode()).as(result.err()).isZero();
        return folder.resolve("week-47." + ending);
    }
}
