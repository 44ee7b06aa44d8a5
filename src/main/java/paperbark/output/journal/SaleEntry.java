package paperbark.output.journal;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.firm.AccountRole;
import paperbark.job.BenefitForm;
import paperbark.offer.Benefit;
import paperbark.offer.Expected;
import paperbark.offer.OwnerPrice;
import paperbark.offer.Split;
import paperbark.offer.Standing;
import paperbark.output.CaseFile;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** Books the sale of one installed job, and what its claims that count bring the firm. */
final class SaleEntry {
    private final CaseFile file;
    private final List<Posting> postings = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();

    private SaleEntry(CaseFile file) {
        this.file = file;
    }

    /**
     * The entry.
     *
     * @param earlier what the journal takes back before it
     */
    static Entry of(CaseFile file, LocalDate day, List<TakenBack> earlier) {
        SaleEntry sale = new SaleEntry(file);
        sale.price(file.price().orElseThrow());
        file.benefits().stream()
                .filter(benefit -> !file.isOpen(benefit.scheme()))
                .forEach(sale::claim);
        sale.remarks();
        if (earlier.isEmpty()) {
            sale.correction();
        }
        earlier.forEach(sale::notHere);
        return new Entry(day, file.job().reference(), sale.postings, sale.remarks);
    }

    /** How the remarks of a claim's lines begin. */
    static String what(SchemeName scheme) {
        return scheme.word() + "s";
    }

    private void price(OwnerPrice price) {
        Money open =
                file.benefits().stream()
                        .filter(benefit -> file.isOpen(benefit.scheme()))
                        .flatMap(benefit -> benefit.value().stream())
                        .reduce(Money.ZERO, Money::plus);
        debit(AccountRole.OWNERS, price.payable().minus(open), "");
        debit(AccountRole.OWNERS, open, "not known who pays it");
        credit(AccountRole.SALES, price.fullPrice().minus(price.gst()), "");
        credit(AccountRole.GST_ON_SALES, price.gst(), "");
    }

    private void claim(Benefit benefit) {
        Optional<BenefitForm> form = file.job().payment().form();
        Money value = benefit.value().orElse(Money.ZERO);
        Money discount = form.equals(Optional.of(BenefitForm.DISCOUNT)) ? value : Money.ZERO;
        String what = what(benefit.scheme());
        if (benefit.ours()) {
            taken(benefit, value, discount, what);
        } else {
            sold(benefit, discount, what);
        }
    }

    /** The firm itself takes the certificates, for a discount or for money. */
    private void taken(Benefit benefit, Money value, Money discount, String what) {
        Money gst =
                file.firm().gstRegistered() ? benefit.ownerGst().orElse(Money.ZERO) : Money.ZERO;
        if (!gst.isZero()) {
            remarks.add("GST on purchases needs the owner's tax invoice for the " + what + ".");
        }
        debit(AccountRole.CERTIFICATES, value.minus(gst), what);
        debit(AccountRole.GST_ON_PURCHASES, gst, what);
        credit(AccountRole.OWNERS, value.minus(discount), what + ", to be paid to the owner");
    }

    /** A buyer takes them; what it pays the firm makes up for the discount. */
    private void sold(Benefit benefit, Money discount, String what) {
        Optional<Expected> expected = file.expected(benefit.scheme());
        Money toFirm = expected.map(e -> e.split().toFirm()).orElse(discount);
        Money gst = expected.map(Expected::split).map(Split::firmGst).orElse(Money.ZERO);
        String whose =
                what
                        + benefit.buyer().map(b -> ", " + b).orElse(", no buyer yet")
                        + (expected.isPresent() ? "" : ", no offer: the discount itself");
        Money beyond = toFirm.minus(discount);
        if (toFirm.isNegative()) {
            credit(
                    AccountRole.OWNERS,
                    Money.ZERO.minus(toFirm),
                    what + ", to be paid to the owner");
        } else {
            debit(AccountRole.BUYERS, toFirm, whose);
        }
        if (beyond.isNegative()) {
            debit(AccountRole.SHORT, Money.ZERO.minus(beyond), what);
        } else {
            credit(AccountRole.BEYOND, beyond.minus(gst), what);
            credit(AccountRole.GST_LATER, gst, what);
        }
        expected.map(Expected::topLeft)
                .filter(left -> !left.isZero())
                .ifPresent(
                        left ->
                                remarks.add(
                                        left
                                                + " of GST on top for the "
                                                + what
                                                + " is booked to nobody: ask your tax adviser."));
    }

    private void remarks() {
        file.standings()
                .forEach(
                        (scheme, standing) -> {
                            if (standing == Standing.HELD) {
                                remarks.add(
                                        "The claim for "
                                                + scheme.word()
                                                + "s is held and not booked; once it is mended, book its discount too.");
                            } else if (file.isOpen(scheme)) {
                                remarks.add(
                                        "Nobody said what the "
                                                + scheme.word()
                                                + "s take off the price, so the claim is not booked; once it is"
                                                + " known, book what the buyer owes or pays.");
                            }
                        });
    }

    private void correction() {
        file.job()
                .corrects()
                .ifPresent(
                        what ->
                                remarks.add(
                                        "This job corrects an earlier paper: take back the earlier entry first."));
    }

    private void notHere(TakenBack earlier) {
        if (earlier.entry().isEmpty()) {
            remarks.add(
                    "Batch "
                            + earlier.batch()
                            + ", which had the job, is not here: take back what its journal booked.");
        }
    }

    private void debit(AccountRole account, Money amount, String remark) {
        if (!amount.isZero()) {
            postings.add(new Posting(account, amount, remark));
        }
    }

    private void credit(AccountRole account, Money amount, String remark) {
        debit(account, Money.ZERO.minus(amount), remark);
    }
}
