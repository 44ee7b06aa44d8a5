package paperbark.rules;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.rules.RuleFiles.Content;
import paperbark.rules.RulebookException.Fault;

/**
 * The checksums of the shipped tables. A table that does not match was changed after its rows were
 * compared with their sources, and nothing is worked out from it.
 *
 * @param byTable SHA-256 in lower-case hexadecimal digits by the table's name
 */
record Checksums(Map<String, String> byTable) {
    static final String NAME = "checksums.csv";
    private static final List<String> HEADINGS = List.of("table", "sha256");

    /** The shipped list; a missing one is a fault. */
    static Checksums read(Optional<Content> file, List<Fault> faults) {
        Map<String, String> byTable = new HashMap<>();
        if (file.isEmpty()) {
            faults.add(new Fault(NAME, 0, "is missing from the program"));
        }
        file.ifPresent(
                content ->
                        StrictCsvReader.read(content, HEADINGS, faults)
                                .forEach(
                                        line ->
                                                byTable.put(
                                                        line.cells().get("table"),
                                                        line.cells().get("sha256"))));
        return new Checksums(byTable);
    }

    /** The fault of a shipped table that is not in the list, or not as the list has it. */
    Optional<Fault> fault(TableFile shipped) {
        Optional<String> listed = Optional.ofNullable(byTable.get(shipped.name()));
        if (listed.isEmpty()) {
            return Optional.of(new Fault(shipped.name(), 0, "has no checksum in " + NAME));
        }
        return listed.get().equals(shipped.sha256())
                ? Optional.empty()
                : Optional.of(
                        new Fault(
                                shipped.name(),
                                0,
                                "is not as shipped, its checksum is another than in " + NAME));
    }
}
