package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.batch.SampleWeek;

/** Both workbooks of the published sample week, recalculated by LibreOffice. */
@Tag("outside")
class SampleWeekInLibreOfficeTest {
    private static Path batch;

    @TempDir private Path folder;

    @BeforeAll
    static void prepare() throws IOException {
        batch = SampleWeek.published();
    }

    @ParameterizedTest
    @ValueSource(strings = {"summary.xlsx", "register-checked.xlsx"})
    void noResultChanges(String name) throws IOException {
        byte[] ours = Files.readAllBytes(batch.resolve(name));
        Map<String, Double> before = Workbooks.formulas(Workbooks.open(ours));
        Map<String, Double> after =
                Workbooks.formulas(Workbooks.open(LibreOffice.recalculated(folder, ours)));
        assertThat(before).isNotEmpty();
        assertThat(after.keySet()).isEqualTo(before.keySet());
        before.forEach(
                (place, value) ->
                        assertThat(after.get(place)).as(place).isCloseTo(value, within(1e-9)));
    }
}
