package paperbark.output.table;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * CSV as spreadsheets open it: UTF-8 with a mark at the start, commas, lines that end as Windows
 * wants them.
 *
 * <p>Text that a spreadsheet would run as a formula gets an apostrophe in front: a CSV file cannot
 * say that a cell is text. So that the apostrophe can be taken off again without a doubt, text that
 * begins with one gets another. Source: OWASP Application Security Verification Standard 1.2.10,
 * CWE-1236.
 */
public final class SafeCsv {
    private static final String MARK = "\uFEFF";
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");

    private SafeCsv() {}

    /** A file of headings and rows, whose cells are written as they are given. */
    public static byte[] of(List<String> headings, Iterable<List<String>> rows) {
        StringBuilder text = new StringBuilder(MARK);
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord(headings.stream().map(SafeCsv::text).toList());
            for (List<String> row : rows) {
                printer.printRecord(row);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** A cell that holds text, whatever it looks like. */
    public static String text(String text) {
        boolean runs = FormulaText.is(text) || FormulaText.is(text.stripLeading());
        return runs || text.startsWith("'") ? "'" + text : text;
    }

    /** What {@link #text} was given for the cell. */
    public static String bare(String cell) {
        return cell.startsWith("'") ? cell.substring(1) : cell;
    }

    /** Cells of which some hold numbers: a plain number, a negative one too, stays as it is. */
    public static List<String> cells(List<String> row) {
        return row.stream().map(c -> NUMBER.matcher(c).matches() ? c : text(c)).toList();
    }
}
