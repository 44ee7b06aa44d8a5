package paperbark.sheet;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Which heading means which field: the columns table, with headings {@code field} and {@code
 * alias}. Case, spaces and punctuation of a heading do not count.
 *
 * @param <F> the fields that a list of this kind has
 */
public final class ColumnNames<F extends ColumnField> {
    private final List<F> fields;
    private final String table;
    private final Map<String, F> byAlias;

    private ColumnNames(List<F> fields, String table, Map<String, F> byAlias) {
        this.fields = List.copyOf(fields);
        this.table = table;
        this.byAlias = Map.copyOf(byAlias);
    }

    /** Whether a heading belongs to the columns table itself. */
    public static boolean isOwnHeading(String heading) {
        return List.of("field", "alias").contains(normal(heading));
    }

    /**
     * Reads the columns table. A row that names no field, or an alias taken by another field, is
     * left out: {@code refused} is told its row number and why.
     */
    public static <F extends ColumnField> ColumnNames<F> of(
            List<F> fields, Sheet table, BiConsumer<Row, String> refused) {
        Map<String, F> byKey =
                fields.stream().collect(Collectors.toMap(ColumnField::key, Function.identity()));
        Optional<Column> field = named(table.columns(), "field");
        Optional<Column> alias = named(table.columns(), "alias");
        Map<String, F> names = new HashMap<>();
        fields.forEach(f -> names.put(normal(f.label()), f));
        fields.forEach(f -> names.put(normal(f.key()), f));
        if (field.isPresent() && alias.isPresent()) {
            for (Row row : table.rows()) {
                String key = row.cell(field.get()).text();
                String heading = normal(row.cell(alias.get()).text());
                F known = byKey.get(key.toLowerCase(Locale.ROOT));
                if (known == null) {
                    refused.accept(row, "\"" + key + "\" is no field.");
                } else if (heading.isEmpty()) {
                    refused.accept(row, "The alias is empty.");
                } else if (names.getOrDefault(heading, known) != known) {
                    refused.accept(
                            row, "The alias already means \"" + names.get(heading).key() + "\".");
                } else {
                    names.put(heading, known);
                }
            }
        }
        String name =
                table.name().isEmpty() ? table.file().replaceFirst("\\.csv$", "") : table.name();
        return new ColumnNames<>(fields, name, names);
    }

    /** The field that a heading means. */
    public Optional<F> field(String heading) {
        return Optional.ofNullable(byAlias.get(normal(heading)));
    }

    /** Whether a heading means anything. */
    public boolean knows(String heading) {
        return byAlias.containsKey(normal(heading));
    }

    /** All headings, normalised, that mean a field. */
    public Collection<String> aliases(F field) {
        return byAlias.entrySet().stream()
                .filter(e -> e.getValue() == field)
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
    }

    /** What people call the table, e.g. {@code columns table}. */
    String table() {
        return table + " table";
    }

    /** The fields themselves, in their order. */
    List<F> fields() {
        return fields;
    }

    /** A heading without case, spaces and punctuation. */
    public static String normal(String heading) {
        return heading.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{Nd}]", "");
    }

    private static Optional<Column> named(List<Column> columns, String name) {
        return columns.stream().filter(c -> normal(c.heading()).equals(name)).findFirst();
    }
}
