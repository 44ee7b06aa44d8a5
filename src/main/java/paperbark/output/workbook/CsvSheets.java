package paperbark.output.workbook;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import paperbark.output.BatchView;
import paperbark.output.table.SafeCsv;
import paperbark.output.table.Table;
import paperbark.output.table.TableColumn;
import paperbark.output.table.Value;

/**
 * The workbook's sheets as plain CSV files: headings, then a line a row, without notes and totals,
 * so that other programs can read and add them up. Days as 2026-11-23, amounts as 1234.50; text as
 * {@link SafeCsv} writes it, numbers, negative ones too, as they are.
 */
public final class CsvSheets {
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
        return SafeCsv.of(
                table.columns().stream().map(TableColumn::heading).toList(),
                () ->
                        table.rows().stream()
                                .map(row -> row.stream().map(cell -> plain(cell.value())).toList())
                                .iterator());
    }

    private static String plain(Value value) {
        if (value instanceof Value.Text text) {
            return SafeCsv.text(text.text());
        }
        if (value instanceof Value.Day day) {
            return day.day().toString();
        }
        BigDecimal number = value.amount();
        return value instanceof Value.Blank || value instanceof Value.Flag
                ? value.shown()
                : number.toPlainString();
    }
}
