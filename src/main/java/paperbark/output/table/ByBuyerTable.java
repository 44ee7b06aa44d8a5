package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.derivedWhole;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import paperbark.value.SchemeName;

/** One row a scheme and buyer: certificates and money. */
final class ByBuyerTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("scheme", "Scheme", 34),
                    text("buyer", "Buyer", 30),
                    whole("certificates", "Certificates", 15),
                    money("gross", "Gross"),
                    money("fee", "Fee"),
                    money("net", "Buyer pays"),
                    money("to-firm", "To the firm"),
                    money("held", "Held, to the firm"));

    private static final String TO_FIRM = "to-firm";
    private static final List<String> DOLLARS = List.of("gross", "fee", "net", TO_FIRM);

    private final String scheme;
    private final Map<String, Map<String, BigDecimal>> sums = new TreeMap<>();

    private ByBuyerTable(SchemeName scheme) {
        this.scheme = scheme.word();
    }

    static Table of(BatchTables tables) {
        List<List<TableCell>> rows = new ArrayList<>();
        for (SchemeName scheme : SchemeName.values()) {
            ByBuyerTable byBuyer = new ByBuyerTable(scheme);
            byBuyer.add(tables.certificates(), List.of("certificates"));
            byBuyer.add(tables.expected(), DOLLARS);
            byBuyer.sums.forEach((buyer, of) -> rows.add(byBuyer.row(buyer, of)));
        }
        Table table =
                new Table(
                        "ByBuyer",
                        "By scheme and buyer",
                        List.of("What is held stands in the last column alone."),
                        COLUMNS,
                        rows,
                        List.of());
        return Totals.ofMoney(table);
    }

    /** Adds up columns of a table in one pass. */
    private void add(Table table, List<String> keys) {
        for (List<TableCell> row : table.rows()) {
            if (table.value(row, "scheme").shown().equals(scheme)) {
                Map<String, BigDecimal> of =
                        sums.computeIfAbsent(
                                table.value(row, "buyer").shown(), b -> new HashMap<>());
                if (!ClaimFacts.isHeld(table, row)) {
                    keys.forEach(
                            key -> of.merge(key, table.value(row, key).amount(), BigDecimal::add));
                } else if (keys.contains(TO_FIRM)) {
                    of.merge("held", table.value(row, TO_FIRM).amount(), BigDecimal::add);
                }
            }
        }
    }

    private List<TableCell> row(String buyer, Map<String, BigDecimal> of) {
        List<TableCell> cells = new ArrayList<>();
        cells.add(text(scheme));
        cells.add(text(buyer));
        cells.add(
                derivedWhole(
                        matching("Certificates", "certificates", buyer, false),
                        of.getOrDefault("certificates", BigDecimal.ZERO).longValueExact()));
        for (String key : DOLLARS) {
            cells.add(
                    derivedMoney(
                            matching("Expected", key, buyer, false),
                            of.getOrDefault(key, BigDecimal.ZERO).setScale(2)));
        }
        cells.add(
                derivedMoney(
                        matching("Expected", TO_FIRM, buyer, true),
                        of.getOrDefault("held", BigDecimal.ZERO).setScale(2)));
        return cells;
    }

    private static String matching(String table, String key, String buyer, boolean held) {
        return "SUMIFS([%1$s:%2$s],[%1$s:scheme],[scheme],[%1$s:buyer],%3$s,%4$s)"
                .formatted(
                        table,
                        key,
                        SumifsName.like(buyer, "[buyer]"),
                        ClaimFacts.standing(table, held));
    }
}
