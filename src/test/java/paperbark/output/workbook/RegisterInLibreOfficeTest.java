package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Map;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.BatchViews;

@Tag("outside")
class RegisterInLibreOfficeTest {
    @TempDir Path folder;

    @Test
    void opensWithItsCommentsAndWithoutAChangedFigure() {
        byte[] ours =
                CheckedRegister.of(
                        BatchViews.REGISTER, Registers.xlsx(), BatchViews.week().findings());
        Map<String, Double> before = Workbooks.formulas(Workbooks.open(Registers.xlsx()));
        XSSFWorkbook after = Workbooks.open(LibreOffice.recalculated(folder, ours));
        Map<String, Double> results = Workbooks.formulas(after);
        assertThat(results.keySet()).isEqualTo(before.keySet());
        before.forEach(
                (place, value) ->
                        assertThat(results.get(place)).as(place).isCloseTo(value, within(1e-9)));
        assertThat(after.getSheetAt(0).getCellComment(new CellAddress("H7")).getString())
                .hasToString(
                        "Stop: serial-twice\nTwo rows of the register name this serial.\nDo: Read"
                                + " the number off both tanks again.");
    }

    @Test
    void anXlsCarriedOverCalculatesTheSame() {
        byte[] ours =
                CheckedRegister.of(
                        BatchViews.REGISTER, Registers.xls(), BatchViews.week().findings());
        Map<String, Double> before = Workbooks.formulas(Workbooks.open(Registers.xlsx()));
        Map<String, Double> after =
                Workbooks.formulas(Workbooks.open(LibreOffice.recalculated(folder, ours)));
        assertThat(after.keySet()).isEqualTo(before.keySet());
        before.forEach(
                (place, value) ->
                        assertThat(after.get(place)).as(place).isCloseTo(value, within(1e-9)));
    }
}
