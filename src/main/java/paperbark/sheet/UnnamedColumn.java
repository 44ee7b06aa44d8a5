package paperbark.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.poi.ss.util.CellReference;

/**
 * A column with values under an empty heading.
 *
 * @param index 1-based
 * @param letters such as {@code F}
 * @param rows numbers of the rows that have a value there
 * @param ofList whether it is a column of the list: it stands between others, or most rows have a
 *     value there; anything else is a remark beside the list
 */
public record UnnamedColumn(int index, String letters, List<Integer> rows, boolean ofList) {

    /** Keeps the rows from being changed. */
    public UnnamedColumn {
        rows = List.copyOf(rows);
    }

    /** Those of some rows, from left to right. Rows that are merely counted need no heading. */
    public static List<UnnamedColumn> of(List<Column> columns, List<Row> rows) {
        Set<Integer> named = columns.stream().map(Column::index).collect(Collectors.toSet());
        TreeMap<Integer, List<Cell>> without = new TreeMap<>();
        TreeMap<Integer, List<Integer>> numbers = new TreeMap<>();
        for (Row row : rows) {
            for (Cell cell : row.cells().values()) {
                boolean stored = cell.column() > 0 && !cell.isBlank();
                if (stored && !named.contains(cell.column())) {
                    without.computeIfAbsent(cell.column(), c -> new ArrayList<>()).add(cell);
                    numbers.computeIfAbsent(cell.column(), c -> new ArrayList<>())
                            .add(row.number());
                }
            }
        }
        int first = columns.get(0).index();
        int last = columns.get(columns.size() - 1).index();
        return without.entrySet().stream()
                .filter(e -> !isCount(e.getValue()))
                .map(
                        e ->
                                new UnnamedColumn(
                                        e.getKey(),
                                        CellReference.convertNumToColString(e.getKey() - 1),
                                        numbers.get(e.getKey()),
                                        e.getKey() > first && e.getKey() < last
                                                || e.getValue().size() * 2 > rows.size()))
                .toList();
    }

    private static boolean isCount(List<Cell> cells) {
        BigDecimal before = null;
        for (Cell cell : cells) {
            if (!cell.text().matches("[0-9]{1,6}[.)]?")) {
                return false;
            }
            BigDecimal number = new BigDecimal(cell.text().replaceAll("[.)]", ""));
            if (before != null && !number.subtract(before).equals(BigDecimal.ONE)) {
                return false;
            }
            before = number;
        }
        return cells.size() > 1;
    }
}
