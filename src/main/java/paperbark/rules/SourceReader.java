package paperbark.rules;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import paperbark.rules.RuleFiles.Content;
import paperbark.rules.RulebookException.Fault;
import paperbark.value.Days;

/** Reads {@code sources.csv}: the shipped one and what the firm's adds. */
final class SourceReader {
    static final String NAME = "sources.csv";
    private static final List<String> HEADINGS =
            List.of(
                    "id",
                    "title",
                    "publisher",
                    "instrument",
                    "version",
                    "published",
                    "read_on",
                    "link");

    private SourceReader() {}

    /** The sources by id. */
    static Map<String, Source> read(List<Content> files, List<Fault> faults) {
        Map<String, Source> sources = new LinkedHashMap<>();
        for (Content content : files) {
            String label = content.file().label();
            for (StrictCsv.Line line : StrictCsv.read(content, HEADINGS, faults)) {
                Map<String, String> cells = line.cells();
                Source source =
                        new Source(
                                cells.get("id"),
                                cells.get("title"),
                                cells.get("publisher"),
                                cells.get("instrument"),
                                cells.get("version"));
                if (source.id().isEmpty()
                        || source.title().isEmpty()
                        || source.publisher().isEmpty()) {
                    faults.add(new Fault(label, line.row(), "id, title or publisher is empty"));
                } else if (sources.putIfAbsent(source.id(), source) != null) {
                    faults.add(new Fault(label, line.row(), "the id " + source.id() + " is taken"));
                }
                String readOn = cells.get("read_on");
                if (!readOn.isEmpty() && Days.parse(readOn).toOptional().isEmpty()) {
                    faults.add(new Fault(label, line.row(), "read_on is not a day"));
                }
            }
        }
        return sources;
    }
}
