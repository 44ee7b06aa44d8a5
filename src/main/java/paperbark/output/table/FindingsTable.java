package paperbark.output.table;

import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.finding.RuleRef;
import paperbark.finding.Told;

/** Every finding with its place, what to do, and the rule that spoke. */
public final class FindingsTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("severity", "Severity", 11),
                    text("code", "Code", 16),
                    text("job", "Job", 10),
                    text("file", "File", 14),
                    text("sheet", "Sheet", 11),
                    whole("row", "Row", 8),
                    text("column", "Column", 14),
                    text("cell", "Cell", 8),
                    text("seen", "Value", 15),
                    text("fact", "What is wrong", 29),
                    text("remedy", "What to do", 29),
                    text("also", "Also at", 16),
                    text("why", "Why it matters", 24),
                    text("rule", "Rule", 20));

    private FindingsTable() {}

    /**
     * The table.
     *
     * @param findings in reading order
     * @param link place in the workbook that a finding is about, where there is one
     */
    public static Table of(List<Finding> findings, Function<Finding, Optional<String>> link) {
        return table(MadeRows.of(findings, f -> row(new Told(List.of(f)), link.apply(f))));
    }

    /** The table with one line a cause. */
    public static Table told(List<Told> told, Function<Finding, Optional<String>> link) {
        return table(MadeRows.of(told, t -> row(t, link.apply(t.first()))));
    }

    private static Table table(List<List<TableCell>> rows) {
        return new Table(
                "Findings",
                "Findings",
                List.of(
                        "Stop: a paper is held until somebody acts. Check: the paper goes out, but somebody"
                                + " must look. Note: worth knowing."),
                COLUMNS,
                rows,
                List.of());
    }

    private static List<TableCell> row(Told told, Optional<String> link) {
        Finding finding = told.first();
        Place place = finding.place();
        return List.of(
                text(finding.severity().word()),
                text(finding.code().code()),
                text(String.join(", ", told.jobs())),
                text(place.file()),
                text(place.sheetName()),
                place.rowNumber() > 0 ? TableCell.whole(place.rowNumber()) : TableCell.BLANK,
                text(place.columnHeading()),
                cell(place, link),
                text(finding.seen()),
                text(told.fact()),
                text(finding.remedy()),
                text(also(told)),
                text(finding.why()),
                text(finding.rule().map(RuleRef::inWords)));
    }

    private static String also(Told told) {
        return told.isFolded()
                ? "rows " + told.rowsInWords()
                : told.first().also().stream()
                        .map(Place::inWords)
                        .collect(Collectors.joining("; "));
    }

    private static TableCell cell(Place place, Optional<String> link) {
        // A finding about a row is marked in a cell of that row: the link says which.
        String marked = link.map(l -> l.substring(l.lastIndexOf('!') + 1)).orElse("");
        return text(marked.isEmpty() ? place.cellAddress() : marked).linkedTo(link);
    }
}
