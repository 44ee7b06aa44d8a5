package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.BatchView;
import paperbark.output.BatchViews;
import paperbark.output.Jobs;

@Tag("outside")
class SummaryInLibreOfficeTest {
    @TempDir Path folder;

    @Test
    void noTotalChanges() {
        byte[] ours = SummaryWorkbook.of(BatchViews.week());
        Map<String, Double> before = Workbooks.formulas(Workbooks.open(ours));
        Map<String, Double> after =
                Workbooks.formulas(Workbooks.open(LibreOffice.recalculated(folder, ours)));
        assertThat(after.keySet()).isEqualTo(before.keySet());
        before.forEach(
                (place, value) ->
                        assertThat(after.get(place)).as(place).isCloseTo(value, within(1e-9)));
    }

    // Without this the test above would also pass if nothing were recalculated.
    @Test
    void aWrongStoredResultWouldBeSeen() throws Exception {
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(BatchViews.week()));
        Cell total = Workbooks.cell(workbook.getSheet("GST"), "Total", "Full price");
        total.setCellValue(1);
        ByteArrayOutputStream wrong = new ByteArrayOutputStream();
        workbook.write(wrong);
        XSSFWorkbook after = Workbooks.open(LibreOffice.recalculated(folder, wrong.toByteArray()));
        assertThat(
                        Workbooks.cell(after.getSheet("GST"), "Total", "Full price")
                                .getNumericCellValue())
                .isCloseTo(22605.55, within(1e-9));
    }

    @Test
    void namesThatLookLikeFormulasOrPatternsStayTextAndAddUp() {
        List<String> hostile = List.of("=1+1", "@SUM(A1)", "*", ">A", "-2+3", "K?strel", "~x");
        BatchView view =
                BatchViews.of(
                        true,
                        hostile.stream()
                                .map(
                                        name ->
                                                new Jobs("SB-" + name.hashCode(), name, name)
                                                        .stc(13, name, "36.10")
                                                        .caseFile())
                                .toList());
        byte[] ours = SummaryWorkbook.of(view);
        Map<String, Double> before = Workbooks.formulas(Workbooks.open(ours));
        XSSFWorkbook after = Workbooks.open(LibreOffice.recalculated(folder, ours));
        assertThat(Workbooks.formulas(after)).isEqualTo(before);
        for (int i = 0; i < hostile.size(); i++) {
            Cell owner = after.getSheet("Jobs").getRow(3 + i).getCell(3);
            assertThat(owner.getCellType()).isEqualTo(CellType.STRING);
            assertThat(owner.getStringCellValue()).isEqualTo(hostile.get(i));
        }
    }
}
