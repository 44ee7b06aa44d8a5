package paperbark.settle;

import paperbark.ledger.AdviceStatus;
import paperbark.ledger.ClaimState;
import paperbark.value.Money;

/** What of a payment is the firm's, where a buyer may pay the owner too, alone or with it. */
final class FirmsPart {
    private FirmsPart() {}

    /** What of an amount paid for a claim is the firm's. */
    static Money of(Money amount, ClaimState claim) {
        if (claim.toOwner().isZero() || amount.equals(claim.expected())) {
            return amount;
        }
        if (amount.equals(claim.toOwner())) {
            return Money.ZERO;
        }
        boolean whole = amount.equals(claim.toOwner().plus(claim.expected()));
        return whole ? claim.expected() : amount;
    }

    /**
     * What of a line is the firm's; nothing of a notice, and less than nothing where a payment is
     * taken back. No more can be taken back than has come.
     */
    static Money of(RemittanceLine said, ClaimState claim) {
        if (said.what() != AdviceStatus.PAID) {
            return Money.ZERO;
        }
        boolean back = said.amount().isNegative();
        Money amount = back ? Money.ZERO.minus(said.amount()) : said.amount();
        Money firms = of(amount, claim);
        if (!back) {
            return firms;
        }
        Money come = claim.received().isNegative() ? Money.ZERO : claim.received();
        return Money.ZERO.minus(firms.compareTo(come) > 0 ? come : firms);
    }
}
