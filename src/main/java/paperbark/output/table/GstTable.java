package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.money;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.text;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import paperbark.job.Job;
import paperbark.offer.FirmGst;
import paperbark.offer.OwnerPrice;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.State;

/**
 * One row a job with a price: GST is an eleventh of the full price, before any certificate is taken
 * off. Source: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820).
 */
public final class GstTable {
    /** How what a buyer pays beyond or below the discount is taxed, with both readings. */
    static final String RULE =
            "by claim, more than the discount is taxed when it comes, less lowers nothing. One reading"
                    + " taxes the full price and no more (QC 24820), the other all that customer and"
                    + " buyer pay (edited private advice 1052028683343, which binds only who asked);"
                    + " of each claim the higher counts.";

    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("job", "Job", 10),
                    text("owner", "Owner", 18),
                    date("day", "Day"),
                    text("stage", "Stage", 10),
                    text("counted", "Counted as", 15),
                    text("state", "State", 7),
                    text("quarter", "Quarter", 19),
                    text("owner-gst", "Owner registered for GST", 14),
                    dollars("full", "Full price"),
                    dollars("assigned", "Assigned"),
                    dollars("payable", "Payable"),
                    dollars("gst", "GST in full price"),
                    dollars("without", "Price without GST"),
                    dollars("beyond", "Buyers pay beyond discount"),
                    dollars("more-gst", "GST on that"),
                    dollars("by-payments", "GST by the other reading"),
                    dollars("given", "Given to the owner"),
                    dollars("owner-owes", "Owner's GST on it"),
                    dollars("credit", "Firm's credit for it"));

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
                        gst.notes(
                                view.cases().size() - priced.size(),
                                priced.stream().filter(c -> !isKnown(c)).count()),
                        COLUMNS,
                        MadeRows.of(priced, gst::row),
                        List.of());
        return table.withFooters(GstTotals.of(table, view));
    }

    /** Narrow, since there are many. */
    private static TableColumn dollars(String key, String heading) {
        return new TableColumn(key, heading, Kind.MONEY, 12);
    }

    private List<String> notes(int unpriced, long open) {
        List<String> notes = new ArrayList<>();
        if (registered) {
            notes.add(
                    "GST is a share of the full price, an eleventh today, not of what the owner pays after the"
                            + " certificates; the two are never netted. Source: ATO, GST and the"
                            + " Small-scale Renewable Energy Scheme (QC 24820). No GST lies on an"
                            + " assignment by an owner who is not registered. Rounding: "
                            + view.firm().money().gstRounding().word()
                            + " rule.");
            notes.add("Buyers pay beyond discount: " + RULE);
            notes.add(
                    "Firm's credit: only where the firm itself is the buyer (column \"own\" of the buyers"
                            + " table) and holds the owner's tax invoice. Otherwise both are the"
                            + " buyer's. Sources: QC 24820; edited private advice 1013003639462, which"
                            + " binds only who asked.");
            notes.add(GstTotals.CENTS);
        } else {
            notes.add(
                    "The firm is not registered for GST: no GST is charged, shown or owed, and every"
                            + " amount of the firm's GST is zero.");
        }
        notes.add(
                "Day and quarter: of the installation, for booked jobs of the planned visit; a heater that is"
                        + " in since nobody knows when lies in no quarter yet. A held claim is"
                        + " not taken off the price here, and puts off no GST on the price of a heater"
                        + " that is in.");
        if (open > 0) {
            notes.add(
                    "Assigned, payable: of "
                            + open
                            + (open == 1 ? " job" : " jobs")
                            + " nobody said what the certificates take off the price; what the owner"
                            + " pays is the register's own amount, or empty.");
        }
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
        Job job = file.job();
        OwnerPrice price = file.price().orElseThrow();
        FirmGst gst = file.firmGst().orElseThrow();
        int divisor = price.gstDivisor();
        return List.of(
                text(job.reference()),
                text(job.owner().names()),
                TableCell.of(Value.day(file.countedOn())),
                text(job.stage().word()),
                text(SaleState.of(file).word()),
                text(job.site().address().state().map(State::name)),
                text(quarter(file.countedOn().orElse(LocalDate.MAX))),
                text(job.owner().gstRegistered().map(yes -> yes ? "yes" : "no")),
                money(price.fullPrice()),
                isKnown(file) ? money(price.assigned()) : TableCell.BLANK,
                payable(file),
                ours("ROUND([full]/" + divisor + ",2)", price.gst()),
                derivedMoney("[full]-[gst]", price.fullPrice().minus(price.gst())),
                money(gst.beyond()),
                money(gst.onBeyond()),
                money(gst.byPayments()),
                money(gst.given()),
                money(gst.ownerGst()),
                money(gst.credit()));
    }

    /** The register's own amount where it is not known what the claims take off the price. */
    private static TableCell payable(CaseFile file) {
        return isKnown(file)
                ? derivedMoney("[full]-[assigned]", file.price().orElseThrow().payable())
                : file.ownerPays().map(TableCell::money).orElse(TableCell.BLANK);
    }

    private static boolean isKnown(CaseFile file) {
        return file.ownerPays().equals(file.price().map(OwnerPrice::payable));
    }

    /** The quarter that begins on a day, as shown; the last of days stands for an unknown one. */
    static String quarter(LocalDate first) {
        return first.equals(LocalDate.MAX) ? "day not known" : Days.quarter(first);
    }

    /** GST of the firm; nothing to work out where it is not registered. */
    private TableCell ours(String formula, Money amount) {
        return registered ? derivedMoney(formula, amount) : money(amount);
    }
}
