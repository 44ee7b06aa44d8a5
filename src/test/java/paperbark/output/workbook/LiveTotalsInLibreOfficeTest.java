package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.BatchView;
import paperbark.output.BatchViews;
import paperbark.output.Receivable;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** Somebody changes inputs, LibreOffice recalculates, and every total that hangs on them moves. */
@Tag("outside")
class LiveTotalsInLibreOfficeTest {
    @TempDir private static Path folder;
    private static XSSFWorkbook before;
    private static XSSFWorkbook after;

    @BeforeAll
    static void change() throws IOException {
        byte[] ours = SummaryWorkbook.of(view());
        before = Workbooks.open(ours);
        XSSFWorkbook changed = Workbooks.open(ours);
        // One certificate more at $36.10, ten dollars less to come, $1,100 more of a price.
        add(changed, "Expected claims", "SB-1041", "Certificates", 1);
        add(changed, "GST", "SB-1041", "Full price", 1100);
        add(changed, "Received and overdue", "SB-0900", "Received", 10);
        // The second line of Every offer is the one taken for the first claim: a dollar more each.
        Cell price = changed.getSheet("Every offer").getRow(5).getCell(6);
        price.setCellValue(price.getNumericCellValue() + 1);
        Cell closing = changed.getSheet("Closing dates").getRow(3).getCell(0);
        closing.setCellValue(closing.getNumericCellValue() + 5);
        Cell certificates =
                Workbooks.cell(changed.getSheet("Certificates"), "SB-1041", "Certificates");
        certificates.setCellValue(certificates.getNumericCellValue() + 2);
        Cell stcs = Workbooks.cell(changed.getSheet("Jobs"), "SB-1041", "STCs");
        stcs.setCellValue(stcs.getNumericCellValue() + 3);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        changed.write(out);
        after = Workbooks.open(LibreOffice.recalculated(folder, out.toByteArray()));
    }

    @Test
    void expectedMoneyFollowsThroughClaimsWeeksAndSummary() {
        moved("Expected claims", "SB-1041", "Gross", 36.10);
        moved("Expected claims", "Total", "To the firm", 36.10);
        moved("Expected money", "Total", "Kestrel Certificates", 36.10);
        moved("Expected money", "Total", "From all buyers", 36.10);
        moved("Summary", "Buyers pay in all", "Together", 36.10);
    }

    @Test
    void gstFollowsJobByJobAndOnTheTotal() {
        moved("GST", "SB-1041", "GST in full price", 100);
        moved("GST", "SB-1041", "Price without GST", 1000);
        moved("GST", "Total", "GST in full price", 100);
        moved("GST by quarter", "Oct to Dec 2026", "1A GST on sales", 100);
        moved("Summary", "GST, worked out on the total", "All jobs", 100);
    }

    @Test
    void offersAreComparedAnew() {
        moved("Offers compared", "SB-1041", "Worth to the firm", 13);
        moved("Offers compared", "SB-1041", "Difference", 13);
        moved("Offers compared", "Total", "Difference", 13);
        moved("Summary", "Taken less runner-up, all claims", "Figure", 13);
    }

    @Test
    void whatIsReceivedIsNoLongerOpen() {
        moved("Received and overdue", "SB-0900", "Still open", -10);
        moved("Received and overdue", "Total", "Still open", -10);
        moved("Debtors by age", "Total", "Together", -10);
    }

    @Test
    void certificatesJobsAndClosingDatesFollowToo() {
        moved("Certificates", "Total STC", "Certificates", 2);
        moved("Summary", "STCs", "Figure", 2);
        moved("Jobs", "Total", "STCs", 3);
        assertThat(number(after.getSheet("Closing dates").getRow(3).getCell(1)))
                .isEqualTo(number(before.getSheet("Closing dates").getRow(3).getCell(1)) + 5);
    }

    private static void moved(String sheet, String row, String heading, double by) {
        double was = number(Workbooks.cell(before.getSheet(sheet), row, heading));
        assertThat(number(Workbooks.cell(after.getSheet(sheet), row, heading)))
                .as(sheet + ", " + row + ", " + heading)
                .isCloseTo(was + by, within(1e-9));
    }

    private static double number(Cell cell) {
        return cell.getNumericCellValue();
    }

    private static void add(
            XSSFWorkbook workbook, String sheet, String row, String heading, double more) {
        Cell cell = Workbooks.cell(workbook.getSheet(sheet), row, heading);
        cell.setCellValue(cell.getNumericCellValue() + more);
    }

    private static BatchView view() {
        BatchView v = BatchViews.week();
        return new BatchView(
                v.info(),
                v.firm(),
                v.cases(),
                v.findings(),
                v.rules(),
                List.of(
                        new Receivable(
                                "SB-0900",
                                SchemeName.STC,
                                "Kestrel Certificates",
                                14,
                                Money.of("500.00"),
                                LocalDate.of(2026, 11, 5),
                                Money.of("120.00"),
                                "part paid",
                                Optional.of(LocalDate.of(2027, 10, 1)))));
    }
}
