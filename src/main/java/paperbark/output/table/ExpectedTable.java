package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.flag;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.flag;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import paperbark.offer.Expected;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;

/** One row a claim that a buyer's offer was found for. */
public final class ExpectedTable {
    private static final Set<String> TOTALLED = Set.of("gross", "fee", "net");
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("job", "Job", 13),
                    text("owner", "Owner", 24),
                    text("buyer", "Buyer", 24),
                    text("scheme", "Scheme", 11),
                    whole("certificates", "Certificates", 15),
                    new TableColumn("price", "Price each", Kind.PRICE, 13),
                    money("gross", "Gross"),
                    money("fee", "Fee"),
                    money("net", "Net"),
                    date("due", "Due"),
                    flag("held", "Held", 9));

    private ExpectedTable() {}

    /** The table of the batch. */
    public static Table of(BatchView view) {
        List<List<TableCell>> rows = new ArrayList<>();
        for (CaseFile file : view.cases()) {
            file.expected().forEach(e -> rows.add(row(file, e)));
        }
        Table table =
                new Table(
                        "Expected",
                        "Expected money",
                        List.of(
                                "What buyers pay for certificates, without GST. Due: the day of payment"
                                        + " when the claim is lodged on the day of this run. Held: the"
                                        + " assignment is kept back, so nothing comes until it is mended."),
                        COLUMNS,
                        rows,
                        List.of());
        return table.withFooters(List.of(totals(table)));
    }

    private static List<TableCell> row(CaseFile file, Expected expected) {
        return List.of(
                text(file.job().reference()),
                text(file.job().owner().name()),
                text(expected.buyer().name()),
                text(expected.scheme().word()),
                TableCell.whole(expected.certificates()),
                TableCell.of(new Value.Price(expected.offer().pricePerCertificate().amount())),
                derivedMoney("ROUND([certificates]*[price],2)", expected.gross().amount()),
                TableCell.of(Value.money(expected.fee())),
                derivedMoney("[gross]-[fee]", expected.net().amount()),
                TableCell.day(expected.due()),
                flag(Claims.isHeld(file, expected.scheme())));
    }

    private static List<TableCell> totals(Table table) {
        return table.columns().stream()
                .map(
                        column -> {
                            if (column.key().equals("job")) {
                                return text("Total");
                            }
                            return TOTALLED.contains(column.key())
                                    ? derivedMoney(
                                            "SUM([Expected:" + column.key() + "])",
                                            table.sum(column.key()).setScale(2))
                                    : TableCell.BLANK;
                        })
                .toList();
    }
}
