package paperbark.output.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.firm.ColumnGuide.Holds;

/**
 * An empty list to type into: headings, and below each heading cells that keep zeros, take days as
 * days and offer the words that are understood.
 */
public final class ListToFill {
    private static final int ROWS = 2000;
    private static final int NARROWEST = 12;

    private ListToFill() {}

    /**
     * A column of the list.
     *
     * @param heading as the firm calls it
     * @param holds what is typed below it
     * @param choices the words to choose from; empty where anything of its kind will do
     * @param note shown while a cell is filled in
     */
    public record Entry(String heading, Holds holds, List<String> choices, String note) {
        /** Keeps the list from being changed. */
        public Entry {
            choices = List.copyOf(choices);
        }
    }

    /**
     * The list.
     *
     * @param sheetName its sheet's name
     * @return the bytes of an .xlsx file
     */
    public static byte[] of(String sheetName, List<Entry> entries) {
        try (XSSFWorkbook workbook = FreshBook.make()) {
            FormLook look = new FormLook(workbook);
            ListsSheet lists = new ListsSheet(workbook);
            XSSFSheet sheet = workbook.createSheet(sheetName);
            CellRules rules = new CellRules(sheet, lists);
            XSSFRow headings = sheet.createRow(0);
            for (int i = 0; i < entries.size(); i++) {
                Entry entry = entries.get(i);
                XSSFCell heading = headings.createCell(i);
                heading.setCellValue(Texts.stored(entry.heading()));
                heading.setCellStyle(look.heading());
                sheet.setDefaultColumnStyle(i, look.open(entry.holds()));
                sheet.setColumnWidth(i, Math.max(NARROWEST, entry.heading().length() + 2) * 256);
                rule(rules, new CellRules.Area(1, ROWS, i), entry);
            }
            sheet.createFreezePane(1, 1);
            sheet.setAutoFilter(new CellRangeAddress(0, 0, 0, entries.size() - 1));
            SheetSetup.form(sheet, sheetName, entries.size());
            lists.hide();
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            workbook.write(bytes);
            return SteadyZip.of(bytes.toByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void rule(CellRules rules, CellRules.Area area, Entry entry) {
        if (entry.choices().isEmpty()) {
            Holds holds = entry.holds() == Holds.NAME ? Holds.TEXT : entry.holds();
            rules.kind(area, holds, entry.heading(), entry.note());
        } else {
            rules.choice(area, entry.choices(), entry.heading(), entry.note());
        }
    }
}
