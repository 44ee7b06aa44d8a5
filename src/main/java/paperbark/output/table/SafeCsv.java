package paperbark.batch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * CSV as spreadsheets open it, in UTF-8. A text that a spreadsheet would take for a formula gets an
 * apostrophe in front; a plain number, also a negative one, stays as it is. Source: OWASP
 * Application Security Verification Standard 1.2.10, CWE-1236.
 */
final class SafeCsv {
    private SafeCsv() {}

    static byte[] of(List<String> headings, List<List<String>> rows) {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter csv = new CSVPrinter(text, CSVFormat.RFC4180)) {
            csv.printRecord(headings);
            for (List<String> row : rows) {
                csv.printRecord(row.stream().map(SafeCsv::safe).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    static String safe(String text) {
        boolean risky = text.matches("(?s)[=+\\-@\\t\\r\\uFF1D\\uFF0B\\uFF0D\\uFF20].*");
        return risky && !text.matches("-?[0-9]+(\\.[0-9]+)?") ? "'" + text : text;
    }
}
