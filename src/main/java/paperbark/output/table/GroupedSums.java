package paperbark.output.table;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * The sums of a table's columns of money, apart for each group of its rows. All of them in one
 * pass, since rows may have to be made for it.
 *
 * @param <G> what rows of one group have in common
 */
public final class GroupedSums<G> {
    private static final BigDecimal NOTHING = BigDecimal.ZERO.setScale(2);

    private final Map<G, Group> groups = new HashMap<>();
    private final List<String> keys = new ArrayList<>();

    private static final class Group {
        private final Map<String, BigDecimal> sums = new HashMap<>();
        private int rows;
    }

    private GroupedSums() {}

    /** The sums of rows that show the same word in a column. */
    public static GroupedSums<String> byWord(Table table, String key) {
        int column = table.column(key);
        return of(table, row -> row.get(column).value().shown());
    }

    /** The sums of rows of which the same is said. */
    static <G> GroupedSums<G> of(Table table, Function<List<TableCell>, G> group) {
        GroupedSums<G> all = new GroupedSums<>();
        List<Integer> columns = new ArrayList<>();
        for (int i = 0; i < table.columns().size(); i++) {
            if (table.columns().get(i).kind() == Kind.MONEY) {
                all.keys.add(table.columns().get(i).key());
                columns.add(i);
            }
        }
        for (List<TableCell> row : table.rows()) {
            Group of = all.groups.computeIfAbsent(group.apply(row), g -> new Group());
            of.rows++;
            for (int i = 0; i < columns.size(); i++) {
                BigDecimal amount = row.get(columns.get(i)).value().amount();
                of.sums.merge(all.keys.get(i), amount, BigDecimal::add);
            }
        }
        return all;
    }

    /** The sum of a column of money over a group, in dollars and cents; zero for no rows. */
    public BigDecimal sum(G group, String key) {
        if (!keys.contains(key)) {
            throw new IllegalArgumentException("no column of money " + key);
        }
        Group of = groups.get(group);
        return of == null ? NOTHING : of.sums.get(key).setScale(2);
    }

    /** The number of rows of a group. */
    int rows(G group) {
        Group of = groups.get(group);
        return of == null ? 0 : of.rows;
    }
}
