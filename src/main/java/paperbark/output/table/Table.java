package paperbark.output.table;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.Predicate;

/**
 * Rows of values under headings.
 *
 * @param name the name by which formulas know it: letters only
 * @param title as shown
 * @param notes sentences to be read before the figures
 * @param columns from left to right
 * @param rows one cell a column; may be made each time they are looked at, so that a large batch
 *     need not be held in memory
 * @param footers rows of totals below the others
 */
public record Table(
        String name,
        String title,
        List<String> notes,
        List<TableColumn> columns,
        List<List<TableCell>> rows,
        List<List<TableCell>> footers) {

    /** Keeps the lists from being changed and every row as wide as the headings. */
    public Table {
        notes = List.copyOf(notes);
        columns = List.copyOf(columns);
        rows = rows instanceof MadeRows ? rows : rows.stream().map(List::copyOf).toList();
        footers = footers.stream().map(List::copyOf).toList();
        int width = columns.size();
        // Rows made on demand have one shape; looking at all of them would make them all.
        long looked = rows instanceof MadeRows ? 1 : rows.size();
        if (!rows.stream().limit(looked).allMatch(r -> r.size() == width)
                || !footers.stream().allMatch(r -> r.size() == width)) {
            throw new IllegalArgumentException("a row of " + name + " is not " + width + " wide");
        }
    }

    /** The 0-based place of a column. */
    public int column(String key) {
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).key().equals(key)) {
                return i;
            }
        }
        throw new IllegalArgumentException("no column " + key + " in " + name);
    }

    /** The value of a column in a row. */
    public Value value(List<TableCell> row, String key) {
        return row.get(column(key)).value();
    }

    /** The sum of a column over the rows wanted. */
    public BigDecimal sum(String key, Predicate<List<TableCell>> wanted) {
        return rows.stream()
                .filter(wanted)
                .map(row -> value(row, key).amount())
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** The same table with other sentences before the figures. */
    public Table withNotes(List<String> sentences) {
        return new Table(name, title, sentences, columns, rows, footers);
    }

    /** The same table with rows of totals. */
    public Table withFooters(List<List<TableCell>> totals) {
        return new Table(name, title, notes, columns, rows, totals);
    }
}
