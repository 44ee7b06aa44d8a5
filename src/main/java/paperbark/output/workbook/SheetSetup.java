package paperbark.output.workbook;

import java.util.List;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PaperSize;
import org.apache.poi.ss.usermodel.PrintOrientation;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFPrintSetup;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTTableColumn;

/** How a sheet of ours scrolls, filters and prints. */
final class SheetSetup {
    /** So many letters in a row can be read on a page on its side. */
    private static final int READABLE = 170;

    /** Of a column's width a letter takes so many. */
    private static final int UNITS = 256;

    private SheetSetup() {}

    /** Landscape A4, as wide as the page, with page numbers. */
    static void print(XSSFSheet sheet, String header) {
        XSSFPrintSetup setup = sheet.getPrintSetup();
        setup.setPaperSize(PaperSize.A4_PAPER);
        setup.setOrientation(PrintOrientation.LANDSCAPE);
        sheet.setFitToPage(true);
        setup.setFitWidth((short) 1);
        setup.setFitHeight((short) 0);
        sheet.setMargin(PageMargin.LEFT, 0.4);
        sheet.setMargin(PageMargin.RIGHT, 0.4);
        // An ampersand is a command in headers and footers.
        sheet.getHeader().setLeft(header.replace("&", "&&"));
        sheet.getHeader().setRight("&A");
        sheet.getFooter().setRight("Page &P of &N");
    }

    /**
     * The same of a sheet to type into, whose headings stand in its first row and whose rows are
     * known by their first column: both stand on every page, and a sheet that would be too small to
     * read on one is as wide as several.
     *
     * @param columns how many columns it has
     */
    static void form(XSSFSheet sheet, String header, int columns) {
        print(sheet, header);
        sheet.setRepeatingRows(new CellRangeAddress(0, 0, -1, -1));
        sheet.setRepeatingColumns(new CellRangeAddress(-1, -1, 0, 0));
        sheet.setPrintGridlines(true);
        int first = sheet.getColumnWidth(0) / UNITS;
        int others = 0;
        for (int i = 1; i < columns; i++) {
            others += sheet.getColumnWidth(i) / UNITS;
        }
        int room = READABLE - first;
        sheet.getPrintSetup().setFitWidth((short) Math.max(1, (others + room - 1) / room));
    }

    /** Headings stay in sight and on every printed page; each column can be filtered. */
    static void headings(XSSFSheet sheet, Placement place, boolean named) {
        int last = place.table().columns().size() - 1;
        boolean keyed = place.table().columns().get(0).key().equals("job");
        sheet.createFreezePane(keyed ? 1 : 0, place.firstRow());
        sheet.setRepeatingRows(
                new CellRangeAddress(place.headingRow(), place.headingRow(), -1, -1));
        if (named) {
            table(sheet, place, last);
        } else {
            sheet.setAutoFilter(new CellRangeAddress(place.headingRow(), place.lastRow(), 0, last));
        }
    }

    private static void table(XSSFSheet sheet, Placement place, int last) {
        AreaReference area =
                new AreaReference(
                        new CellReference(place.headingRow(), 0),
                        new CellReference(place.lastRow(), last),
                        SpreadsheetVersion.EXCEL2007);
        XSSFTable table = sheet.createTable(area);
        table.setName(place.table().name());
        table.setDisplayName(place.table().name());
        table.getCTTable().addNewAutoFilter().setRef(area.formatAsString());
        // Rows that were streamed are gone by now, and with them the headings.
        List<CTTableColumn> columns = table.getCTTable().getTableColumns().getTableColumnList();
        for (int i = 0; i <= last; i++) {
            columns.get(i).setName(place.table().columns().get(i).heading());
        }
    }

    /** Prints from the first cell to the last of these tables, or further down. */
    static void area(XSSFSheet sheet, List<Placement> places, int lastRow) {
        int last = places.stream().mapToInt(p -> p.table().columns().size()).max().orElse(1) - 1;
        XSSFWorkbook workbook = sheet.getWorkbook();
        workbook.setPrintArea(workbook.getSheetIndex(sheet), 0, last, 0, lastRow);
    }
}
