package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import paperbark.output.BatchView;
import paperbark.value.DebtAge;

/** One row a buyer: what the ledger says is still to come, by how long it is overdue. */
final class DebtorsTable {
    private static final BigDecimal NOTHING = BigDecimal.ZERO.setScale(2);

    private DebtorsTable() {}

    /** The table over the rows of what the ledger knows. */
    static Table of(BatchView view, Table received) {
        Map<String, Map<DebtAge, BigDecimal>> buyers = new TreeMap<>();
        for (List<TableCell> row : received.rows()) {
            BigDecimal open = received.value(row, "open").amount();
            if (open.signum() > 0) {
                DebtAge age = DebtAge.of(received.value(row, "overdue").amount().longValueExact());
                buyers.computeIfAbsent(
                                received.value(row, "buyer").shown(),
                                b -> new EnumMap<>(DebtAge.class))
                        .merge(age, open, BigDecimal::add);
            }
        }
        List<List<TableCell>> rows = new ArrayList<>();
        buyers.forEach((buyer, sums) -> rows.add(row(buyer, sums)));
        Table table =
                new Table(
                        "Debtors",
                        "Debtors by age",
                        List.of(
                                view.receivables().isEmpty()
                                        ? "Nothing is known here yet: no ledger of earlier claims went into"
                                                + " this run."
                                        : "What buyers still owe of the claims on the sheet Received and"
                                                + " overdue, by days past the due day."),
                        columns(),
                        rows,
                        List.of());
        return Totals.ofMoney(table);
    }

    private static List<TableColumn> columns() {
        List<TableColumn> columns = new ArrayList<>();
        columns.add(text("buyer", "Buyer", 30));
        for (DebtAge age : DebtAge.values()) {
            columns.add(money(key(age), age.words()));
        }
        columns.add(money("together", "Together"));
        return columns;
    }

    /** Letters and hyphens, as formulas need it. */
    private static String key(DebtAge age) {
        return "age-" + (char) ('a' + age.ordinal());
    }

    private static List<TableCell> row(String buyer, Map<DebtAge, BigDecimal> sums) {
        List<TableCell> cells = new ArrayList<>();
        cells.add(text(buyer));
        for (DebtAge age : DebtAge.values()) {
            cells.add(
                    derivedMoney(
                            "SUMIFS([Received:open],[Received:open],\">0\",[Received:buyer],%s%s)"
                                    .formatted(SumifsName.like(buyer, "[buyer]"), limits(age)),
                            sums.getOrDefault(age, NOTHING)));
        }
        cells.add(
                derivedMoney(
                        Arrays.stream(DebtAge.values())
                                .map(age -> "[" + key(age) + "]")
                                .collect(Collectors.joining("+")),
                        sums.values().stream().reduce(NOTHING, BigDecimal::add)));
        return cells;
    }

    private static String limits(DebtAge age) {
        String least = age.first() > 0 ? limit(">=", age.first()) : "";
        String most = age.last() < Long.MAX_VALUE ? limit("<=", age.last()) : "";
        return least + most;
    }

    private static String limit(String sign, long days) {
        return String.format(Locale.ROOT, ",[Received:overdue],\"%s%d\"", sign, days);
    }
}
