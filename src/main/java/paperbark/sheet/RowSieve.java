package paperbark.sheet;

import static paperbark.finding.FindingCode.COLUMN_UNNAMED;
import static paperbark.finding.FindingCode.HEADING_TWICE;
import static paperbark.finding.FindingCode.REGISTER_EMPTY;
import static paperbark.finding.FindingCode.ROWS_HIDDEN;
import static paperbark.finding.FindingCode.ROW_IGNORED;
import static paperbark.finding.FindingCode.ROW_LONG;
import static paperbark.finding.FindingCode.ROW_SHORT;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.sheet.HeadingFinder.Headings;

/** Keeps the rows that hold records and says which others were left out. */
final class RowSieve {
    private static final Pattern TOTAL =
            Pattern.compile("(?i)((grand|sub|week|weekly)[ -]?)?(totals?|sum) ?:?");

    private final String file;
    private final String sheet;
    private final Headings headings;
    private final List<Finding> findings = new ArrayList<>();

    RowSieve(String file, String sheet, Headings headings) {
        this.file = file;
        this.sheet = sheet;
        this.headings = headings;
    }

    /** The sheet made of the lines below the headings. */
    Reading<Sheet> sift(List<Line> lines) throws Refused {
        refuseTwins();
        int headingRow = headings.line().row().number();
        List<Line> kept =
                lines.stream()
                        .filter(line -> line.row().number() > headingRow)
                        .filter(this::holdsRecord)
                        .toList();
        if (kept.isEmpty()) {
            throw Refused.because(
                    REGISTER_EMPTY,
                    new Place.InRow(file, sheet, headingRow),
                    "There is no row below the headings.",
                    "Check that this is the right file, and that it was saved after the rows were entered.");
        }
        if (kept.size() > Limits.ROWS) {
            throw SheetSize.tooManyRows(
                    new Place.InFile(file), "The list has " + kept.size() + " rows");
        }
        kept.forEach(this::compareWidth);
        noteUnnamed(kept);
        noteHidden(kept);
        List<Row> rows = kept.stream().map(Line::row).toList();
        return Reading.of(new Sheet(file, sheet, headingRow, headings.columns(), rows), findings);
    }

    /** Headings that punctuation alone tells apart may mean two things; the columns table knows. */
    private void refuseTwins() throws Refused {
        Map<String, Column> first = new HashMap<>();
        List<Finding> twins = new ArrayList<>();
        for (Column column : headings.known()) {
            Column other = first.putIfAbsent(column.heading().toLowerCase(Locale.ROOT), column);
            if (other != null) {
                String fact =
                        String.format(
                                "The columns %s and %s have the same heading \"%s\".",
                                other.letters(), column.letters(), column.heading());
                twins.add(
                        Finding.of(
                                        HEADING_TWICE,
                                        inColumn(column),
                                        fact,
                                        "Delete or rename one of the two.")
                                .alsoAt(List.of(inColumn(other))));
            }
        }
        if (!twins.isEmpty()) {
            throw new Refused(twins);
        }
    }

    private Place inColumn(Column column) {
        return new Place.InColumn(file, sheet, column.heading(), column.letters());
    }

    private boolean holdsRecord(Line line) {
        List<Cell> filled = line.filled();
        if (filled.isEmpty()) {
            return false;
        }
        Optional<String> reason = Optional.empty();
        if (TOTAL.matcher(filled.get(0).text()).matches() || line.onlySums()) {
            reason = Optional.of("The row of totals was left out.");
        } else if (headings.columns().stream().allMatch(c -> repeats(line, c))) {
            reason = Optional.of("The row repeats the headings and was left out.");
        } else if (headings.columns().stream().allMatch(c -> line.row().cell(c).isBlank())) {
            reason = Optional.of("The row has text only beside the list and was left out.");
        }
        reason.ifPresent(fact -> findings.add(Finding.of(ROW_IGNORED, at(line), fact, "")));
        return reason.isEmpty();
    }

    private static boolean repeats(Line line, Column column) {
        String text = line.row().cell(column).text();
        return HeadingFinder.key(text).equals(HeadingFinder.key(column.heading()));
    }

    private Place at(Line line) {
        return new Place.InRow(file, sheet, line.row().number());
    }

    private void compareWidth(Line line) {
        if (line.fields() == 0) {
            return;
        }
        if (line.fields() < headings.lastColumn()) {
            String fact =
                    String.format(
                            "The row has %d fields and the headings have %d.",
                            line.fields(), headings.lastColumn());
            findings.add(
                    Finding.of(
                            ROW_SHORT,
                            at(line),
                            fact,
                            "Export the file again, or complete the row."));
        }
        int width = headings.line().fields();
        line.filled().stream()
                .filter(cell -> !isWithin(cell, width))
                .findFirst()
                .map(cell -> tooLong(line, width))
                .ifPresent(findings::add);
    }

    /** What was pushed beyond the headings of a CSV file is told row by row instead. */
    private void noteUnnamed(List<Line> kept) {
        int width = headings.line().fields();
        List<Row> rows =
                kept.stream()
                        .filter(line -> line.filled().stream().allMatch(c -> isWithin(c, width)))
                        .map(Line::row)
                        .toList();
        List<UnnamedColumn> unnamed = UnnamedColumn.of(headings.columns(), rows);
        if (!unnamed.isEmpty()) {
            long count = unnamed.stream().flatMap(c -> c.rows().stream()).distinct().count();
            boolean one = unnamed.size() == 1;
            String letters =
                    unnamed.stream().map(UnnamedColumn::letters).collect(Collectors.joining(", "));
            Place place = new Place.InColumn(file, sheet, "", unnamed.get(0).letters());
            findings.add(
                    Finding.of(
                                    COLUMN_UNNAMED,
                                    place,
                                    (one ? "Column " : "Columns ")
                                            + letters
                                            + (one ? " has" : " have")
                                            + " no heading, and what "
                                            + count
                                            + (count == 1 ? " row has" : " rows have")
                                            + " there was not read.",
                                    "Write the heading above, or clear what stands there.")
                            .as(Severity.CHECK));
        }
    }

    private static boolean isWithin(Cell cell, int width) {
        return width == 0 || cell.column() <= width;
    }

    private Finding tooLong(Line line, int width) {
        String fact =
                String.format(
                        "The row has %d fields and the headings have %d.", line.fields(), width);
        String remedy =
                "Put quotation marks around the text that contains the delimiter, or export the file again.";
        // What was pushed there is not shown: it may be an account number.
        return Finding.of(ROW_LONG, at(line), fact, remedy);
    }

    private void noteHidden(List<Line> kept) {
        List<Line> hidden = kept.stream().filter(Line::hidden).toList();
        if (!hidden.isEmpty()) {
            String fact =
                    hidden.size() == 1
                            ? "One hidden or filtered row was read like the others."
                            : String.format(
                                    "%d hidden or filtered rows were read like the others; this is the first.",
                                    hidden.size());
            findings.add(Finding.of(ROWS_HIDDEN, at(hidden.get(0)), fact, ""));
        }
    }
}
