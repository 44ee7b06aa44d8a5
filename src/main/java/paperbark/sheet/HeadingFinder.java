package paperbark.sheet;

import static paperbark.finding.FindingCode.HEADINGS_NOT_FOUND;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.poi.ss.util.CellReference;
import paperbark.finding.Place;

/** Finds the row of headings: among the first rows the one with the most known headings. */
final class HeadingFinder {
    /** One word may be known by chance, as the name of the list itself. */
    private static final int FEWEST = 2;

    private static final int LISTED_AT_MOST = 15;

    private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]");

    private HeadingFinder() {}

    /**
     * A row of headings.
     *
     * @param line where it stands
     * @param columns the columns with a heading
     * @param known the columns whose heading the caller understands
     */
    record Headings(Line line, List<Column> columns, List<Column> known) {

        /** Different headings among the known ones. */
        long score() {
            return known.stream().map(column -> key(column.heading())).distinct().count();
        }

        int lastColumn() {
            return columns.get(columns.size() - 1).index();
        }
    }

    /** The best row, the first of equals; empty when no row has enough known headings. */
    static Optional<Headings> find(List<Line> lines, Predicate<String> isKnown) {
        return lines.stream()
                .filter(line -> !line.row().isBlank())
                .limit(Limits.HEADING_ROWS)
                .map(line -> headings(line, isKnown))
                .filter(headings -> headings.score() >= FEWEST)
                .reduce((best, other) -> other.score() > best.score() ? other : best);
    }

    /** What two headings are compared by: letters and digits, without case. */
    static String key(String heading) {
        String key = BETWEEN.matcher(heading.toLowerCase(Locale.ROOT)).replaceAll("");
        return key.isEmpty() ? heading : key;
    }

    /** The refusal that shows what was found instead. */
    static Refused notFound(List<Line> lines, Place place) {
        Optional<Line> fullest =
                lines.stream()
                        .filter(line -> !line.row().isBlank())
                        .limit(Limits.HEADING_ROWS)
                        .max(Comparator.comparing(line -> line.filled().size()));
        String found =
                fullest.map(
                                line ->
                                        "the fullest row at the top is row "
                                                + line.row().number()
                                                + ": "
                                                + listed(line))
                        .orElse("there is no text at the top of it");
        return Refused.because(
                HEADINGS_NOT_FOUND,
                place,
                "No row with at least two known headings was found; " + found + ".",
                "Put the headings in one row above the jobs, or add the firm's headings to the columns table.");
    }

    private static String listed(Line line) {
        return line.filled().stream()
                .limit(LISTED_AT_MOST)
                .map(cell -> '"' + cell.text() + '"')
                .collect(Collectors.joining(", "));
    }

    private static Headings headings(Line line, Predicate<String> isKnown) {
        List<Column> columns =
                line.filled().stream()
                        .filter(cell -> !cell.text().isEmpty())
                        .map(HeadingFinder::column)
                        .toList();
        List<Column> known = columns.stream().filter(c -> isKnown.test(c.heading())).toList();
        return new Headings(line, columns, known);
    }

    private static Column column(Cell cell) {
        String letters = CellReference.convertNumToColString(cell.column() - 1);
        return new Column(cell.column(), letters, cell.text());
    }
}
