package paperbark.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.ss.util.CellReference;

/**
 * The records of a CSV text under one delimiter, as lines that know where they begin.
 *
 * @param text without byte order mark and without a line that names the delimiter
 * @param linesBefore lines taken off the front
 */
record CsvRecords(String text, int linesBefore) {

    /** The first lines that hold anything, as far as they can be parsed. */
    List<Line> top(char delimiter, int most) throws IOException {
        List<Line> lines = new ArrayList<>();
        try {
            parse(delimiter, lines, most);
        } catch (UncheckedIOException e) {
            // Under a wrong delimiter quotation marks look broken; what came before still counts.
            return lines;
        }
        return lines;
    }

    /** All lines that hold anything, as far as one beyond the limit of rows or of values. */
    List<Line> all(char delimiter) throws IOException {
        List<Line> lines = new ArrayList<>();
        parse(delimiter, lines, Limits.FILLED_ROWS + 1);
        return lines;
    }

    private void parse(char delimiter, List<Line> lines, int most) throws IOException {
        CSVFormat format =
                CSVFormat.RFC4180
                        .builder()
                        .setDelimiter(delimiter)
                        .setIgnoreEmptyLines(false)
                        .get();
        try (CSVParser parser = CSVParser.parse(text, format)) {
            int from = 0;
            int number = 1 + linesBefore;
            Iterator<CSVRecord> records = parser.iterator();
            int values = 0;
            while (lines.size() < most && values <= Limits.VALUES && records.hasNext()) {
                CSVRecord record = records.next();
                int begins = (int) record.getCharacterPosition();
                number += CsvScan.lineBreaks(text, from, begins);
                from = begins;
                Line line = line(record, number);
                if (!line.row().isBlank()) {
                    lines.add(line);
                    values += line.row().cells().size();
                }
            }
        }
    }

    private static Line line(CSVRecord record, int number) {
        Map<Integer, Cell> cells = new HashMap<>();
        for (int i = 0; i < record.size(); i++) {
            if (!record.get(i).isEmpty()) {
                String address = CellReference.convertNumToColString(i) + number;
                Cell cell = TextCell.of(i + 1, address, record.get(i));
                if (!cell.isBlank()) {
                    cells.put(i + 1, cell);
                }
            }
        }
        return new Line(new Row(number, cells), record.size(), false, false);
    }
}
