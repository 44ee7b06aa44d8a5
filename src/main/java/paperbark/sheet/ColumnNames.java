package paperbark.sheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Which heading means which field: the columns table, with headings {@code field} and {@code
 * alias}. Case, spaces and punctuation of a heading do not count, unless they tell two aliases
 * apart. What every row says is said once in its column {@code always}. Lines whose field is {@code
 * sheet} say which sheets are meant.
 *
 * @param <F> the fields that a list of this kind has
 */
public final class ColumnNames<F extends ColumnField> {
    /** The line that lets a list have years of two digits. */
    private static final String SHORT_YEARS = "two-digit-years";

    /** Lines that say yes or no of the list as a whole. */
    private static final Set<String> HABITS = Set.of(SHORT_YEARS, "row-a-certificate");

    /** In the place of a field: the line says which sheets are meant. */
    private static final String SHEET = "sheet";

    private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{Nd}]");

    private final List<F> fields;
    private final String table;
    private final List<String> sheets = new ArrayList<>();
    private final Map<String, F> asWritten = new HashMap<>();
    private final Map<String, F> byAlias = new HashMap<>();
    private final Map<F, List<String>> headings = new HashMap<>();
    private final Map<F, String> always = new HashMap<>();
    private final Set<String> habits = new HashSet<>();

    private ColumnNames(List<F> fields, String table) {
        this.fields = List.copyOf(fields);
        this.table = table;
    }

    /** Whether a heading belongs to the columns table itself. */
    public static boolean isOwnHeading(String heading) {
        return List.of("field", "alias", "always").contains(normal(heading));
    }

    /**
     * Reads the columns table. A row that names no field, or an alias taken by another field, is
     * left out: {@code refused} is told its row number and why.
     */
    public static <F extends ColumnField> ColumnNames<F> of(
            List<F> fields, Sheet table, BiConsumer<Row, String> refused) {
        String name =
                table.name().isEmpty() ? table.file().replaceFirst("\\.csv$", "") : table.name();
        ColumnNames<F> names = new ColumnNames<>(fields, name);
        Map<String, F> byKey =
                fields.stream().collect(Collectors.toMap(ColumnField::key, Function.identity()));
        fields.forEach(f -> names.take(f.label(), f));
        fields.forEach(f -> names.take(f.key(), f));
        for (Row row : table.rows()) {
            String key = said(table, row, "field");
            F field = byKey.get(key.toLowerCase(Locale.ROOT));
            String always = said(table, row, "always");
            String alias = said(table, row, "alias");
            if (HABITS.contains(key.toLowerCase(Locale.ROOT))) {
                if (always.equalsIgnoreCase("yes")) {
                    names.habits.add(key.toLowerCase(Locale.ROOT));
                }
            } else if (key.equalsIgnoreCase(SHEET) && !alias.isEmpty()) {
                names.sheets.add(alias);
            } else if (field == null) {
                refused.accept(row, "\"" + key + "\" is no field.");
            } else {
                names.add(field, alias, always).ifPresent(why -> refused.accept(row, why));
            }
        }
        names.byAlias.values().removeIf(Objects::isNull);
        return names;
    }

    /** Which sheets of a workbook are meant where none is named. */
    public SheetRule sheets() {
        return new SheetRule(sheets);
    }

    /** What keeps the row from being used. */
    private Optional<String> add(F field, String alias, String said) {
        if (alias.isEmpty() && said.isEmpty()) {
            return Optional.of("The alias is empty.");
        }
        if (!said.isEmpty()) {
            always.put(field, said);
        }
        boolean taken = !alias.isEmpty() && take(alias, field);
        if (taken) {
            headings.computeIfAbsent(field, f -> new ArrayList<>()).add(alias);
        }
        return alias.isEmpty() || taken
                ? Optional.empty()
                : Optional.of(
                        "The alias already means \"" + asWritten.get(written(alias)).key() + "\".");
    }

    private boolean take(String heading, F field) {
        F same = asWritten.putIfAbsent(written(heading), field);
        if (same != null && same != field) {
            return false;
        }
        String normal = normal(heading);
        // Where only punctuation tells two headings apart, only the heading as written counts.
        boolean other = byAlias.containsKey(normal) && byAlias.get(normal) != field;
        byAlias.put(normal, other || normal.isEmpty() ? null : field);
        return true;
    }

    /** The field that a heading means. */
    public Optional<F> field(String heading) {
        return Optional.ofNullable(asWritten.get(written(heading)))
                .or(() -> Optional.ofNullable(byAlias.get(normal(heading))));
    }

    /** Whether a heading means anything. */
    public boolean knows(String heading) {
        return field(heading).isPresent();
    }

    /** What every row says of a field where its own cell says nothing. */
    public Optional<String> always(F field) {
        return Optional.ofNullable(always.get(field));
    }

    /** Whether years of two digits are those of this century. */
    public boolean shortYears() {
        return says(SHORT_YEARS);
    }

    /** Whether the table says yes to a habit of the list as a whole. */
    public boolean says(String habit) {
        return habits.contains(habit);
    }

    /** The headings that the table itself gives a field, as written and in their order. */
    public List<String> headings(F field) {
        return List.copyOf(headings.getOrDefault(field, List.of()));
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
        StringBuilder normal = new StringBuilder(heading.length());
        for (int i = 0; i < heading.length(); i++) {
            char c = heading.charAt(i);
            if (c > '~') {
                return BETWEEN.matcher(heading.toLowerCase(Locale.ROOT)).replaceAll("");
            }
            if (Character.isLetterOrDigit(c)) {
                normal.append(Character.toLowerCase(c));
            }
        }
        return normal.toString();
    }

    private static String written(String heading) {
        return heading.strip().toLowerCase(Locale.ROOT);
    }

    private static String said(Sheet table, Row row, String heading) {
        return table.columns().stream()
                .filter(c -> normal(c.heading()).equals(heading))
                .findFirst()
                .map(column -> row.cell(column).text())
                .orElse("");
    }
}
