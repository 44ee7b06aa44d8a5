package paperbark.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * The shape of a rule table: its own columns between the dates and the provenance that all tables
 * share.
 *
 * @param name file name below {@code rules/}, e.g. {@code stc/years.csv}
 * @param keys headings of the key columns; {@code x_from, x_to} is a range
 * @param values headings of the value columns, with the unit last
 * @param optional the value columns that may be blank in a row that has other values
 * @param read makes a typed row of a raw one
 * @param keyText the key as the key columns write it, its parts joined with a bar
 */
record TableLayout<K, R>(
        String name,
        List<String> keys,
        List<String> values,
        List<String> optional,
        Function<RuleRow, R> read,
        Function<K, String> keyText) {

    private static final List<String> PROVENANCE =
            List.of("source", "pinpoint", "confidence", "confirmed_on", "note");

    /** A table whose rows are complete or, with a note, empty. */
    static <K, R> TableLayout<K, R> of(
            String name,
            List<String> headings,
            Function<RuleRow, R> read,
            Function<K, String> key) {
        return new TableLayout<>(
                name,
                headings.subList(0, headings.size() - 1),
                headings.subList(headings.size() - 1, headings.size()),
                List.of(),
                read,
                key);
    }

    /** All headings, in order. */
    List<String> headings() {
        List<String> all = new ArrayList<>(List.of("from", "to"));
        all.addAll(keys);
        all.addAll(values);
        all.addAll(PROVENANCE);
        return all;
    }

    boolean hasRangeKey() {
        return keys.size() == 2 && keys.get(0).endsWith("_from") && keys.get(1).endsWith("_to");
    }
}
