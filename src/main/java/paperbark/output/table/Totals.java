package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.derivedWhole;
import static paperbark.output.table.TableCell.text;

import java.util.List;
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
        String first = table.columns().get(0).key();
        List<TableCell> row =
                table.columns().stream()
                        .map(
                                c ->
                                        c.key().equals(first)
                                                ? text("Total")
                                                : added.contains(c.key())
                                                        ? sum(table, c)
                                                        : TableCell.BLANK)
                        .toList();
        return table.withFooters(List.of(row));
    }

    /** The cell that adds up a column. */
    static TableCell sum(Table table, TableColumn column) {
        String formula = "SUM([" + table.name() + ":" + column.key() + "])";
        return column.kind() == Kind.MONEY
                ? derivedMoney(formula, table.sum(column.key()).setScale(2))
                : derivedWhole(formula, table.sum(column.key()).longValueExact());
    }
}
