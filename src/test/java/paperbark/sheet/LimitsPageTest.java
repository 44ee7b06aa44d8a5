package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The manual's page of limits says the numbers that the program has. */
class LimitsPageTest {
    private String page = "";

    @BeforeEach
    void readThePage() throws IOException {
        page = Files.readString(Path.of("src/site/markdown/limits.md"));
    }

    @Test
    void eachLimitOfARegisterStandsInItsRow() {
        has("the file", Limits.FILE_BYTES, " bytes");
        has("unpacked", Limits.INFLATED_BYTES / 1024 / 1024, " MB");
        has("parts of a workbook", Limits.PARTS, "");
        has("rows with values on a sheet", Limits.FILLED_ROWS, "");
        has("jobs", Limits.ROWS, "");
        has("columns", Limits.COLUMNS, "");
        has("cells with values on a sheet", Limits.VALUES, "");
        has("rows with values or formats on a sheet", Limits.FORMATTED_ROWS, "");
        has("cells of an `.xls` or `.ods`", Limits.CELLS, "");
        has("entries of a workbook's table of texts", Limits.TEXTS, "");
        has("text of a workbook's part", Limits.TEXT_CHARACTERS / 1_000_000, " million characters");
        has("text of one cell", Limits.CELL_CHARACTERS, " characters");
        assertThat(page).contains("unpacks to more than " + Limits.STREAMED_BYTES / 1024 / 1024);
    }

    private void has(String what, long limit, String unit) {
        assertThat(page).contains(String.format(Locale.ROOT, "| %s | %,d%s |", what, limit, unit));
    }
}
