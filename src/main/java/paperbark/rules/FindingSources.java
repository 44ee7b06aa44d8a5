package paperbark.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.rules.RulebookException.Fault;

/**
 * Where the rules behind findings were read that point to no row of a dated table, by {@code
 * rules/finding-sources.csv}. A finding that is not in it is common practice, or the program's own
 * check.
 */
public final class FindingSources {
    static final String NAME = "finding-sources.csv";
    private static final List<String> HEADINGS =
            List.of("finding", "source", "pinpoint", "confidence");

    private FindingSources() {}

    /** The sources of a finding's rule; none where there is no rule or its row is told with it. */
    public static List<RuleRef> of(FindingCode code) {
        return all().stream()
                .filter(row -> row.get("finding").equals(code.code()))
                .map(FindingSources::ref)
                .toList();
    }

    /** The rows of the table, with the words of the source in place of its id. */
    static List<Map<String, String>> all() {
        RuleFiles files = new RuleFiles(Optional.empty(), RuleFiles::inProgram);
        List<Fault> faults = new ArrayList<>();
        Map<String, Source> sources =
                SourceReader.read(List.of(files.shipped(SourceReader.NAME).orElseThrow()), faults);
        List<Map<String, String>> rows =
                StrictCsvReader.read(files.shipped(NAME).orElseThrow(), HEADINGS, faults).stream()
                        .map(StrictCsvReader.Line::cells)
                        .toList();
        rows.forEach(row -> row.computeIfPresent("source", (k, id) -> words(sources, id)));
        if (!faults.isEmpty()) {
            throw new RulebookException(faults);
        }
        return rows;
    }

    private static String words(Map<String, Source> sources, String id) {
        if (!sources.containsKey(id)) {
            throw new IllegalStateException(NAME + " names no source of the tables: " + id);
        }
        return sources.get(id).inWords();
    }

    private static RuleRef ref(Map<String, String> row) {
        return new RuleRef(
                NAME, 0, row.get("source"), row.get("pinpoint"), row.get("confidence"), "", "");
    }
}
