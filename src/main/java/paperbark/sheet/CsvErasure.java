package paperbark.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;

/**
 * Empties rows of a CSV file. Everything else stays as it is, to the byte: encoding, delimiter,
 * quotes and ends of lines.
 */
public final class CsvErasure {
    private final Predicate<String> names;
    private final Set<String> headings;

    /**
     * An erasure.
     *
     * @param names whether a field makes its row one that is emptied; that field stays
     * @param headings what the first row calls the columns that are emptied; all where there are
     *     none
     */
    public CsvErasure(Predicate<String> names, Set<String> headings) {
        this.names = names;
        this.headings = headings;
    }

    /**
     * The file with these rows emptied.
     *
     * @param file name, for nothing but messages
     * @return empty when there is no such row
     * @throws IOException when the bytes are no text or a quotation mark is missing, so that rows
     *     cannot be told apart
     */
    public Optional<byte[]> of(String file, byte[] content) throws IOException {
        CsvText text;
        try {
            text = CsvText.of(file, content);
        } catch (Refused notText) {
            throw new IOException(file + " is no text");
        }
        CsvDelimiters delimiters = CsvDelimiters.of(text.text());
        String first = delimiters.first();
        String rows = text.text().substring(first.length());
        for (char delimiter : delimiters.candidates()) {
            String erased = erased(rows, delimiter);
            if (!erased.equals(rows)) {
                return Optional.of(text.encode(first + erased));
            }
        }
        // Under a wrong delimiter quotes look broken; the one that makes most fields counts.
        boolean isBroken =
                delimiters.candidates().stream()
                        .map(delimiter -> CsvScan.of(rows, delimiter))
                        .max(Comparator.comparingInt(CsvScan::widest))
                        .filter(scan -> scan.brokenLine() > 0)
                        .isPresent();
        if (isBroken) {
            throw new IOException(file + " has a broken quotation mark");
        }
        return Optional.empty();
    }

    private String erased(String text, char delimiter) {
        CSVFormat format =
                CSVFormat.RFC4180
                        .builder()
                        .setDelimiter(delimiter)
                        .setIgnoreEmptyLines(false)
                        .get();
        StringBuilder all = new StringBuilder();
        int done = 0;
        try (CSVParser parser = CSVParser.parse(text, format)) {
            List<CSVRecord> records = parser.getRecords();
            for (int i = 0; i < records.size(); i++) {
                int from = (int) records.get(i).getCharacterPosition();
                int to =
                        i + 1 < records.size()
                                ? (int) records.get(i + 1).getCharacterPosition()
                                : text.length();
                if (records.get(i).stream().anyMatch(names)) {
                    all.append(text, done, from)
                            .append(emptied(records.get(i), records.get(0), format))
                            .append(lineEnd(text, from, to));
                    done = to;
                }
            }
        } catch (IOException | UncheckedIOException broken) {
            // With quotes that do not match, rows cannot be told apart under this delimiter.
            return text;
        }
        return all.append(text, done, text.length()).toString();
    }

    private String emptied(CSVRecord record, CSVRecord first, CSVFormat format) throws IOException {
        List<String> fields = new ArrayList<>();
        for (int i = 0; i < record.size(); i++) {
            boolean goes =
                    headings.isEmpty() || i < first.size() && headings.contains(first.get(i));
            fields.add(goes && !names.test(record.get(i)) ? "" : record.get(i));
        }
        StringBuilder line = new StringBuilder();
        try (CSVPrinter printer =
                new CSVPrinter(line, format.builder().setRecordSeparator("").get())) {
            printer.printRecord(fields);
        }
        return line.toString();
    }

    private static String lineEnd(String text, int from, int to) {
        int end = to;
        while (end > from && (text.charAt(end - 1) == '\n' || text.charAt(end - 1) == '\r')) {
            end--;
        }
        return text.substring(end, to);
    }
}
