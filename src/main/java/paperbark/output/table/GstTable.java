package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.money;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;

import java.util.ArrayList;
import java.util.List;
import paperbark.firm.GstRounding;
import paperbark.offer.FirmGst;
import paperbark.offer.OwnerPrice;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.value.Money;

/**
 * One row a job with a price: GST is an eleventh of the full price, before any certificate is taken
 * off. Source: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820).
 */
public final class GstTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("job", "Job", 12),
                    text("owner", "Owner", 24),
                    text("owner-gst", "Owner registered for GST", 14),
                    money("full", "Full price"),
                    money("assigned", "Assigned"),
                    money("payable", "Payable"),
                    money("gst", "GST in full price"),
                    money("without", "Price without GST"),
                    money("beyond", "Buyers pay beyond discount"),
                    money("more-gst", "GST on that"),
                    money("given", "Given for the assignment"),
                    money("owner-owes", "Owner's GST on it"),
                    money("credit", "Firm's credit for it"));

    private final BatchView view;
    private final boolean registered;

    private GstTable(BatchView view) {
        this.view = view;
        this.registered = view.firm().gstRegistered();
    }

    /** The table of the batch. */
    public static Table of(BatchView view) {
        GstTable gst = new GstTable(view);
        List<CaseFile> priced = view.cases().stream().filter(c -> c.price().isPresent()).toList();
        Table table =
                new Table(
                        "Gst",
                        "GST",
                        gst.notes(view.cases().size() - priced.size()),
                        COLUMNS,
                        MadeRows.of(priced, gst::row),
                        List.of());
        return table.withFooters(GstTotals.of(table, view));
    }

    private List<String> notes(int unpriced) {
        List<String> notes = new ArrayList<>();
        notes.add(
                registered
                        ? "GST is a share of the full price, an eleventh today, not of what the owner pays after the"
                                + " certificates; the two are never netted. Source: ATO, GST and the"
                                + " Small-scale Renewable Energy Scheme (QC 24820). No GST lies on an"
                                + " assignment by an owner who is not registered. What a buyer pays the"
                                + " firm beyond the discount is taxed when it comes. The firm's credit"
                                + " needs the owner's tax invoice. Rounding: "
                                + view.firm().money().gstRounding().word()
                                + " rule."
                        : "The firm is not registered for GST: no GST is charged, shown or owed, and every"
                                + " amount of the firm's GST is zero.");
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

    private List<TableCell> row(CaseFile file) {
        OwnerPrice price = file.price().orElseThrow();
        FirmGst gst = FirmGst.of(price, file.expected(), file.job(), view.firm());
        int divisor = price.gstDivisor();
        return List.of(
                text(file.job().reference()),
                text(file.job().owner().names()),
                text(file.job().owner().gstRegistered().map(yes -> yes ? "yes" : "no")),
                money(price.fullPrice()),
                money(price.assigned()),
                derivedMoney("[full]-[assigned]", price.payable()),
                ours("ROUND([full]/" + divisor + ",2)", price.gst()),
                derivedMoney("[full]-[gst]", price.fullPrice().minus(price.gst())),
                money(gst.beyond()),
                ours(onBeyond(divisor), gst.onBeyond()),
                money(gst.given()),
                gst.ownerGst().isZero()
                        ? money(gst.ownerGst())
                        : derivedMoney("ROUND([given]/" + divisor + ",2)", gst.ownerGst()),
                gst.credit().isZero()
                        ? money(gst.credit())
                        : derivedMoney("[owner-owes]", gst.credit()));
    }

    /** GST of the firm; nothing to work out where it is not registered. */
    private TableCell ours(String formula, Money amount) {
        return registered ? derivedMoney(formula, amount) : money(amount);
    }

    private String onBeyond(int divisor) {
        return view.firm().money().gstRounding() == GstRounding.TOTAL_INVOICE
                ? "ROUND(([full]+[beyond])/" + divisor + ",2)-[gst]"
                : "ROUND([beyond]/" + divisor + ",2)";
    }
}
