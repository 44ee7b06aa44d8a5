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
            for (StrictCsvReader.Line line : StrictCsvReader.read(content, HEADINGS, faults)) {
                Source source = source(line.cells());
                if (source.id().isEmpty()
                        || source.title().isEmpty()
                        || source.publisher().isEmpty()) {
                    faults.add(new Fault(label, line.row(), "id, title or publisher is empty"));
                } else if (sources.putIfAbsent(source.id(), source) != null) {
                    faults.add(new Fault(label, line.row(), "the id " + source.id() + " is taken"));
                }
                if (!line.cells().get("read_on").isEmpty() && source.readOn().isEmpty()) {
                    faults.add(new Fault(label, line.row(), "read_on is not a day"));
                }
                if (!content.file().firms() && source.link().isEmpty()) {
                    faults.add(new Fault(label, line.row(), "a shipped source needs a link"));
                }
            }
        }
        return sources;
    }

    private static Source source(Map<String, String> cells) {
        return new Source(
                cells.get("id"),
                cells.get("title"),
                cells.get("publisher"),
                cells.get("instrument"),
                cells.get("version"),
                Days.parse(cells.get("read_on")).toOptional(),
                cells.get("link"));
    }
}
