package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;

import java.util.ArrayList;
import java.util.List;
import paperbark.offer.OwnerPrice;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;

/**
 * One row a job with a price: GST is an eleventh of the full price, before any certificate is taken
 * off. Source: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820).
 */
public final class GstTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("job", "Job", 13),
                    text("owner", "Owner", 30),
                    text("owner-gst", "Owner registered for GST", 16),
                    money("full", "Full price"),
                    money("assigned", "Assigned"),
                    money("payable", "Payable"),
                    money("gst", "GST in full price"));

    private GstTable() {}

    /** The table of the batch. */
    public static Table of(BatchView view) {
        boolean registered = view.firm().gstRegistered();
        List<List<TableCell>> rows = new ArrayList<>();
        for (CaseFile file : view.cases()) {
            file.price().ifPresent(price -> rows.add(row(file, price, registered)));
        }
        Table table = new Table("Gst", "GST", notes(view, rows.size()), COLUMNS, rows, List.of());
        return table.withFooters(List.of(totals(table)));
    }

    private static List<String> notes(BatchView view, int priced) {
        List<String> notes = new ArrayList<>();
        notes.add(
                view.firm().gstRegistered()
                        ? "GST is a share of the full price, an eleventh today, not of what the owner pays after the"
                                + " certificates; the two are never netted. Source: ATO, GST and the"
                                + " Small-scale Renewable Energy Scheme (QC 24820). No GST lies on an"
                                + " assignment by an owner who is not registered."
                        : "The firm is not registered for GST: no GST is charged, shown or owed, and every"
                                + " amount in the column is zero.");
        int unpriced = view.cases().size() - priced;
        if (unpriced > 0) {
            notes.add(
                    unpriced
                            + (unpriced == 1
                                    ? " job without a price is"
                                    : " jobs without a price are")
                            + " not in this list.");
        }
        return notes;
    }

    private static List<TableCell> row(CaseFile file, OwnerPrice price, boolean registered) {
        return List.of(
                text(file.job().reference()),
                text(file.job().owner().name()),
                text(file.job().owner().gstRegistered().map(yes -> yes ? "yes" : "no")),
                TableCell.of(Value.money(price.fullPrice())),
                TableCell.of(Value.money(price.assigned())),
                derivedMoney("[full]-[assigned]", price.payable().amount()),
                registered
                        ? derivedMoney(
                                "ROUND([full]/" + price.gstDivisor() + ",2)", price.gst().amount())
                        : TableCell.of(Value.money(price.gst())));
    }

    private static List<TableCell> totals(Table table) {
        return table.columns().stream()
                .map(
                        column -> {
                            if (column.key().equals("job")) {
                                return text("Total");
                            }
                            return column.kind() == Kind.MONEY
                                    ? derivedMoney(
                                            "SUM([Gst:" + column.key() + "])",
                                            table.sum(column.key()).setScale(2))
                                    : TableCell.BLANK;
                        })
                .toList();
    }
}
