package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.derivedWhole;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Predicate;
import paperbark.firm.SchemeName;

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
                    money("to-firm", "To the firm"));

    private final Table certificates;
    private final Table expected;

    private ByBuyerTable(BatchTables tables) {
        this.certificates = tables.certificates();
        this.expected = tables.expected();
    }

    static Table of(BatchTables tables) {
        ByBuyerTable byBuyer = new ByBuyerTable(tables);
        List<List<TableCell>> rows = new ArrayList<>();
        for (SchemeName scheme : SchemeName.values()) {
            byBuyer.buyers(scheme.word())
                    .forEach(buyer -> rows.add(byBuyer.row(scheme.word(), buyer)));
        }
        Table table =
                new Table("ByBuyer", "By scheme and buyer", List.of(), COLUMNS, rows, List.of());
        return Totals.ofMoney(table);
    }

    private TreeSet<String> buyers(String scheme) {
        TreeSet<String> buyers = new TreeSet<>();
        for (Table table : List.of(certificates, expected)) {
            table.rows().stream()
                    .filter(row -> table.value(row, "scheme").shown().equals(scheme))
                    .forEach(row -> buyers.add(table.value(row, "buyer").shown()));
        }
        return buyers;
    }

    private List<TableCell> row(String scheme, String buyer) {
        return List.of(
                text(scheme),
                text(buyer),
                derivedWhole(
                        matching("Certificates", "certificates", buyer),
                        certificates
                                .sum("certificates", of(certificates, scheme, buyer))
                                .longValueExact()),
                dollars("gross", scheme, buyer),
                dollars("fee", scheme, buyer),
                dollars("net", scheme, buyer),
                dollars("to-firm", scheme, buyer));
    }

    private TableCell dollars(String key, String scheme, String buyer) {
        return derivedMoney(
                matching("Expected", key, buyer),
                expected.sum(key, of(expected, scheme, buyer)).setScale(2));
    }

    private static String matching(String table, String key, String buyer) {
        return "SUMIFS([%1$s:%2$s],[%1$s:scheme],[scheme],[%1$s:buyer],%3$s)"
                .formatted(table, key, Names.like(buyer, "[buyer]"));
    }

    private static Predicate<List<TableCell>> of(Table table, String scheme, String buyer) {
        return row ->
                table.value(row, "scheme").shown().equals(scheme)
                        && table.value(row, "buyer").shown().equals(buyer);
    }
}
