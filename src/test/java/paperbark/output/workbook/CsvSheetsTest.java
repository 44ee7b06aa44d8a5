package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.output.BatchView;
import paperbark.output.BatchViews;
import paperbark.output.Jobs;
import paperbark.output.table.BatchTables;
import paperbark.outside.Outside;

class CsvSheetsTest {

    @Test
    void everySheetIsAFileWithItsRowsAndNoTotals() throws IOException {
        BatchView week = BatchViews.week();
        Map<String, List<CSVRecord>> files = files(week);
        assertThat(files.keySet())
                .containsExactly(
                        "summary-batch.csv",
                        "summary-counts.csv",
                        "summary-money.csv",
                        "summary-sales.csv",
                        "summary-gains.csv",
                        "summary-by-buyer.csv",
                        "summary-switching.csv",
                        "jobs.csv",
                        "certificates.csv",
                        "offers-compared.csv",
                        "every-offer.csv",
                        "expected-money.csv",
                        "expected-claims.csv",
                        "gst.csv",
                        "gst-by-quarter.csv",
                        "closing-dates.csv",
                        "received-and-overdue.csv",
                        "debtors-by-age.csv",
                        "findings.csv",
                        "rules-and-sources.csv",
                        "how-to-read-this.csv");
        assertThat(files.get("jobs.csv")).hasSize(week.cases().size());
        assertThat(files.get("expected-claims.csv").get(0).toMap())
                .containsEntry("Job", "SB-1041")
                .containsEntry("Certificates", "13")
                .containsEntry("Price each", "36.10")
                .containsEntry("To the firm", "454.30")
                .containsEntry("Due", "2026-12-09")
                .containsEntry("Stands", "due");
    }

    @Test
    void theLinesAddUpToTheTotalOfTheSheet() throws IOException {
        BigDecimal sum =
                files(BatchViews.week()).get("gst.csv").stream()
                        .map(r -> new BigDecimal(r.get("GST in full price")))
                        .reduce(BigDecimal.ZERO, BigDecimal::add);
        assertThat(sum)
                .isEqualByComparingTo(
                        BatchTables.of(BatchViews.week()).gst().sum("gst", row -> true));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "=1+1 | '=1+1",
                "+61 3 | '+61 3",
                "-2+3 | '-2+3",
                "@SUM(A1) | '@SUM(A1)",
                "＝1+1 | '＝1+1",
                "` =1+1` | `' =1+1`",
                "'=1 | ''=1",
                "O'Hara | O'Hara",
                "Gum, \"Tree\" | Gum, \"Tree\""
            })
    void textThatLooksLikeAFormulaGetsAnApostrophe(String text, String written) throws IOException {
        BatchView view =
                BatchViews.of(
                        true,
                        List.of(
                                new Jobs("SB-1", text, "Ballan")
                                        .stc(13, "Kestrel Certificates", "36.10")
                                        .caseFile()));
        assertThat(files(view).get("jobs.csv").get(0).get("Owner")).isEqualTo(written);
    }

    @Test
    void numbersBelowZeroStayNumbers() throws IOException {
        assertThat(files(BatchViews.week()).get("offers-compared.csv"))
                .extracting(r -> r.get("Difference"))
                .contains("-2.00");
    }

    @Test
    @Tag("outside")
    void libreOfficeReadsTheTextAsText(@TempDir Path folder) throws IOException {
        BatchView view =
                BatchViews.of(true, List.of(new Jobs("SB-1", "=1+1", "Ballan").caseFile()));
        CsvSheets.write(
                view,
                (name, content) -> {
                    if (name.equals("jobs.csv")) {
                        Files.write(folder.resolve(name), content);
                    }
                });
        Outside.Result result =
                Outside.run(
                        folder,
                        "soffice",
                        "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                        "--headless",
                        "--infilter=CSV:44,34,76,1",
                        "--convert-to",
                        "xlsx",
                        folder.resolve("jobs.csv").toString());
        assertThat(result.exitCode()).as(result.err()).isZero();
        var owner =
                Workbooks.open(Files.readAllBytes(folder.resolve("jobs.xlsx")))
                        .getSheetAt(0)
                        .getRow(1)
                        .getCell(3);
        assertThat(owner.getStringCellValue()).isEqualTo("'=1+1");
    }

    private static Map<String, List<CSVRecord>> files(BatchView view) throws IOException {
        Map<String, List<CSVRecord>> files = new LinkedHashMap<>();
        CsvSheets.write(
                view,
                (name, content) -> {
                    String text = new String(content, StandardCharsets.UTF_8);
                    assertThat(text).startsWith("\uFEFF");
                    files.put(
                            name,
                            CSVFormat.RFC4180
                                    .builder()
                                    .setHeader()
                                    .get()
                                    .parse(new StringReader(text.substring(1)))
                                    .getRecords());
                });
        return files;
    }
}
