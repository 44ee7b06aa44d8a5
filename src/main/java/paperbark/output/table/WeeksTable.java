package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.money;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import paperbark.offer.Expected;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.value.Money;

/** One row a week in which money is due, one column a buyer. */
public final class WeeksTable {
    private static final String BUYER = "buyer-";
    private static final BigDecimal NOTHING = BigDecimal.ZERO.setScale(2);

    /** The sums of one week. */
    private static final class Week {
        private final Map<String, BigDecimal> byBuyer = new TreeMap<>();
        private BigDecimal held = NOTHING;
        private BigDecimal toOwners = NOTHING;

        private void add(CaseFile file, Expected expected) {
            Money toFirm = expected.split().toFirm();
            if (file.standing(expected.scheme()).counts()) {
                byBuyer.merge(expected.buyer().name(), toFirm.amount(), BigDecimal::add);
                toOwners = toOwners.add(expected.split().toOwner().amount());
            } else {
                held = held.add(toFirm.amount());
            }
        }

        private BigDecimal all() {
            return byBuyer.values().stream().reduce(NOTHING, BigDecimal::add);
        }
    }

    private WeeksTable() {}

    /** The table of the batch. */
    public static Table of(BatchView view) {
        TreeMap<LocalDate, Week> weeks = new TreeMap<>();
        TreeSet<String> buyers = new TreeSet<>();
        for (CaseFile file : view.cases()) {
            for (Expected expected : file.expected()) {
                buyers.add(expected.buyer().name());
                weeks.computeIfAbsent(ExpectedTable.week(expected.due()), w -> new Week())
                        .add(file, expected);
            }
        }
        List<List<TableCell>> rows = new ArrayList<>();
        weeks.forEach((monday, week) -> rows.add(row(monday, week, List.copyOf(buyers))));
        Table table =
                new Table(
                        "Weeks",
                        "Expected money",
                        List.of(
                                "The firm's money by buyer and by the week in which it is due, from the"
                                        + " sheet Expected claims. What is held comes only once it is"
                                        + " mended; what goes to owners is theirs."),
                        columns(List.copyOf(buyers)),
                        rows,
                        List.of());
        return Totals.ofMoney(table);
    }

    /** The columns of buyers, for a chart. */
    public static List<TableColumn> buyers(Table weeks) {
        return weeks.columns().stream().filter(c -> c.key().startsWith(BUYER)).toList();
    }

    private static List<TableColumn> columns(List<String> buyers) {
        List<TableColumn> columns = new ArrayList<>();
        columns.add(date("week", unlike(buyers, "In the week from")));
        for (int i = 0; i < buyers.size(); i++) {
            columns.add(new TableColumn(key(i), buyers.get(i), Kind.MONEY, 22));
        }
        columns.add(money("all", unlike(buyers, "From all buyers")));
        columns.add(money("held", unlike(buyers, "Held back")));
        columns.add(money("to-owners", unlike(buyers, "Paid to owners")));
        return columns;
    }

    /** A heading that no buyer's name is: a spreadsheet's table must tell its columns apart. */
    private static String unlike(List<String> buyers, String heading) {
        return buyers.stream().anyMatch(heading::equalsIgnoreCase) ? heading + " (sum)" : heading;
    }

    /** Letters only, as formulas need it. */
    private static String key(int index) {
        String letter = String.valueOf((char) ('a' + index % 26));
        return index < 26 ? BUYER + letter : key(index / 26 - 1) + letter;
    }

    private static List<TableCell> row(LocalDate monday, Week week, List<String> buyers) {
        List<TableCell> cells = new ArrayList<>();
        cells.add(TableCell.day(monday));
        for (int i = 0; i < buyers.size(); i++) {
            String buyer = buyers.get(i);
            cells.add(
                    derivedMoney(
                            sum(
                                    false,
                                    ",[Expected:buyer],"
                                            + SumifsName.like(buyer, "[#" + key(i) + "]")),
                            week.byBuyer.getOrDefault(buyer, NOTHING)));
        }
        String all =
                IntStream.range(0, buyers.size())
                        .mapToObj(i -> "[" + key(i) + "]")
                        .collect(Collectors.joining("+"));
        cells.add(derivedMoney(all, week.all()));
        cells.add(derivedMoney(sum(true, ""), week.held));
        cells.add(
                derivedMoney(
                        "SUMIFS([Expected:to-owner],[Expected:week],[week],"
                                + ClaimFacts.standing("Expected", false)
                                + ")",
                        week.toOwners));
        return cells;
    }

    private static String sum(boolean held, String more) {
        return "SUMIFS([Expected:to-firm],[Expected:week],[week],%s%s)"
                .formatted(ClaimFacts.standing("Expected", held), more);
    }
}
