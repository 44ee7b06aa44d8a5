package paperbark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.text.WordUtils;

/** Lays texts out beside each other, wrapped at words, with two spaces between the columns. */
final class Columns {
    private static final String GAP = "  ";

    private final List<Integer> widths;

    /** Columns of so many characters. */
    Columns(Integer... widths) {
        this.widths = List.of(widths);
    }

    /** The lines of one row, without blanks at their ends. */
    List<String> row(String... cells) {
        return lines(cells).stream().map(line -> String.join(GAP, line).stripTrailing()).toList();
    }

    /** The lines of one row, column by column, each filled up to its width. */
    List<List<String>> lines(String... cells) {
        List<List<String>> columns = new ArrayList<>();
        for (int i = 0; i < cells.length; i++) {
            columns.add(wrapped(cells[i], widths.get(i)));
        }
        int height = columns.stream().mapToInt(List::size).max().orElse(0);
        List<List<String>> lines = new ArrayList<>();
        for (int line = 0; line < height; line++) {
            List<String> parts = new ArrayList<>();
            for (int i = 0; i < cells.length; i++) {
                List<String> column = columns.get(i);
                String text = line < column.size() ? column.get(line) : "";
                parts.add(text + " ".repeat(widths.get(i) - text.length()));
            }
            lines.add(parts);
        }
        return lines;
    }

    /** The lines of a text; an empty line stays. */
    static List<String> wrapped(String text, int width) {
        return text.lines()
                .flatMap(line -> Stream.of(WordUtils.wrap(line, width, "\n", true).split("\n")))
                .toList();
    }
}
