package paperbark.output.workbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.poi.ooxml.POIXMLProperties.CoreProperties;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.output.BatchView;
import paperbark.output.table.BatchTables;
import paperbark.output.table.SummaryTables;
import paperbark.output.table.Table;

/**
 * The accountant's workbook: counts, certificates, offers, money, GST, closing dates, findings,
 * rules. Rows leave memory as they are written, so that a batch of any size can be told.
 */
public final class SummaryWorkbook {
    private static final String SUMMARY = "Summary";

    /** Tables of the first sheet that begin a printed page. */
    private static final Set<String> PAGES = Set.of("Money", "Contents");

    private SummaryWorkbook() {}

    /**
     * The workbook of a batch.
     *
     * @return the bytes of an .xlsx file, the same for the same batch
     */
    public static byte[] of(BatchView view) {
        Map<String, List<Table>> sheets = sheets(view);
        Map<String, Placement> places = Placement.of(sheets);
        try (XSSFWorkbook base = new XSSFWorkbook();
                SXSSFWorkbook workbook = StreamedBook.over(base)) {
            properties(base, view);
            XSSFFont usual = base.getFontAt(0);
            usual.setFontName("Arial");
            usual.setFontHeightInPoints((short) 10);
            SheetWriter writer = new SheetWriter(workbook, places);
            String header = view.firm().name() + ", batch " + view.info().id();
            for (Map.Entry<String, List<Table>> entry : sheets.entrySet()) {
                writer.write(entry.getKey());
                XSSFSheet sheet = base.getSheet(entry.getKey());
                SheetSetup.print(sheet, header);
                finish(sheet, entry.getValue().stream().map(t -> places.get(t.name())).toList());
            }
            return StreamedBook.bytes(workbook);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Makes an empty one, since the library takes long to make its first. */
    public static byte[] wake() throws IOException {
        try (XSSFWorkbook base = new XSSFWorkbook();
                SXSSFWorkbook workbook = StreamedBook.over(base)) {
            workbook.createSheet(SUMMARY);
            return StreamedBook.bytes(workbook);
        }
    }

    /** The tables of each sheet, from left to right and from top to bottom. */
    static Map<String, List<Table>> sheets(BatchView view) {
        BatchTables tables = BatchTables.of(view);
        Map<String, List<Table>> sheets = new LinkedHashMap<>();
        sheets.put(SUMMARY, SummaryTables.of(view, tables));
        tables.inOrder().forEach(table -> sheets.put(table.title(), List.of(table)));
        return sheets;
    }

    private static void finish(XSSFSheet sheet, List<Placement> here) {
        Placement first = here.get(0);
        int last = here.get(here.size() - 1).afterRow() - 1;
        if (sheet.getSheetName().equals(SUMMARY)) {
            here.stream()
                    .filter(p -> PAGES.contains(p.table().name()))
                    .forEach(p -> sheet.setRowBreak(p.titleRow() - 1));
        } else {
            SheetSetup.headings(sheet, first, true);
        }
        if (first.table().name().equals("Weeks")) {
            WeeksChart.draw(sheet, first);
            last += WeeksChart.HEIGHT_ROWS + 2;
        }
        SheetSetup.area(sheet, here, last);
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
}
