package paperbark.output.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.ooxml.POIXMLProperties.CoreProperties;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.output.BatchView;
import paperbark.output.table.BatchTables;
import paperbark.output.table.SummaryTables;
import paperbark.output.table.Table;

/** The accountant's workbook: counts, certificates, money, GST, closing dates, findings, rules. */
public final class SummaryWorkbook {
    private static final String SUMMARY = "Summary";

    private SummaryWorkbook() {}

    /**
     * The workbook of a batch.
     *
     * @return the bytes of an .xlsx file, the same for the same batch
     */
    public static byte[] of(BatchView view) {
        BatchTables tables = BatchTables.of(view);
        Map<String, List<Table>> sheets = new LinkedHashMap<>();
        sheets.put(SUMMARY, SummaryTables.of(view, tables));
        tables.inOrder().forEach(table -> sheets.put(table.title(), List.of(table)));
        Map<String, Placement> places = Placement.of(sheets);
        try (XSSFWorkbook workbook = new XSSFWorkbook()) {
            properties(workbook, view);
            XSSFFont usual = workbook.getFontAt(0);
            usual.setFontName("Arial");
            usual.setFontHeightInPoints((short) 10);
            SheetWriter writer = new SheetWriter(workbook, places);
            String header = view.firm().name() + ", batch " + view.info().id();
            for (Map.Entry<String, List<Table>> entry : sheets.entrySet()) {
                XSSFSheet sheet = writer.write(entry.getKey());
                SheetSetup.print(sheet, header);
                if (entry.getKey().equals(SUMMARY)) {
                    sheet.getPrintSetup().setFitHeight((short) 1);
                } else {
                    SheetSetup.headings(sheet, places.get(entry.getValue().get(0).name()), true);
                }
            }
            return bytes(workbook);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void properties(XSSFWorkbook workbook, BatchView view) {
        CoreProperties core = workbook.getProperties().getCoreProperties();
        LocalDate day = view.info().preparedOn();
        Optional<Date> date = Optional.of(Date.from(day.atStartOfDay(ZoneOffset.UTC).toInstant()));
        core.setCreator("Paperbark " + view.info().program());
        core.setTitle("Summary of batch " + view.info().id());
        core.setCreated(date);
        core.setModified(date);
    }

    /** The workbook's file, packed so that equal contents give equal bytes. */
    static byte[] bytes(XSSFWorkbook workbook) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        workbook.write(out);
        return SteadyZip.of(out.toByteArray());
    }
}
