package paperbark.settle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.ledger.ClaimState;
import paperbark.value.Days;
import paperbark.value.Money;

/** What people are told of the lines of an advice, in the order of the lines. */
final class LineFindings {
    private final LocalDate today;
    private final List<Finding> all = new ArrayList<>();

    LineFindings(LocalDate today) {
        this.today = today;
    }

    /** All that was noted so far. */
    List<Finding> all() {
        return all;
    }

    /**
     * A person entered the payment before, on a day near by: banks and buyers name the day of one
     * payment differently.
     *
     * @param firms what of it is the firm's
     * @param on the day that the person named
     */
    void byHand(RemittanceLine said, ClaimState claim, Money firms, LocalDate on) {
        tell(
                FindingCode.PAYMENT_TWICE,
                said,
                AdviceField.AMOUNT,
                (firms.equals(said.amount())
                                ? "A payment of this amount for "
                                : "The firm's part of this payment, " + firms + ", for ")
                        + claim.reference()
                        + " was entered by hand, on "
                        + Days.show(on)
                        + "; it is taken for this one.",
                "Compare with the bank statement; if the money came twice, enter the second payment by"
                        + " hand too.");
    }

    /** No claim fits the line, or several do. */
    void unknown(RemittanceLine said, ClaimFinder.Found found) {
        String candidates =
                found.candidates().stream()
                        .map(
                                c ->
                                        c.reference()
                                                + " ("
                                                + c.outstanding()
                                                + " to come"
                                                + c.due()
                                                        .map(d -> ", due " + Days.show(d))
                                                        .orElse("")
                                                + ")")
                        .collect(Collectors.joining(", "));
        tell(
                FindingCode.PAYMENT_UNMATCHED,
                said,
                AdviceField.CLAIM,
                "The line is matched to no claim: "
                        + found.why()
                        + (candidates.isEmpty() ? "." : "; it may be " + candidates + "."),
                "Write the claim reference into the line and settle the advice again.");
    }

    /** The claim was paid before, and the same comes again. */
    void second(RemittanceLine said, ClaimState claim) {
        tell(
                FindingCode.PAYMENT_TWICE,
                said,
                AdviceField.AMOUNT,
                claim.reference()
                        + " was paid in full before"
                        + claim.paidOn().map(d -> ", on " + Days.show(d)).orElse("")
                        + ", and here comes the same amount again.",
                "Compare with the bank statement; ask the buyer if the money came twice.");
    }

    /** The claim came to nothing, so that it has to be lodged anew where it still can be. */
    void failed(RemittanceLine said, ClaimState after) {
        String paid =
                after.received().isZero()
                        ? ""
                        : " " + after.received() + " was paid for it and may be asked back.";
        tell(
                FindingCode.CLAIM_FAILED,
                said,
                AdviceField.STATUS,
                after.reference()
                        + " failed"
                        + (said.reason().isEmpty() ? "." : ": " + said.reason() + ".")
                        + paid,
                after.isTooLate(today)
                        ? "Ask the buyer whether it was lodged again by its last day, "
                                + after.lodgeBy().map(Days::show).orElseThrow()
                                + "; now it can be no longer."
                        : "Mend what the reason names and let the buyer lodge it again"
                                + after.lodgeBy().map(d -> " by " + Days.show(d)).orElse("")
                                + ".");
    }

    /**
     * A payment was taken back.
     *
     * @param firms what of it had come to the firm, as less than nothing
     */
    void reversed(RemittanceLine said, Money firms, ClaimState after) {
        Money back = Money.ZERO.minus(said.amount());
        Money taken = Money.ZERO.minus(firms);
        tell(
                FindingCode.PAYMENT_REVERSED,
                said,
                AdviceField.AMOUNT,
                back
                        + " paid for "
                        + after.reference()
                        + " was taken back"
                        + (taken.equals(back)
                                ? "; "
                                : ", of which " + taken + " had come to the firm; ")
                        + after.outstanding()
                        + " is to come.",
                "Ask the buyer for the reason.");
    }

    /** What is to come counts nowhere yet, so that every paper and page says the same of it. */
    void toCome(RemittanceLine said) {
        tell(
                FindingCode.PAYMENT_IN_FUTURE,
                said,
                AdviceField.PAID_DATE,
                "The line is of "
                        + Days.show(said.day())
                        + ", which has not come yet; it was not taken in.",
                "Settle the advice again on that day or later, when the money is there; if the day is wrong,"
                        + " correct it first.");
    }

    /** More or less has come than was expected. */
    void differs(RemittanceLine said, Shares shares, ClaimState after) {
        Money difference = after.received().minus(after.expected());
        tell(
                difference.isNegative() ? FindingCode.PAYMENT_SHORT : FindingCode.PAYMENT_OVER,
                said,
                AdviceField.AMOUNT,
                after.reference()
                        + ": "
                        + after.expected()
                        + " was expected and "
                        + after.received()
                        + " has come, "
                        + (difference.isNegative()
                                ? Money.ZERO.minus(difference) + " less."
                                : difference + " more."),
                difference.isNegative()
                        ? shares.as() == Shares.As.WITHOUT_TOP
                                ? "Let the owner give the buyer their tax invoice; the GST on top is paid"
                                        + " against it."
                                : "Ask the buyer for the rest, unless a further part is to come."
                        : "Ask the buyer what it is for; GST may be due on it.");
    }

    private void tell(
            FindingCode code, RemittanceLine said, AdviceField field, String fact, String remedy) {
        String seen = field == AdviceField.AMOUNT ? said.amount().toString() : said.reference();
        all.add(Finding.of(code, said.place(field), fact, remedy).seeing(seen));
    }
}
