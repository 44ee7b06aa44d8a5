package paperbark.finding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One cause, told once with all rows in which it shows: the same name that no table knows in twenty
 * rows is one thing to mend. Nothing is folded away by it, since every row and job is named.
 *
 * @param all the findings of that cause in reading order; a single one stands for itself
 */
public record Told(List<Finding> all) {
    /** From so many rows on a cause is told once. */
    private static final int ROWS = 3;

    /** Names that a table lacks are one cause together where they are told together. */
    private static final Set<FindingCode> LACKING =
            Set.of(
                    FindingCode.NAMES_UNKNOWN,
                    FindingCode.MAKER_UNKNOWN,
                    FindingCode.MODEL_UNKNOWN,
                    FindingCode.PERSON_UNKNOWN,
                    FindingCode.SELLER_UNKNOWN,
                    FindingCode.BUYER_UNKNOWN);

    /** Keeps the list from being changed; there is at least one. */
    public Told {
        all = List.copyOf(all);
        Objects.checkIndex(0, all.size());
    }

    /** The findings by cause, each where its first one stands. */
    public static List<Told> of(List<Finding> findings) {
        Map<List<Object>, List<Integer>> byCause = new LinkedHashMap<>();
        boolean names = findings.stream().anyMatch(f -> f.code() == FindingCode.NAMES_UNKNOWN);
        List<Object> lacking = List.of(FindingCode.NAMES_UNKNOWN);
        for (int i = 0; i < findings.size(); i++) {
            Finding finding = findings.get(i);
            boolean isName = names && LACKING.contains(finding.code());
            byCause.computeIfAbsent(isName ? lacking : cause(finding), k -> new ArrayList<>())
                    .add(i);
        }
        SortedMap<Integer, Told> told = new TreeMap<>();
        for (List<Integer> places : byCause.values()) {
            List<Finding> alike =
                    places.stream()
                            .map(findings::get)
                            // What stands for the others goes first.
                            .sorted(
                                    Comparator.comparing(
                                            f -> f.code() != FindingCode.NAMES_UNKNOWN))
                            .toList();
            if (rows(alike).size() < ROWS) {
                places.forEach(i -> told.put(i, new Told(List.of(findings.get(i)))));
            } else {
                told.put(places.get(0), new Told(alike));
            }
        }
        return List.copyOf(told.values());
    }

    /** Notes of one kind in one column are a habit, whatever each of them says. */
    private static List<Object> cause(Finding finding) {
        boolean habit = finding.severity() == Severity.NOTE;
        Place place = finding.place();
        return List.of(
                finding.code(),
                finding.severity(),
                finding.holds(),
                place.file(),
                place.sheetName(),
                place instanceof Place.InRow ? "" : place.columnHeading(),
                letters(place),
                habit ? "" : finding.seen(),
                habit ? "" : finding.fact(),
                habit ? "" : finding.remedy());
    }

    private static List<Integer> rows(List<Finding> findings) {
        return findings.stream()
                .filter(f -> f.place() instanceof Place.InCell || f.place() instanceof Place.InRow)
                .map(f -> f.place().rowNumber())
                .distinct()
                .sorted()
                .toList();
    }

    private static String letters(Place place) {
        String address = place.cellAddress();
        int end = address.length();
        while (end > 0 && Character.isDigit(address.charAt(end - 1))) {
            end--;
        }
        return address.substring(0, end);
    }

    /** The first of them, which stands for all. */
    public Finding first() {
        return all.get(0);
    }

    /** Whether it is told of several rows. */
    public boolean isFolded() {
        return all.size() > 1;
    }

    /** The rows where it shows. */
    public List<Integer> rows() {
        return rows(all);
    }

    /** The rows in words: {@code 14-20, 23}. */
    public String rowsInWords() {
        List<Integer> rows = rows();
        List<String> words = new ArrayList<>();
        for (int from = 0, to = 0; from < rows.size(); from = to + 1, to = from) {
            while (to + 1 < rows.size() && rows.get(to + 1) == rows.get(to) + 1) {
                to++;
            }
            String first = rows.get(from).toString();
            words.add(from == to ? first : first + (to == from + 1 ? ", " : "-") + rows.get(to));
        }
        return String.join(", ", words);
    }

    /** The jobs that it is about. */
    public List<String> jobs() {
        return all.stream().map(Finding::job).flatMap(Optional::stream).distinct().toList();
    }

    /** The place in words: {@code week.xlsx > Week 47 > column F "Tank serial", rows 14-20, 23}. */
    public String where() {
        if (!isFolded()) {
            return first().where();
        }
        Place place = first().place();
        Place common =
                place instanceof Place.InCell
                        ? new Place.InColumn(
                                place.file(),
                                place.sheetName(),
                                place.columnHeading(),
                                letters(place))
                        : new Place.InFile(
                                place.sheetName().isEmpty()
                                        ? place.file()
                                        : place.file() + " > " + place.sheetName());
        return common.inWords() + ", rows " + rowsInWords();
    }

    /** What is wrong; where each row has its own words, those of the first. */
    public String fact() {
        boolean same =
                first().code() == FindingCode.NAMES_UNKNOWN
                        || all.stream().allMatch(f -> f.fact().equals(first().fact()));
        return same
                ? first().fact()
                : "For instance in row " + first().place().rowNumber() + ": " + first().fact();
    }
}
