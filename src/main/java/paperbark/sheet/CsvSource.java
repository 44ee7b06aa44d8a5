package paperbark.sheet;

import static paperbark.finding.FindingCode.CSV_BROKEN;
import static paperbark.finding.FindingCode.DELIMITER_UNCLEAR;
import static paperbark.finding.FindingCode.FILE_MAY_BE_CUT;
import static paperbark.finding.FindingCode.FILE_TOO_LARGE;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.sheet.HeadingFinder.Headings;

/** Reads a CSV file: finds its encoding and delimiter, refuses it whole when a quote is broken. */
final class CsvSource {
    private final Place.InFile place;
    private final CsvText content;
    private final CsvRecords records;
    private final List<Character> candidates;

    /** A delimiter with the headings that it brings out. */
    private record Choice(char delimiter, Headings headings) {
        private long score() {
            return headings.score();
        }
    }

    private CsvSource(String file, byte[] bytes) throws Refused {
        place = new Place.InFile(file);
        content = CsvText.of(file, bytes);
        CsvDelimiters delimiters = CsvDelimiters.of(content.text());
        String first = delimiters.first();
        records = new CsvRecords(content.text().substring(first.length()), first.isEmpty() ? 0 : 1);
        candidates = delimiters.candidates();
    }

    static Reading<ReadList> read(String file, byte[] bytes, Predicate<String> isKnown)
            throws Refused, IOException {
        FileGate.checkSize(bytes.length, new Place.InFile(file));
        return new CsvSource(file, bytes).read(isKnown);
    }

    static Reading<List<Row>> lines(String file, byte[] bytes, Predicate<String> isKnown)
            throws Refused, IOException {
        CsvSource source = new CsvSource(file, bytes);
        List<Line> lines = source.records.all(source.choose(isKnown).delimiter());
        return Reading.of(lines.stream().map(Line::row).toList(), List.of());
    }

    private Reading<ReadList> read(Predicate<String> isKnown) throws Refused, IOException {
        Choice choice = choose(isKnown);
        refuseBroken(choice.delimiter());
        List<Line> lines = records.all(choice.delimiter());
        refuseLarge(lines);
        refuseCut(lines, choice.headings());
        Reading<Sheet> read = new RowSieve(place.file(), "", choice.headings()).sift(lines);
        List<Finding> findings = new ArrayList<>(content.findings());
        findings.addAll(read.findings());
        List<Row> all = lines.stream().map(Line::row).toList();
        return new Reading<>(
                read.result().map(sheet -> new ReadList(ReadList.Form.TEXT, List.of(sheet), all)),
                findings);
    }

    private Choice choose(Predicate<String> isKnown) throws Refused, IOException {
        List<Choice> choices = new ArrayList<>();
        for (char delimiter : candidates) {
            if (CsvScan.of(records.text(), delimiter).widest() > Limits.WIDEST_RECORD) {
                throw tooWide(place);
            }
            HeadingFinder.find(records.top(delimiter, Limits.HEADING_ROWS), isKnown)
                    .map(headings -> new Choice(delimiter, headings))
                    .ifPresent(choices::add);
        }
        Optional<Choice> best = choices.stream().max(Comparator.comparing(Choice::score));
        if (best.isEmpty()) {
            throw noHeadings();
        }
        List<Choice> equals =
                choices.stream().filter(c -> c.score() == best.get().score()).toList();
        if (equals.size() > 1) {
            throw Refused.because(
                    DELIMITER_UNCLEAR,
                    place,
                    "The headings can be told apart by "
                            + CsvDelimiters.words(equals.get(0).delimiter())
                            + " and by "
                            + CsvDelimiters.words(equals.get(1).delimiter())
                            + " equally well.",
                    "Save the file as .xlsx, or begin it with a line such as \"sep=;\".");
        }
        return best.get();
    }

    /** Where no delimiter brings out headings, a quote that is broken under each explains it. */
    private Refused noHeadings() throws Refused, IOException {
        List<Line> fullest = List.of();
        int widest = 0;
        boolean allBroken = true;
        for (char delimiter : candidates) {
            CsvScan scan = CsvScan.of(records.text(), delimiter);
            allBroken &= scan.brokenLine() > 0;
            if (scan.widest() > widest) {
                widest = scan.widest();
                fullest = records.top(delimiter, Limits.HEADING_ROWS);
            }
        }
        if (allBroken) {
            refuseBroken(candidates.get(0));
        }
        return HeadingFinder.notFound(fullest, place);
    }

    private void refuseBroken(char delimiter) throws Refused {
        int line = CsvScan.of(records.text(), delimiter).brokenLine();
        if (line > 0) {
            int shown = line + records.linesBefore();
            throw Refused.because(
                    CSV_BROKEN,
                    new Place.InRow(place.file(), "", shown),
                    "In line " + shown + " a quotation mark is missing, or there is one too many.",
                    "Mend the line, or export the file again.");
        }
    }

    private void refuseLarge(List<Line> lines) throws Refused {
        if (lines.size() > Limits.FILLED_ROWS) {
            throw Refused.because(
                    FILE_TOO_LARGE,
                    place,
                    "The file has more than 20,000 rows.",
                    "Save the week's rows as a file of their own.");
        }
        if (lines.stream().mapToInt(l -> l.row().cells().size()).sum() > Limits.VALUES) {
            throw Refused.because(
                    FILE_TOO_LARGE,
                    place,
                    "The file has more than 1,400,000 values.",
                    "Save the week's rows as a file of their own.");
        }
        for (Line line : lines) {
            if (line.row().cells().keySet().stream().anyMatch(c -> c > Limits.COLUMNS)) {
                throw tooWide(new Place.InRow(place.file(), "", line.row().number()));
            }
        }
    }

    private static Refused tooWide(Place where) {
        return Refused.because(
                FILE_TOO_LARGE,
                where,
                "A line has more than 200 fields.",
                "Delete what stands far to the right of the list and save the file.");
    }

    private void refuseCut(List<Line> lines, Headings headings) throws Refused {
        Line last = lines.get(lines.size() - 1);
        boolean ended = content.text().endsWith("\n") || content.text().endsWith("\r");
        if (!ended && last.fields() < headings.lastColumn()) {
            throw Refused.because(
                    FILE_MAY_BE_CUT,
                    new Place.InRow(place.file(), "", last.row().number()),
                    "The last row ends in the middle, as in a file that is still being copied.",
                    "Wait until it is copied, or export it again.");
        }
    }
}
