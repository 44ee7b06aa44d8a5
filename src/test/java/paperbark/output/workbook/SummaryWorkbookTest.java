package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.offer.Expected;
import paperbark.offer.OwnerPrice;
import paperbark.output.BatchView;
import paperbark.output.BatchViews;
import paperbark.output.Jobs;
import paperbark.output.Receivable;
import paperbark.value.Money;
import paperbark.value.SchemeName;

class SummaryWorkbookTest {

    // Source: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820), Bill and Maree.
    @Test
    void theTaxOfficesExampleComesOut() {
        BatchView view =
                BatchViews.of(
                        true,
                        List.of(
                                new Jobs("SB-1", "Bill and Maree Example", "Ballan")
                                        .price("7700.00", "1000.00")
                                        .caseFile()));
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(view));
        Sheet gst = workbook.getSheet("GST");
        for (String row : List.of("SB-1", "Total")) {
            assertThat(number(gst, row, "Full price")).isEqualTo("7700");
            assertThat(number(gst, row, "Assigned")).isEqualTo("1000");
            assertThat(number(gst, row, "Payable")).isEqualTo("6700");
            assertThat(number(gst, row, "GST in full price")).isEqualTo("700");
        }
        assertThat(Workbooks.cell(gst, "SB-1", "GST in full price").getCellFormula())
                .isEqualTo("ROUND(I8/11,2)");
        assertThat(evaluated(workbook, Workbooks.cell(gst, "SB-1", "GST in full price")))
                .isEqualTo("700");
    }

    @Test
    void totalsAreTheSumsOfTheBatch() {
        BatchView view = BatchViews.week();
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(view));
        Money net =
                view.cases().stream()
                        .flatMap(c -> c.coming().stream())
                        .map(Expected::net)
                        .reduce(Money.ZERO, Money::plus);
        Money gst =
                view.cases().stream()
                        .flatMap(c -> c.price().stream())
                        .map(OwnerPrice::gst)
                        .reduce(Money.ZERO, Money::plus);
        assertThat(number(workbook.getSheet("Expected claims"), "Total", "Buyer pays"))
                .isEqualTo(plain(net));
        assertThat(number(workbook.getSheet("GST"), "Total", "GST in full price"))
                .isEqualTo(plain(gst));
        assertThat(number(workbook.getSheet("Certificates"), "Total STC", "Certificates"))
                .isEqualTo("51");
        assertThat(number(workbook.getSheet("Certificates"), "Total VEEC", "Certificates"))
                .isEqualTo("22");
        Sheet summary = workbook.getSheet("Summary");
        assertThat(number(summary, "Jobs", "Figure")).isEqualTo("5");
        assertThat(number(summary, "Jobs held", "Figure")).isEqualTo("1");
        assertThat(number(summary, "STCs held", "Figure")).isEqualTo("13");
        assertThat(number(summary, "Buyers pay in all", "Together")).isEqualTo(plain(net));
        assertThat(number(summary, "GST, job by job", "All jobs")).isEqualTo(plain(gst));
    }

    @Test
    void anotherCalculatorGetsEveryStoredResult() {
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(BatchViews.week()));
        var stored = Workbooks.formulas(workbook);
        workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
        var calculated = Workbooks.formulas(workbook);
        assertThat(stored).hasSizeGreaterThan(60);
        stored.forEach(
                (place, value) ->
                        assertThat(calculated.get(place)).as(place).isCloseTo(value, within(1e-9)));
    }

    @Test
    void aChangedPriceMovesTheTotals() {
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(BatchViews.week()));
        Sheet gst = workbook.getSheet("GST");
        Workbooks.cell(gst, "SB-1042", "Full price").setCellValue(8800);
        workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
        assertThat(number(gst, "SB-1042", "Payable")).isEqualTo("7800");
        assertThat(number(gst, "SB-1042", "GST in full price")).isEqualTo("800");
        assertThat(number(workbook.getSheet("Summary"), "GST, job by job", "All jobs"))
                .isEqualTo("2155.05");
    }

    @Test
    void aFirmThatIsNotRegisteredShowsNoGst() {
        BatchView view =
                BatchViews.of(
                        false,
                        List.of(
                                new Jobs("SB-1", "Fern Placeholder", "Ballan")
                                        .priceWithoutGst("7700.00", "1000.00")
                                        .caseFile()));
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(view));
        XSSFSheet gst = workbook.getSheet("GST");
        assertThat(gst.getRow(1).getCell(0).getStringCellValue())
                .startsWith("The firm is not registered for GST");
        assertThat(number(gst, "SB-1", "GST in full price")).isEqualTo("0");
        assertThat(number(gst, "Total", "GST in full price")).isEqualTo("0");
        assertThat(number(gst, "Total", "Payable")).isEqualTo("6700");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+61 3",
                "-2+3",
                "@SUM(A1)",
                "=cmd|' /C calc'!A0",
                "=HYPERLINK(\"http://example.com\",\"x\")",
                "＝1+1",
                "_x003D_1+1",
                "'=1",
                "*",
                ">A"
            })
    void textNeverBecomesAFormula(String hostile) {
        BatchView view =
                BatchViews.of(
                        true,
                        List.of(
                                new Jobs("SB-1", hostile, hostile)
                                        .stc(13, hostile, "36.10")
                                        .caseFile(),
                                new Jobs("SB-2", "Fern Placeholder", "Ballan")
                                        .stc(5, "Kestrel Certificates", "36.10")
                                        .caseFile()));
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(view));
        Cell owner = Workbooks.cell(workbook.getSheet("Jobs"), "SB-1", "Owner");
        assertThat(owner.getCellType()).isEqualTo(CellType.STRING);
        assertThat(owner.getStringCellValue()).isEqualTo(hostile);
        assertThat(owner.getCellStyle().getQuotePrefixed())
                .isEqualTo("=+-@＝".indexOf(hostile.charAt(0)) >= 0);
        var stored = Workbooks.formulas(workbook);
        workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
        assertThat(Workbooks.formulas(workbook)).isEqualTo(stored);
    }

    @Test
    void twoRunsGiveTheSameBytes() throws Exception {
        byte[] first = SummaryWorkbook.of(BatchViews.week());
        Thread.sleep(2100); // zip files count in steps of two seconds
        assertThat(SummaryWorkbook.of(BatchViews.week())).isEqualTo(first);
    }

    @Test
    void holdsNoMacrosAndNoLinksToElsewhere() throws Exception {
        List<String> names = new ArrayList<>();
        try (ZipInputStream in =
                new ZipInputStream(
                        new ByteArrayInputStream(SummaryWorkbook.of(BatchViews.week())))) {
            for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
                names.add(e.getName());
                if (e.getName().endsWith(".rels")) {
                    assertThat(new String(in.readAllBytes(), "UTF-8"))
                            .doesNotContain("TargetMode=\"External\"");
                }
            }
        }
        assertThat(names).noneMatch(n -> n.contains("vba") || n.contains("externalLink"));
    }

    @Test
    void everySheetIsFrozenFilteredAndReadyToPrint() {
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(BatchViews.week()));
        List<String> names = new ArrayList<>();
        workbook.forEach(sheet -> names.add(sheet.getSheetName()));
        assertThat(names)
                .containsExactly(
                        "Summary",
                        "Jobs",
                        "Certificates",
                        "Offers compared",
                        "Every offer",
                        "Expected money",
                        "Expected claims",
                        "GST",
                        "GST by quarter",
                        "Closing dates",
                        "Received and overdue",
                        "Debtors by age",
                        "Findings",
                        "Rules and sources",
                        "How to read this");
        for (int i = 0; i < workbook.getNumberOfSheets(); i++) {
            XSSFSheet sheet = workbook.getSheetAt(i);
            assertThat(sheet.getPrintSetup().getLandscape()).isTrue();
            assertThat(sheet.getPrintSetup().getPaperSize()).isEqualTo((short) 9);
            assertThat(sheet.getFitToPage()).isTrue();
            assertThat(sheet.getPrintSetup().getFitWidth()).isEqualTo((short) 1);
            assertThat(workbook.getPrintArea(i)).isNotNull();
            if (i > 0) {
                assertThat(sheet.getPaneInformation().isFreezePane()).isTrue();
                assertThat(sheet.getTables()).hasSize(1);
                assertThat(sheet.getTables().get(0).getCTTable().isSetAutoFilter()).isTrue();
                assertThat(sheet.getRepeatingRows()).isNotNull();
                assertThat(sheet.getTables().get(0).getName()).matches("[A-Z][A-Za-z]+");
            }
        }
    }

    @Test
    void anEmptyBatchStillOpensAndAddsUpToNothing() {
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(BatchViews.of(true, List.of())));
        FormulaEvaluator evaluator = workbook.getCreationHelper().createFormulaEvaluator();
        evaluator.evaluateAll();
        assertThat(Workbooks.formulas(workbook).values()).isNotEmpty().allMatch(v -> v == 0);
    }

    @Test
    void closingDatesComeTheNearestFirstWithTheirDaysLeft() {
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(BatchViews.week()));
        Sheet sheet = workbook.getSheet("Closing dates");
        assertThat(sheet.getRow(3).getCell(0).getLocalDateTimeCellValue().toLocalDate())
                .isEqualTo(LocalDate.of(2026, 12, 7));
        assertThat(sheet.getRow(3).getCell(1).getNumericCellValue()).isEqualTo(12);
        assertThat(evaluated(workbook, sheet.getRow(3).getCell(1))).isEqualTo("12");
    }

    @Test
    void moneyByWeekHasTheSpreadsheetsOwnChart() {
        XSSFWorkbook workbook = Workbooks.open(SummaryWorkbook.of(BatchViews.week()));
        XSSFSheet sheet = workbook.getSheet("Expected money");
        XSSFChart chart = sheet.createDrawingPatriarch().getCharts().get(0);
        var bars = chart.getCTChart().getPlotArea().getBarChartArray(0);
        assertThat(bars.getSerList())
                .extracting(s -> s.getTx().getStrRef().getStrCache().getPtArray(0).getV())
                .containsExactly("Kestrel Certificates", "Pipit and Wren", "Whimbrel Exchange");
        assertThat(bars.getSerArray(0).getVal().getNumRef().getF())
                .isEqualTo("'Expected money'!$B$4");
        assertThat(bars.getSerArray(0).getVal().getNumRef().getNumCache().getPtArray(0).getV())
                .isEqualTo(
                        Double.toString(
                                Workbooks.cell(sheet, "Total", "Kestrel Certificates")
                                        .getNumericCellValue()));
    }

    @Test
    void withoutALedgerTheSheetSaysSoInOneLine() {
        XSSFSheet sheet =
                Workbooks.open(SummaryWorkbook.of(BatchViews.week()))
                        .getSheet("Received and overdue");
        assertThat(sheet.getRow(1).getCell(0).getStringCellValue())
                .isEqualTo(
                        "Nothing is known here yet: no ledger of earlier claims went into this run.");
        assertThat(number(sheet, "Total", "Still open")).isEqualTo("0");
    }

    @Test
    void whatTheLedgerKnowsIsOverdueByTheDay() {
        BatchView v = BatchViews.week();
        BatchView view =
                new BatchView(
                        v.info(),
                        v.firm(),
                        v.cases(),
                        v.findings(),
                        v.rules(),
                        List.of(
                                receivable("A", "500.00", LocalDate.of(2026, 11, 5), "120.00"),
                                receivable("B", "500.00", LocalDate.of(2026, 11, 5), "500.00"),
                                receivable("C", "500.00", LocalDate.of(2026, 12, 5), "0.00"),
                                receivable("D", "500.00", LocalDate.of(2026, 11, 5), "650.00")));
        XSSFWorkbook book = Workbooks.open(SummaryWorkbook.of(view));
        XSSFSheet sheet = book.getSheet("Received and overdue");
        assertThat(number(sheet, "A", "Days overdue")).isEqualTo("20");
        assertThat(number(sheet, "B", "Days overdue")).isEqualTo("0");
        assertThat(number(sheet, "C", "Days overdue")).isEqualTo("0");
        assertThat(number(sheet, "Total", "Still open")).isEqualTo("880");
        assertThat(number(sheet, "D", "Still open")).isEqualTo("0");
        assertThat(number(sheet, "Total", "More than expected")).isEqualTo("150");
        assertThat(number(book.getSheet("Debtors by age"), "Total", "Together")).isEqualTo("880");
        assertThat(number(sheet, "A", "Days to closing")).isEqualTo("310");
    }

    private static Receivable receivable(
            String job, String expected, LocalDate due, String received) {
        return new Receivable(
                job,
                SchemeName.STC,
                "Kestrel Certificates",
                14,
                Money.of(expected),
                due,
                Money.of(received),
                "sent",
                Optional.of(LocalDate.of(2027, 10, 1)));
    }

    @Test
    void theTotalOfGstIsReconciledBothWays() {
        Sheet gst =
                Workbooks.open(
                                SummaryWorkbook.of(
                                        BatchViews.of(
                                                true,
                                                List.of(
                                                        new Jobs("SB-1", "Fern", "Ballan")
                                                                .price("12.37", "0.00")
                                                                .caseFile(),
                                                        new Jobs("SB-2", "Moss", "Ballan")
                                                                .price("12.37", "0.00")
                                                                .caseFile(),
                                                        new Jobs("SB-3", "Reed", "Ballan")
                                                                .price("12.37", "0.00")
                                                                .caseFile()))))
                        .getSheet("GST");
        assertThat(number(gst, "Total", "GST in full price")).isEqualTo("3.36");
        assertThat(number(gst, "Worked out on the total", "GST in full price")).isEqualTo("3.37");
        assertThat(number(gst, "Rounding difference", "GST in full price")).isEqualTo("-0.01");
        assertThat(number(gst, "Full price less parts", "Full price")).isEqualTo("0");
    }

    @Test
    void theMoneyBlockAddsUpDownAndAcross() {
        Sheet summary = Workbooks.open(SummaryWorkbook.of(BatchViews.week())).getSheet("Summary");
        for (String column : List.of("Due, installed", "Booked", "Together", "Held, apart")) {
            BigDecimal paid = amount(summary, "Buyers pay in all", column);
            assertThat(
                            amount(summary, "Certificates at the offers' prices", column)
                                    .subtract(amount(summary, "Less buyers' fees", column))
                                    .add(amount(summary, "GST on top", column)))
                    .as(column)
                    .isEqualByComparingTo(paid);
            assertThat(
                            amount(summary, "Of this to owners", column)
                                    .add(
                                            amount(
                                                    summary,
                                                    "Of this GST on top, nobody's yet",
                                                    column))
                                    .add(amount(summary, "Of this to the firm", column)))
                    .as(column)
                    .isEqualByComparingTo(paid);
        }
        // SB-1044 is held: 13 x 36.10 - 15.00 and 18 x 71.255 - 15.00, half a cent up.
        assertThat(amount(summary, "Of this to the firm", "Held, apart"))
                .isEqualByComparingTo("1721.89");
        // SB-1042 is booked: 17 x 36.10 - 15.00.
        assertThat(amount(summary, "Of this to the firm", "Booked")).isEqualByComparingTo("598.70");
    }

    // G1 and 1A are labels of the business activity statement.
    @Test
    void theQuarterShowsSalesUnderTheLabelsOfTheActivityStatement() {
        Sheet quarters =
                Workbooks.open(SummaryWorkbook.of(BatchViews.week())).getSheet("GST by quarter");
        int first = 4;
        List<String> rows = new ArrayList<>();
        for (int row = first; row < first + 3; row++) {
            rows.add(
                    quarters.getRow(row).getCell(0).getStringCellValue()
                            + ", "
                            + quarters.getRow(row).getCell(1).getStringCellValue()
                            + ", G1 "
                            + plain(quarters.getRow(row).getCell(3).getNumericCellValue())
                            + ", 1A "
                            + plain(quarters.getRow(row).getCell(4).getNumericCellValue()));
        }
        assertThat(quarters.getRow(3).getCell(3).getStringCellValue()).startsWith("G1 ");
        assertThat(quarters.getRow(3).getCell(4).getStringCellValue()).startsWith("1A ");
        assertThat(quarters.getRow(3).getCell(6).getStringCellValue()).startsWith("1B ");
        // 4,400 of SB-1041 alone: SB-1043 was installed the year before.
        assertThat(rows)
                .containsExactly(
                        "Oct to Dec 2025, installed, G1 5555.55, 1A 505.05",
                        "Oct to Dec 2026, installed, G1 4400, 1A 400",
                        "Oct to Dec 2026, installed, held, G1 4950, 1A 450");
    }

    private static BigDecimal amount(Sheet sheet, String row, String heading) {
        return BigDecimal.valueOf(Workbooks.cell(sheet, row, heading).getNumericCellValue())
                .setScale(2, RoundingMode.HALF_UP);
    }

    private static String number(Sheet sheet, String row, String heading) {
        return plain(Workbooks.cell(sheet, row, heading).getNumericCellValue());
    }

    private static String evaluated(XSSFWorkbook workbook, Cell cell) {
        return plain(
                workbook.getCreationHelper()
                        .createFormulaEvaluator()
                        .evaluate(cell)
                        .getNumberValue());
    }

    private static String plain(double value) {
        return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }

    private static String plain(Money money) {
        return money.amount().stripTrailingZeros().toPlainString();
    }
}
