package paperbark.output.workbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import paperbark.output.BatchView;
import paperbark.output.table.Table;
import paperbark.output.table.TableCell;
import paperbark.output.table.Value;

/**
 * The workbook's sheets as plain CSV files: headings, then a line a row, without notes and totals,
 * so that other programs can read and add them up. UTF-8 with a mark at the start, commas, lines
 * that end as Windows wants them; days as 2026-11-23, amounts as 1234.50.
 *
 * <p>Text that a spreadsheet would run as a formula gets an apostrophe in front: a CSV file cannot
 * say that a cell is text. So that the apostrophe can be taken off again without a doubt, text that
 * begins with one gets another. Numbers, negative ones too, are left as they are.
 */
public final class CsvSheets {
    private static final String MARK = "\uFEFF";
    private static final String SUMMARY = "Summary";

    /** Takes one finished file. */
    public interface Sink {
        /** Keeps the file. */
        void keep(String name, byte[] content) throws IOException;
    }

    private CsvSheets() {}

    /** Writes the files one after the other. */
    public static void write(BatchView view, Sink sink) throws IOException {
        for (Map.Entry<String, List<Table>> sheet : SummaryWorkbook.sheets(view).entrySet()) {
            for (Table table : sheet.getValue()) {
                // The list of the other sheets is for leafing through a workbook only.
                if (!table.name().equals("Contents")) {
                    sink.keep(name(sheet.getKey(), table), of(table));
                }
            }
        }
    }

    private static String name(String sheet, Table table) {
        String words = sheet.equals(SUMMARY) ? sheet + " " + table.name() : sheet;
        return words.replaceAll("(?<=[a-z])(?=[A-Z])", "-")
                        .toLowerCase(Locale.ROOT)
                        .replaceAll("[^a-z0-9]+", "-")
                + ".csv";
    }

    /** One table as a file. */
    static byte[] of(Table table) {
        StringBuilder text = new StringBuilder(MARK);
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord(table.columns().stream().map(c -> safe(c.heading())).toList());
            for (List<TableCell> row : table.rows()) {
                List<String> line = new ArrayList<>();
                row.forEach(cell -> line.add(plain(cell.value())));
                printer.printRecord(line);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String plain(Value value) {
        if (value instanceof Value.Text text) {
            return safe(text.text());
        }
        if (value instanceof Value.Day day) {
            return day.day().toString();
        }
        BigDecimal number = value.amount();
        return value instanceof Value.Blank || value instanceof Value.Flag
                ? value.shown()
                : number.toPlainString();
    }

    private static String safe(String text) {
        String seen = text.stripLeading();
        return Texts.looksLikeFormula(text) || Texts.looksLikeFormula(seen) || text.startsWith("'")
                ? "'" + text
                : text;
    }
}
