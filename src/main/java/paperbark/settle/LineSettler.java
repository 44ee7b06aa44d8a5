package paperbark.settle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.ledger.AdviceBook;
import paperbark.ledger.AdviceLine;
import paperbark.ledger.AdviceStatus;
import paperbark.ledger.ClaimState;
import paperbark.settle.SettledLine.Ending;
import paperbark.value.Days;
import paperbark.value.Money;

/** Takes the lines of an advice into the ledger one by one. */
final class LineSettler {
    /** A payment told with another day than a person entered is the same up to so many days. */
    private static final int NEAR_DAYS = 14;

    private final AdviceBook book;
    private final ClaimFinder claimFinder;
    private final LocalDate today;
    private final List<Finding> findings = new ArrayList<>();
    private final Map<String, Integer> alike = new HashMap<>();

    LineSettler(AdviceBook book, LocalDate today) {
        this.book = book;
        this.today = today;
        this.claimFinder = new ClaimFinder(book);
    }

    List<Finding> findings() {
        return findings;
    }

    SettledLine settle(RemittanceLine said) {
        AdviceLine line = said.line(alike.merge(said.key(0), 1, Integer::sum));
        OptionalLong known = book.known(line.key());
        if (known.isPresent()) {
            List<ClaimState> before = book.matchedTo(known.getAsLong());
            if (!before.isEmpty()) {
                return ended(said, Ending.SEEN, Optional.of(before.get(0)), "");
            }
        }
        if (said.day().isAfter(today)) {
            toCome(said);
            return ended(said, Ending.TO_COME, Optional.empty(), "");
        }
        ClaimFinder.Found found = claimFinder.find(said);
        if (found.claim().isEmpty()) {
            unknown(said, found);
            if (known.isEmpty()) {
                book.enter(line);
            }
            return ended(said, Ending.UNKNOWN, Optional.empty(), found.why());
        }
        ClaimState claim = found.claim().get();
        Money firms = counted(said, claim);
        if (isPaid(said) && book.byHand().saidNear(claim, said.amount(), firms, said.day(), 0)) {
            return ended(said, Ending.SEEN, found.claim(), found.how());
        }
        if (isPaid(said)
                && book.byHand().saidNear(claim, said.amount(), firms, said.day(), NEAR_DAYS)) {
            byHand(said, claim);
            return ended(said, Ending.DUPLICATE, found.claim(), found.how());
        }
        if (isSecond(said, claim)) {
            second(said, claim);
            return ended(said, Ending.DUPLICATE, found.claim(), found.how());
        }
        return matched(said, line, known, found);
    }

    private SettledLine matched(
            RemittanceLine said, AdviceLine line, OptionalLong known, ClaimFinder.Found found) {
        ClaimState claim = found.claim().orElseThrow();
        long number = known.orElseGet(() -> book.unmatched(line).orElseGet(() -> book.enter(line)));
        Money firms = counted(said, claim);
        ClaimState after =
                book.match(
                        number,
                        line,
                        claim,
                        said.what(),
                        firms,
                        found.how(),
                        said.reason(),
                        said.buyerReference().or(said::claim).orElse(""));
        return new SettledLine(
                said.row(),
                said.day(),
                said.amount(),
                Optional.of(firms),
                ending(said, firms, after),
                Optional.of(after),
                found.how(),
                said.reason());
    }

    /**
     * What of the line is the firm's: an advice may tell of what the owner was paid, alone or
     * together with the firm's part. No more can be taken back than has come.
     */
    private static Money counted(RemittanceLine said, ClaimState claim) {
        if (said.what() != AdviceStatus.PAID) {
            return Money.ZERO;
        }
        boolean back = said.amount().isNegative();
        Money amount = back ? Money.ZERO.minus(said.amount()) : said.amount();
        Money firms = firms(amount, claim);
        if (!back) {
            return firms;
        }
        Money come = claim.received().isNegative() ? Money.ZERO : claim.received();
        return Money.ZERO.minus(firms.compareTo(come) > 0 ? come : firms);
    }

    /** What of an amount paid for a claim is the firm's. */
    static Money firms(Money amount, ClaimState claim) {
        if (claim.toOwner().isZero() || amount.equals(claim.expected())) {
            return amount;
        }
        if (amount.equals(claim.toOwner())) {
            return Money.ZERO;
        }
        boolean whole = amount.equals(claim.toOwner().plus(claim.expected()));
        return whole ? claim.expected() : amount;
    }

    private Ending ending(RemittanceLine said, Money firms, ClaimState after) {
        if (said.what() == AdviceStatus.LODGED) {
            return Ending.LODGED;
        }
        if (said.what() == AdviceStatus.FAILED) {
            failed(said, after);
            return Ending.FAILED;
        }
        if (said.amount().isNegative()) {
            reversed(said, firms, after);
            return Ending.REVERSED;
        }
        if (firms.isZero()) {
            return Ending.OWNER_PAID;
        }
        int more = after.received().compareTo(after.expected());
        if (more != 0) {
            differs(said, after);
        }
        return more == 0 ? Ending.MATCHED : more < 0 ? Ending.SHORT : Ending.OVER;
    }

    /** The whole amount again for a claim that is paid is most likely one payment told twice. */
    private static boolean isSecond(RemittanceLine said, ClaimState claim) {
        return isPaid(said)
                && !claim.received().isZero()
                && claim.received().compareTo(claim.expected()) >= 0
                && counted(said, claim).equals(claim.expected());
    }

    private static boolean isPaid(RemittanceLine said) {
        return said.what() == AdviceStatus.PAID;
    }

    /** Banks and buyers name the day of one payment differently. */
    private void byHand(RemittanceLine said, ClaimState claim) {
        Money firms = counted(said, claim);
        tell(
                FindingCode.PAYMENT_TWICE,
                said,
                AdviceField.AMOUNT,
                (firms.equals(said.amount())
                                ? "A payment of this amount for "
                                : "The firm's part of this payment, " + firms + ", for ")
                        + claim.reference()
                        + " was entered by hand, on "
                        + Days.show(book.byHand().paid(claim, said.amount(), firms).get(0))
                        + "; it is taken for this one.",
                "Compare with the bank statement; if the money came twice, enter the second payment by"
                        + " hand too.");
    }

    private void unknown(RemittanceLine said, ClaimFinder.Found found) {
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

    private void second(RemittanceLine said, ClaimState claim) {
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

    private void failed(RemittanceLine said, ClaimState after) {
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

    private void reversed(RemittanceLine said, Money firms, ClaimState after) {
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
    private void toCome(RemittanceLine said) {
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

    private void differs(RemittanceLine said, ClaimState after) {
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
                        ? "Ask the buyer for the rest, unless a further part is to come."
                        : "Ask the buyer what it is for; GST may be due on it.");
    }

    private void tell(
            FindingCode code, RemittanceLine said, AdviceField field, String fact, String remedy) {
        String seen = field == AdviceField.AMOUNT ? said.amount().toString() : said.reference();
        findings.add(Finding.of(code, said.place(field), fact, remedy).seeing(seen));
    }

    private static SettledLine ended(
            RemittanceLine said, Ending ending, Optional<ClaimState> claim, String how) {
        return new SettledLine(
                said.row(),
                said.day(),
                said.amount(),
                Optional.empty(),
                ending,
                claim,
                how,
                said.reason());
    }
}
