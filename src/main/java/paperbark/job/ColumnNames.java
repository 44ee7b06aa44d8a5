package paperbark.job;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;

/**
 * Which heading means which field: the columns table, with headings {@code field} and {@code
 * alias}. Case, spaces and punctuation of a heading do not count.
 */
public final class ColumnNames {
    private static final Map<String, Field> BY_KEY =
            Arrays.stream(Field.values())
                    .collect(Collectors.toMap(Field::key, Function.identity()));

    private final Map<String, Field> byAlias;

    private ColumnNames(Map<String, Field> byAlias) {
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
    public static ColumnNames of(Sheet table, BiConsumer<Row, String> refused) {
        Optional<Column> field = named(table.columns(), "field");
        Optional<Column> alias = named(table.columns(), "alias");
        Map<String, Field> names = new HashMap<>();
        Arrays.stream(Field.values()).forEach(f -> names.put(normal(f.label()), f));
        Arrays.stream(Field.values()).forEach(f -> names.put(normal(f.key()), f));
        if (field.isPresent() && alias.isPresent()) {
            for (Row row : table.rows()) {
                String key = row.cell(field.get()).text();
                String heading = normal(row.cell(alias.get()).text());
                Field known = BY_KEY.get(key.toLowerCase(Locale.ROOT));
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
        return new ColumnNames(names);
    }

    /** The field that a heading means. */
    public Optional<Field> field(String heading) {
        return Optional.ofNullable(byAlias.get(normal(heading)));
    }

    /** Whether a heading means anything. */
    public boolean knows(String heading) {
        return byAlias.containsKey(normal(heading));
    }

    /** All headings, normalised, that mean a field. */
    public Collection<String> aliases(Field field) {
        return byAlias.entrySet().stream()
                .filter(e -> e.getValue() == field)
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
    }

    /** A heading without case, spaces and punctuation. */
    static String normal(String heading) {
        return heading.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{Nd}]", "");
    }

    private static Optional<Column> named(List<Column> columns, String name) {
        return columns.stream().filter(c -> normal(c.heading()).equals(name)).findFirst();
    }
}
