package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.finding.FindingCode.SHEET_NOT_FOUND;
import static paperbark.sheet.Books.codes;
import static paperbark.sheet.Books.row;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetRuleTest {
    @TempDir Path folder;

    @ParameterizedTest
    @CsvSource({
        "Nov 2026, 2026-11",
        "november 26, 2026-11",
        "Jobs Sept-2026, 2026-09",
        "2026-11, 2026-11",
        "202611, 2026-11",
        "11/2026, 2026-11",
        "Jobs 3.2026, 2026-03"
    })
    void namesOfSheetsTellTheirMonth(String name, String month) {
        assertThat(SheetRule.month(name)).map(Object::toString).contains(month);
    }

    @ParameterizedTest
    @CsvSource({"Lists", "Week 47", "Nov", "Dismay 20", "13/2026"})
    void otherNamesTellNone(String name) {
        assertThat(SheetRule.month(name)).isEmpty();
    }

    @Test
    void theNewestMonthIsTakenWhereverItsTabStands() {
        assertThat(read(List.of("newest month"), "Dec 2025", "Nov 2026", "Prices", "Oct 2026"))
                .containsExactly("Nov 2026");
    }

    @Test
    void everySheetThatMatchesIsReadAndEmptyOnesAreLeftOut() {
        assertThat(read(List.of("jobs *"), "Jobs Geelong", "Jobs empty", "Prices", "Jobs Ballan"))
                .containsExactly("Jobs Geelong", "Jobs Ballan");
    }

    @Test
    void aRuleThatMeansNoSheetSaysWhichThereAre() {
        Reading<ReadList> reading = reading(List.of("Jobs *"), "Week 47", "Week 48");
        assertThat(codes(reading)).containsExactly(SHEET_NOT_FOUND);
        assertThat(reading.findings().get(0).fact()).contains("\"Jobs *\"", "\"Week 48\"");
    }

    @Test
    void aSheetNamedOnTheCommandLineComesFirst() {
        Path file = Books.save(folder, "week.xlsx", book("Nov 2026", "Oct 2026"));
        assertThat(
                        SheetReader.readAll(
                                        file,
                                        Books.KNOWN,
                                        Optional.of("Oct 2026"),
                                        new SheetRule(List.of("newest month")))
                                .result()
                                .orElseThrow()
                                .sheets())
                .extracting(Sheet::name)
                .containsExactly("Oct 2026");
    }

    @Test
    void theColumnsTableHoldsTheRule() {
        Sheet table =
                Books.sheet(
                        SheetReader.readCsv(
                                "columns.csv",
                                "field,alias\njob,Nr\nsheet,newest month\n"
                                        .getBytes(java.nio.charset.StandardCharsets.UTF_8),
                                ColumnNames::isOwnHeading));
        ColumnNames<paperbark.job.Field> names =
                ColumnNames.of(
                        paperbark.job.Field.values(),
                        table,
                        (row, why) -> {
                            throw new AssertionError(why);
                        });
        assertThat(names.sheets().patterns()).containsExactly("newest month");
    }

    private List<String> read(List<String> patterns, String... sheets) {
        return reading(patterns, sheets).result().orElseThrow().sheets().stream()
                .map(Sheet::name)
                .toList();
    }

    private Reading<ReadList> reading(List<String> patterns, String... sheets) {
        return SheetReader.readAll(
                Books.save(folder, "week.xlsx", book(sheets)),
                Books.KNOWN,
                Optional.empty(),
                new SheetRule(patterns));
    }

    private static byte[] book(String... names) {
        try (XSSFWorkbook book = new XSSFWorkbook()) {
            for (String name : names) {
                org.apache.poi.ss.usermodel.Sheet sheet = book.createSheet(name);
                row(sheet, 1, "Job", "Owner", "Date", "Serial");
                if (!name.endsWith("empty")) {
                    row(sheet, 2, "SB-1", "Ann");
                }
            }
            return Books.bytes(book);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
