package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.derivedWhole;
import static paperbark.output.table.TableCell.text;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Rows of totals. */
final class Totals {
    private Totals() {}

    /** The table with a row that adds up its columns of money. */
    static Table ofMoney(Table table) {
        return of(
                table,
                Set.copyOf(
                        table.columns().stream()
                                .filter(c -> c.kind() == Kind.MONEY)
                                .map(TableColumn::key)
                                .toList()));
    }

    /** The table with a row that adds up the named columns and says so under its first heading. */
    static Table of(Table table, Set<String> added) {
        Map<String, BigDecimal> sums = sums(table, added);
        String first = table.columns().get(0).key();
        List<TableCell> row =
                table.columns().stream()
                        .map(
                                c ->
                                        c.key().equals(first)
                                                ? text("Total")
                                                : added.contains(c.key())
                                                        ? sum(table, c, sums.get(c.key()))
                                                        : TableCell.BLANK)
                        .toList();
        return table.withFooters(List.of(row));
    }

    /** The sum of a column as its total says it. */
    static BigDecimal said(Table table, String key) {
        return table.value(table.footers().get(0), key).amount();
    }

    /** All sums in one pass, since rows may have to be made for it. */
    private static Map<String, BigDecimal> sums(Table table, Set<String> keys) {
        Map<String, BigDecimal> sums = new HashMap<>();
        keys.forEach(key -> sums.put(key, BigDecimal.ZERO));
        Map<String, Integer> columns = new HashMap<>();
        keys.forEach(key -> columns.put(key, table.column(key)));
        for (List<TableCell> row : table.rows()) {
            columns.forEach(
                    (key, at) -> sums.merge(key, row.get(at).value().amount(), BigDecimal::add));
        }
        return sums;
    }

    private static TableCell sum(Table table, TableColumn column, BigDecimal sum) {
        String formula = "SUM([" + table.name() + ":" + column.key() + "])";
        return column.kind() == Kind.MONEY
                ? derivedMoney(formula, sum.setScale(2))
                : derivedWhole(formula, sum.longValueExact());
    }
}
