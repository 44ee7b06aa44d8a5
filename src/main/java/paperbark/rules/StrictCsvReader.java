package paperbark.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import paperbark.rules.RuleFiles.Content;
import paperbark.rules.RulebookException.Fault;

/** Reads a table whose headings are known to the letter. */
final class StrictCsvReader {
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setIgnoreEmptyLines(true).get();

    private StrictCsvReader() {}

    /**
     * One line.
     *
     * @param row 1-based line
     * @param cells trimmed cells by heading
     */
    record Line(int row, Map<String, String> cells) {}

    /** All lines below the headings; lines of the wrong length are left out and reported. */
    static List<Line> read(Content content, List<String> headings, List<Fault> faults) {
        String label = content.file().label();
        if (content.text().isEmpty()) {
            faults.add(new Fault(label, 0, "the file is not UTF-8 text"));
            return List.of();
        }
        List<Line> lines = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(content.text().get(), FORMAT)) {
            boolean first = true;
            for (CSVRecord record : parser) {
                int row = Math.toIntExact(parser.getCurrentLineNumber());
                List<String> cells = record.stream().map(String::strip).toList();
                if (first && !cells.equals(headings)) {
                    faults.add(new Fault(label, row, wrongHeadings(headings)));
                    return List.of();
                }
                if (!first) {
                    line(row, cells, headings)
                            .ifPresentOrElse(
                                    lines::add,
                                    () -> faults.add(wrongLength(label, row, cells, headings)));
                }
                first = false;
            }
            if (first) {
                faults.add(new Fault(label, 0, wrongHeadings(headings)));
            }
        } catch (CSVException | UncheckedIOException e) {
            faults.add(new Fault(label, 0, "the CSV is broken: " + e.getMessage()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return lines;
    }

    private static Optional<Line> line(int row, List<String> cells, List<String> headings) {
        if (cells.size() != headings.size()) {
            return Optional.empty();
        }
        Map<String, String> byHeading = new LinkedHashMap<>();
        for (int i = 0; i < cells.size(); i++) {
            byHeading.put(headings.get(i), cells.get(i));
        }
        return Optional.of(new Line(row, byHeading));
    }

    private static Fault wrongLength(
            String label, int row, List<String> cells, List<String> headings) {
        return new Fault(
                label, row, "has " + cells.size() + " cells in place of " + headings.size());
    }

    private static String wrongHeadings(List<String> headings) {
        return "the headings must be " + String.join(",", headings);
    }
}
