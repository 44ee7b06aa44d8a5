package paperbark.output.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.firm.TableGuide;
import paperbark.firm.TableRows;

/**
 * The firm's tables as one workbook to type into: a sheet a table, with notes on the headings,
 * drop-downs, formats that keep zeros, and an example row that does not count.
 */
public final class TablesWorkbook {
    private static final String START = "Start here";
    private static final int NAME_WIDTH = 20;
    private static final int TEXT_WIDTH = 100;

    private TablesWorkbook() {}

    /**
     * The workbook.
     *
     * @param tables in the order of their sheets
     * @param words the lists of words that columns name with {@code @}, by that name
     * @return the bytes of an .xlsx file, the same for the same tables
     */
    public static byte[] of(List<TableRows> tables, Map<String, List<String>> words) {
        return of(tables, words, true);
    }

    /** The same without example rows. */
    public static byte[] plain(List<TableRows> tables, Map<String, List<String>> words) {
        return of(tables, words, false);
    }

    private static byte[] of(
            List<TableRows> tables, Map<String, List<String>> words, boolean examples) {
        try (XSSFWorkbook workbook = FreshBook.make()) {
            FormLook look = new FormLook(workbook);
            ListsSheet lists = new ListsSheet(workbook);
            start(workbook, tables, look);
            List<String> names = tables.stream().map(TableRows::name).toList();
            for (TableRows table : tables) {
                new TableSheet(workbook.createSheet(table.name()), look, lists, names, examples)
                        .write(table, words);
            }
            lists.hide();
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            workbook.write(bytes);
            return SteadyZip.of(bytes.toByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void start(XSSFWorkbook workbook, List<TableRows> tables, FormLook look) {
        XSSFSheet sheet = workbook.createSheet(START);
        sheet.setColumnWidth(0, NAME_WIDTH * 256);
        sheet.setColumnWidth(1, TEXT_WIDTH * 256);
        sheet.setDisplayGridlines(false);
        line(sheet, look, "The firm's tables", "").getCell(0).setCellStyle(look.title());
        line(
                sheet,
                look,
                "",
                "Fill in the sheets from left to right. Each row is a fact of yours.");
        line(sheet, look, "", "Grey rows that begin with \"Example:\" do not count; delete them.");
        line(sheet, look, "", "Rest the mouse on a heading to see what belongs below it.");
        line(sheet, look, "", "Headings are locked without a password; columns of your own may");
        line(sheet, look, "", "follow on the right, and a column \"note\" is for your remarks.");
        line(sheet, look, "", "");
        for (TableRows table : tables) {
            line(sheet, look, table.name(), TableGuide.of(table.name()).about());
        }
        SheetSetup.print(sheet, START);
    }

    private static Row line(XSSFSheet sheet, FormLook look, String name, String text) {
        Row row = sheet.createRow(sheet.getPhysicalNumberOfRows());
        row.createCell(0).setCellValue(name);
        row.createCell(1).setCellValue(text);
        row.getCell(1).setCellStyle(look.fixed());
        return row;
    }
}
