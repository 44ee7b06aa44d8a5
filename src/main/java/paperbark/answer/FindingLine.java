package paperbark.answer;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.finding.Told;

/**
 * A finding for other programs, with its place taken apart. Contact details are left out.
 *
 * @param code what kind of problem
 * @param severity the severity's word
 * @param job the job's number, when known
 * @param file the file's name
 * @param sheet the sheet, or empty text
 * @param row the row, or 0
 * @param column the column's heading, or empty text
 * @param cell the cell's address, or empty text
 * @param line the line in a template
 * @param character the column in a template
 * @param value as seen
 * @param fact what is wrong
 * @param remedy what to do
 * @param why why it matters
 * @param holds what is not produced because of it
 * @param rule the rule row that spoke, in words
 * @param also other places involved, in words
 * @param rows all rows, where one cause shows in several
 * @param jobs the jobs of those rows
 */
public record FindingLine(
        String code,
        String severity,
        Optional<String> job,
        String file,
        String sheet,
        int row,
        String column,
        String cell,
        Optional<Integer> line,
        Optional<Integer> character,
        String value,
        String fact,
        String remedy,
        String why,
        List<String> holds,
        Optional<String> rule,
        List<String> also,
        Optional<List<Integer>> rows,
        Optional<List<String>> jobs) {

    static FindingLine of(Finding finding) {
        return of(new Told(List.of(finding)));
    }

    static FindingLine of(Told told) {
        Finding finding = told.first();
        Place place = finding.place();
        Optional<Place.InTemplate> template =
                place instanceof Place.InTemplate t ? Optional.of(t) : Optional.empty();
        return new FindingLine(
                finding.code().code(),
                finding.severity().word(),
                told.isFolded() ? Optional.empty() : finding.job(),
                place.file(),
                place.sheetName(),
                place.rowNumber(),
                place.columnHeading(),
                place.cellAddress(),
                template.map(Place.InTemplate::line),
                template.map(Place.InTemplate::column),
                finding.seenOnTerminal(),
                told.fact(),
                finding.remedy(),
                finding.why(),
                finding.holds().stream()
                        .sorted()
                        .map(c -> c.toString().toLowerCase(Locale.ROOT))
                        .toList(),
                finding.rule().map(r -> r.table() + " row " + r.row() + ": " + r.inWords()),
                finding.also().stream().map(Place::inWords).toList(),
                told.isFolded() ? Optional.of(told.rows()) : Optional.empty(),
                told.isFolded() ? Optional.of(told.jobs()) : Optional.empty());
    }
}
