package paperbark.office;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.batch.SampleFirm;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.firm.FirmTablesReader;
import paperbark.firm.TableRows;

/**
 * What a firm says of itself when its office is made.
 *
 * @param facts of the firm, by their names in its table
 * @param licences a licence each, by the names of the columns of {@code people}
 * @param makers names of the makers whose heaters it puts in
 * @param buyers names of those who take its certificates
 */
public record NewFirm(
        Map<String, String> facts,
        List<Map<String, String>> licences,
        List<String> makers,
        List<String> buyers) {

    /** What is asked for by a name of the firm's own. */
    public enum Named {
        PERSON("people", "person"),
        MAKER("makers", "maker"),
        BUYER("buyers", "buyer");

        private final String table;
        private final String column;

        Named(String table, String column) {
            this.table = table;
            this.column = column;
        }

        /** What is said where the name is an invented one of the sample firm's. */
        public Optional<String> sample(String name) {
            NewFirm with =
                    new NewFirm(
                            SOMEBODY,
                            this == PERSON ? List.of(Map.of(column, name)) : List.of(),
                            this == MAKER ? List.of(name) : List.of(),
                            this == BUYER ? List.of(name) : List.of());
            return with.ofSample().stream().anyMatch((table + ": " + name)::equalsIgnoreCase)
                    ? Optional.of(invented(name))
                    : Optional.empty();
        }
    }

    // Stand in for what was not told yet while one fact is looked at alone; the number belongs to
    // nobody.
    private static final Map<String, String> SOMEBODY =
            Map.of("name", "Somebody", "abn", "99 000 000 000");

    /** Keeps the collections from being changed. */
    public NewFirm {
        facts = new LinkedHashMap<>(facts);
        licences = List.copyOf(licences);
        makers = List.copyOf(makers);
        buyers = List.copyOf(buyers);
    }

    /** Its tables: those that hold what it said. */
    public List<TableRows> tables() {
        TableRows firm = TableRows.empty("firm");
        for (Map.Entry<String, String> fact : facts.entrySet()) {
            firm = firm.plus(Map.of("fact", fact.getKey(), "value", fact.getValue()));
        }
        TableRows people = TableRows.empty("people");
        for (Map<String, String> licence : licences) {
            people = people.plus(licence);
        }
        return List.of(
                firm, people, named("makers", "maker", makers), named("buyers", "buyer", buyers));
    }

    /** What is said of a name, or fact, that is the sample firm's: a pack that shows it is held. */
    private static String invented(String what) {
        return what
                + " is the sample firm's and made up; papers that show it are held. Name one of your own.";
    }

    /** What of it is the sample firm's, a phrase each. */
    private List<String> ofSample() {
        return FirmTablesReader.of(tables()).result().map(SampleFirm::left).orElse(List.of());
    }

    /** What would hold papers because it is the sample firm's, in a sentence. */
    public Optional<String> sampleLeft() {
        List<String> left = ofSample();
        return left.isEmpty() ? Optional.empty() : Optional.of(invented(String.join(", ", left)));
    }

    private static TableRows named(String table, String column, List<String> names) {
        TableRows rows = TableRows.empty(table);
        for (String name : names) {
            rows = rows.plus(Map.of(column, name));
        }
        return rows;
    }

    /** What keeps anything of it from being used; each names the table and the row. */
    public List<Finding> troubles() {
        // What follows from a wrong fact, such as a missing ABN, comes behind it.
        return FirmTablesReader.of(tables()).findings().stream()
                .filter(f -> f.severity() != Severity.NOTE)
                .sorted(Comparator.comparing(f -> f.place().rowNumber() <= 1))
                .toList();
    }

    /** What is wrong with one fact of the firm, if it says anything. */
    public static Optional<Finding> trouble(String fact, String text) {
        Map<String, String> facts = new LinkedHashMap<>(SOMEBODY);
        facts.put(fact, text);
        NewFirm alone = new NewFirm(facts, List.of(), List.of(), List.of());
        return alone.troubles().stream().findFirst();
    }

    /** What is wrong with one licence. */
    public static Optional<Finding> trouble(Map<String, String> licence) {
        return new NewFirm(SOMEBODY, List.of(licence), List.of(), List.of())
                .troubles().stream().findFirst();
    }

    /** The fact that a finding is about. */
    public Optional<String> fact(Finding finding) {
        List<String> names = new ArrayList<>(facts.keySet());
        int row = finding.place().rowNumber() - 2;
        return finding.place().sheetName().equals("firm") && row >= 0 && row < names.size()
                ? Optional.of(names.get(row))
                : Optional.empty();
    }
}
