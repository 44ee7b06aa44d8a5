package paperbark.rules;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.finding.RuleRef;
import paperbark.rules.RuleFiles.Content;
import paperbark.rules.RuleRow.WrongCell;
import paperbark.rules.RuleTable.Entry;
import paperbark.rules.RulebookException.Fault;
import paperbark.value.DateRange;
import paperbark.value.Days;

/**
 * Turns the lines of one table file into entries; a line with a fault is reported and left out.
 *
 * @param layout the table's shape
 * @param sources all sources by id
 * @param faults where faults are gathered
 */
record TableReader<K, R>(
        TableLayout<K, R> layout, Map<String, Source> sources, List<Fault> faults) {

    List<Entry<R>> read(Content content) {
        List<Entry<R>> entries = new ArrayList<>();
        for (StrictCsvReader.Line line : StrictCsvReader.read(content, layout.headings(), faults)) {
            try {
                RuleRow raw = raw(line, content.file());
                entries.add(
                        new Entry<>(
                                raw,
                                raw.isGap()
                                        ? Optional.empty()
                                        : Optional.of(layout.read().apply(raw))));
            } catch (WrongCell e) {
                faults.add(new Fault(content.file().label(), line.row(), e.getMessage()));
            }
        }
        return entries;
    }

    private RuleRow raw(StrictCsvReader.Line line, TableFile file) {
        Map<String, String> cells = line.cells();
        RuleRow raw =
                new RuleRow(
                        ref(line, file),
                        inForce(cells),
                        key(cells),
                        cells,
                        layout.values(),
                        day(cells, "confirmed_on"),
                        cells.get("note"));
        if (raw.isGap() && raw.note().isEmpty()) {
            throw new WrongCell("has no value and no note that says why");
        }
        if (!raw.isGap()) {
            layout.values().stream()
                    .filter(v -> raw.text(v).isEmpty() && !layout.optional().contains(v))
                    .findFirst()
                    .ifPresent(
                            v -> {
                                throw new WrongCell(v + " is empty");
                            });
        }
        boolean memory = raw.ref().confidence().equals(Confidence.MEMORY.word());
        if (memory && raw.confirmedOn().isPresent()) {
            throw new WrongCell("a row from memory was compared with nothing: empty confirmed_on");
        }
        if (!file.firms()) {
            shipped(raw, memory);
        }
        return raw;
    }

    private void shipped(RuleRow raw, boolean memory) {
        if (raw.ref().pinpoint().isEmpty() || !memory && raw.confirmedOn().isEmpty()) {
            throw new WrongCell("a shipped row needs pinpoint and confirmed_on");
        }
        boolean read = sources.get(raw.cells().get("source")).readOn().isPresent();
        if (raw.ref().confidence().equals(Confidence.PUBLISHED.word()) && !read) {
            throw new WrongCell("a published row needs a source that was read");
        }
    }

    private RuleRef ref(StrictCsvReader.Line line, TableFile file) {
        String id = line.cells().get("source");
        Source source = sources.get(id);
        if (source == null) {
            throw new WrongCell("the source \"" + id + "\" is not in " + SourceReader.NAME);
        }
        String word = line.cells().get("confidence");
        Confidence confidence =
                Confidence.of(word)
                        .orElseThrow(
                                () -> new WrongCell("the confidence \"" + word + "\" is unknown"));
        if (confidence == Confidence.DEMO && !file.firms()) {
            throw new WrongCell("an invented figure may not be shipped");
        }
        return new RuleRef(
                file.label(),
                line.row(),
                source.inWords(),
                line.cells().get("pinpoint"),
                confidence.word(),
                says(line.cells()),
                file.version());
    }

    /** The row in full, so that it can be compared without the table. */
    private String says(Map<String, String> cells) {
        return Stream.concat(layout.keys().stream(), layout.values().stream())
                .filter(heading -> !cells.get(heading).isEmpty())
                .map(heading -> heading + " " + cells.get(heading))
                .collect(Collectors.joining(", ", "", "; " + inForce(cells)));
    }

    private static DateRange inForce(Map<String, String> cells) {
        try {
            return new DateRange(day(cells, "from"), day(cells, "to"));
        } catch (IllegalArgumentException e) {
            throw new WrongCell("the row " + e.getMessage());
        }
    }

    private KeyRange key(Map<String, String> cells) {
        layout.keys().stream()
                .filter(k -> cells.get(k).isEmpty())
                .findFirst()
                .ifPresent(
                        k -> {
                            throw new WrongCell(k + " is empty");
                        });
        List<String> parts = layout.keys().stream().map(cells::get).toList();
        if (!layout.hasRangeKey()) {
            return KeyRange.single(parts.stream().collect(Collectors.joining("|")));
        }
        KeyRange range = KeyRange.of(parts.get(0), parts.get(1));
        if (range.isBackwards() || range.first().length() != range.last().length()) {
            throw new WrongCell("the range " + range + " is not a range");
        }
        return range;
    }

    private static Optional<LocalDate> day(Map<String, String> cells, String heading) {
        String text = cells.get(heading);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<LocalDate> day = Days.parse(text).toOptional();
        if (day.isEmpty()) {
            throw new WrongCell(heading + " \"" + text + "\" is not a day");
        }
        return day;
    }
}
