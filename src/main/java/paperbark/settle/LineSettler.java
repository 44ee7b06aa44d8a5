package paperbark.settle;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import paperbark.batch.BuyerPayments.Payment;
import paperbark.finding.Finding;
import paperbark.ledger.AdviceBook;
import paperbark.ledger.AdviceLine;
import paperbark.ledger.AdviceStatus;
import paperbark.ledger.ClaimState;
import paperbark.settle.SettledLine.Ending;
import paperbark.value.Money;

/** Takes the lines of an advice into the ledger one by one. */
final class LineSettler {
    /** A payment told with another day than a person entered is the same up to so many days. */
    private static final int NEAR_DAYS = 14;

    private final AdviceBook book;
    private final ClaimFinder claimFinder;
    private final LocalDate today;
    private final Function<ClaimState, Optional<Payment>> sent;
    private final LineFindings findings;
    private final Map<String, Integer> alike = new HashMap<>();

    LineSettler(AdviceBook book, LocalDate today, Function<ClaimState, Optional<Payment>> sent) {
        this.book = book;
        this.sent = sent;
        this.today = today;
        this.findings = new LineFindings(today);
        this.claimFinder = new ClaimFinder(book);
    }

    List<Finding> findings() {
        return findings.all();
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
            findings.toCome(said);
            return ended(said, Ending.TO_COME, Optional.empty(), "");
        }
        ClaimFinder.Found found = claimFinder.find(said);
        if (found.claim().isEmpty()) {
            findings.unknown(said, found);
            if (known.isEmpty()) {
                book.enter(line);
            }
            return ended(said, Ending.UNKNOWN, Optional.empty(), found.why());
        }
        ClaimState claim = found.claim().get();
        Shares shares = Shares.of(said, claim, sent);
        Money firms = shares.firms();
        if (isPaid(said) && book.byHand().saidNear(claim, said.amount(), firms, said.day(), 0)) {
            return ended(said, Ending.SEEN, found.claim(), found.how());
        }
        if (isPaid(said)
                && book.byHand().saidNear(claim, said.amount(), firms, said.day(), NEAR_DAYS)) {
            LocalDate on = book.byHand().paid(claim, said.amount(), firms).get(0);
            findings.byHand(said, claim, firms, on);
            return ended(said, Ending.DUPLICATE, found.claim(), found.how());
        }
        if (isSecond(said, claim, firms)) {
            findings.second(said, claim);
            return ended(said, Ending.DUPLICATE, found.claim(), found.how());
        }
        return matched(said, line, known, found, shares);
    }

    private SettledLine matched(
            RemittanceLine said,
            AdviceLine line,
            OptionalLong known,
            ClaimFinder.Found found,
            Shares shares) {
        ClaimState claim = found.claim().orElseThrow();
        long number = known.orElseGet(() -> book.unmatched(line).orElseGet(() -> book.enter(line)));
        ClaimState after =
                book.match(
                        number,
                        line,
                        claim,
                        said.what(),
                        shares.firms(),
                        found.how(),
                        said.reason(),
                        said.buyerReference().or(said::claim).orElse(""));
        return new SettledLine(
                said.row(),
                said.day(),
                said.amount(),
                Optional.of(shares),
                ending(said, shares, after),
                Optional.of(after),
                found.how(),
                said.reason());
    }

    private Ending ending(RemittanceLine said, Shares shares, ClaimState after) {
        if (said.what() == AdviceStatus.LODGED) {
            return Ending.LODGED;
        }
        if (said.what() == AdviceStatus.FAILED) {
            findings.failed(said, after);
            return Ending.FAILED;
        }
        if (said.amount().isNegative()) {
            findings.reversed(said, shares.firms(), after);
            return Ending.REVERSED;
        }
        if (shares.firms().isZero()) {
            return Ending.OWNER_PAID;
        }
        int more = after.received().compareTo(after.expected());
        if (more != 0) {
            findings.differs(said, shares, after);
        }
        return more == 0 ? Ending.MATCHED : more < 0 ? Ending.SHORT : Ending.OVER;
    }

    /** The whole amount again for a claim that is paid is most likely one payment told twice. */
    private static boolean isSecond(RemittanceLine said, ClaimState claim, Money firms) {
        return isPaid(said)
                && !claim.received().isZero()
                && claim.received().compareTo(claim.expected()) >= 0
                && firms.equals(claim.expected());
    }

    private static boolean isPaid(RemittanceLine said) {
        return said.what() == AdviceStatus.PAID;
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
