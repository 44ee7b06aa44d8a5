package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.flag;
import static paperbark.output.table.TableCell.money;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableCell.whole;
import static paperbark.output.table.TableColumn.flag;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.List;
import java.util.Optional;
import paperbark.firm.Firm;
import paperbark.firm.GstRounding;
import paperbark.job.BenefitForm;
import paperbark.job.Job;
import paperbark.offer.Quote;
import paperbark.offer.Split;
import paperbark.output.BatchView;
import paperbark.value.Money;

/** One row an offer that a claim can take, the best of each claim first. */
public final class EveryOfferTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    whole("line", "Line", 6),
                    text("job", "Job", 10),
                    text("scheme", "Scheme", 10),
                    whole("place", "Place", 8),
                    text("buyer", "Buyer", 20),
                    whole("certificates", "Certificates", 14),
                    new TableColumn("price", "Price each", Kind.PRICE, 9),
                    dollars("fee-claim", "Fee a claim"),
                    new TableColumn("fee-each", "Fee each", Kind.PRICE, 8),
                    dollars("gross", "Gross"),
                    dollars("fee", "Fees"),
                    dollars("pays", "Buyer pays"),
                    dollars("gst", "GST on top"),
                    dollars("to-owner", "To the owner"),
                    dollars("of-top", "Of that from GST on top"),
                    dollars("to-firm", "To the firm"),
                    dollars("discount", "Discount given"),
                    dollars("full", "Full price"),
                    dollars("firm-gst", "GST on the rest"),
                    whole("days", "Days to money", 9),
                    dollars("waiting", "Cost of waiting"),
                    dollars("worth", "Worth to the firm"),
                    text("mark", "Choice", 10),
                    flag("first", "Buyer's best", 9),
                    whole("taken-line", "Line taken", 8),
                    dollars("as-taken", "Worth as taken"));

    private final Firm firm;

    private EveryOfferTable(Firm firm) {
        this.firm = firm;
    }

    /** The table of the batch. */
    static Table of(BatchView view, List<ComparedClaim> claims) {
        EveryOfferTable offers = new EveryOfferTable(view.firm());
        return new Table(
                "Offers",
                "Every offer",
                List.of(
                        "Worth to the firm: what the buyer pays, less the owner's part, less GST on what"
                                + " the firm gets beyond the discount it gave, less the cost of waiting"
                                + " at "
                                + view.firm().money().costOfMoney().toPlainString()
                                + " % a year. Offers that a claim cannot take are not listed. GST on"
                                + " the rest: "
                                + GstTable.RULE,
                        ClaimFacts.ON_TOP),
                COLUMNS,
                MadeRows.of(claims.stream().flatMap(c -> c.lines().stream()).toList(), offers::row),
                List.of());
    }

    private List<TableCell> row(ComparedClaim.Line line) {
        Quote quote = line.quote();
        Split split = quote.split();
        Job job = line.claim().file().job();
        boolean promised = job.claim(quote.offer().scheme()).benefit().isPresent();
        boolean paysOwner = form(job, BenefitForm.PAYMENT);
        boolean known = promised && (paysOwner || form(job, BenefitForm.DISCOUNT));
        Optional<Money> full = job.payment().fullPrice();
        Money discount = paysOwner ? Money.ZERO : split.benefit();
        return List.of(
                whole(line.number()),
                text(job.reference()),
                text(quote.offer().scheme().word()),
                whole(line.place() + 1L),
                text(quote.offer().buyer()),
                whole(quote.certificates()),
                TableCell.of(new Value.Price(quote.offer().pricePerCertificate().amount())),
                money(quote.offer().feePerClaim()),
                TableCell.of(new Value.Price(quote.offer().terms().feePerCertificate().amount())),
                derivedMoney("ROUND([certificates]*[price],2)", quote.gross()),
                derivedMoney("[fee-claim]+ROUND([certificates]*[fee-each],2)", quote.fee()),
                derivedMoney("[gross]-[fee]", quote.paid()),
                quote.gst().isZero()
                        ? money(quote.gst())
                        : derivedMoney(
                                "ROUND([gross]/" + (quote.gstDivisor() - 1) + ",2)", quote.gst()),
                paysOwner && !promised
                        ? derivedMoney("[pays]+[gst]", split.toOwner())
                        : money(split.toOwner()),
                money(split.ofTop()),
                derivedMoney("[pays]-[to-owner]+[of-top]", split.toFirm()),
                known ? money(discount) : TableCell.BLANK,
                full.map(TableCell::money).orElse(TableCell.BLANK),
                firmGst(quote, known, discount, full.isPresent()),
                whole(quote.days()),
                waiting(quote),
                derivedMoney("[to-firm]-[firm-gst]-[waiting]", quote.worth()),
                text(line.mark()),
                flag(line.isBestOfItsBuyer()),
                takenLine(line),
                asTaken(line));
    }

    /** Narrow, since there are many. */
    private static TableColumn dollars(String key, String heading) {
        return new TableColumn(key, heading, Kind.MONEY, 10);
    }

    private static boolean form(Job job, BenefitForm form) {
        return job.payment().form().map(f -> f == form).orElse(false);
    }

    private TableCell firmGst(Quote quote, boolean known, Money discount, boolean priced) {
        Split split = quote.split();
        Money gst = split.firmGst();
        boolean taxed = split.beyond().equals(split.toFirm().minus(discount));
        if (!known || !taxed || !firm.gstRegistered() || quote.gstDivisor() == 0) {
            return money(gst);
        }
        String beyond = "MAX(0,[to-firm]-[discount])";
        boolean together = priced && firm.money().gstRounding() == GstRounding.TOTAL_INVOICE;
        String formula =
                together ? "ROUND(([full]+%s)/%d,2)-ROUND([full]/%2$d,2)" : "ROUND(%s/%d,2)";
        return derivedMoney(formula.formatted(beyond, quote.gstDivisor()), gst);
    }

    private TableCell waiting(Quote quote) {
        String rate = firm.money().costOfMoney().toPlainString();
        return firm.money().costOfMoney().signum() == 0
                ? money(quote.waiting())
                : derivedMoney(
                        "ROUND(MAX(0,[to-firm])*" + rate + "*MAX(0,[days])/36500,2)",
                        quote.waiting());
    }

    private static TableCell takenLine(ComparedClaim.Line line) {
        return line.claim()
                .comparison()
                .chosen()
                .map(c -> whole(line.claim().lineOf(c)))
                .orElse(TableCell.BLANK);
    }

    private static TableCell asTaken(ComparedClaim.Line line) {
        return line.claim()
                .comparison()
                .chosen()
                .map(c -> derivedMoney(worthOf("taken-line"), c.worth()))
                .orElse(TableCell.BLANK);
    }

    /** The worth of the offer whose line a cell of the row names; holds however rows are sorted. */
    static String worthOf(String lineColumn) {
        return "INDEX([Offers:worth],MATCH([" + lineColumn + "],[Offers:line],0))";
    }
}
