package paperbark.settle;

import java.util.Optional;
import java.util.function.Function;
import paperbark.batch.BuyerPayments.Payment;
import paperbark.ledger.AdviceStatus;
import paperbark.ledger.ClaimState;
import paperbark.value.Money;

/**
 * Whose a payment is, where a buyer may pay the owner too, alone or with the firm. All are below
 * nothing where it is taken back.
 *
 * @param firms the firm's part
 * @param nobodys what of the GST on top is neither's; the rest is the owner's
 * @param as what the payment is understood as
 */
record Shares(Money firms, Money nobodys, As as) {

    /** What a payment is understood as. */
    enum As {
        /** Money of the firm; the owner's is not in it. */
        FIRMS,
        /** What the owner is paid. */
        OWNERS,
        /** All that the buyer pays, with the GST on top where there is any. */
        WHOLE,
        /** All but the GST on top, which comes against the owner's invoice. */
        WITHOUT_TOP,
        /** The GST on top that was not paid with the rest. */
        TOP
    }

    /**
     * Whose an amount paid for a claim is.
     *
     * @param sent what the claim's buyer sends where GST comes on top; asked only where it counts
     */
    static Shares of(Money amount, ClaimState claim, Function<ClaimState, Optional<Payment>> sent) {
        Money owners = claim.toOwner();
        Money both = owners.plus(claim.expected());
        if (owners.isZero() || amount.equals(claim.expected())) {
            return new Shares(amount, Money.ZERO, As.FIRMS);
        }
        if (amount.equals(owners)) {
            return new Shares(Money.ZERO, Money.ZERO, As.OWNERS);
        }
        if (amount.equals(both)) {
            return new Shares(claim.expected(), Money.ZERO, As.WHOLE);
        }
        return sent.apply(claim)
                .flatMap(payment -> withTop(amount, claim, payment))
                .orElse(new Shares(amount, Money.ZERO, As.FIRMS));
    }

    private static Optional<Shares> withTop(Money amount, ClaimState claim, Payment sent) {
        Money whole = sent.net().plus(sent.onTop());
        Money before = sent.net().minus(claim.toOwner()).orNothing();
        Money nobodys = whole.minus(claim.toOwner()).minus(claim.expected()).orNothing();
        if (amount.equals(whole)) {
            return Optional.of(new Shares(claim.expected(), nobodys, As.WHOLE));
        }
        if (amount.equals(sent.net())) {
            return Optional.of(new Shares(before, Money.ZERO, As.WITHOUT_TOP));
        }
        return amount.equals(sent.onTop())
                ? Optional.of(new Shares(claim.expected().minus(before), nobodys, As.TOP))
                : Optional.empty();
    }

    /**
     * Whose the money of a line is; nobody's of a notice, and less than nothing where a payment is
     * taken back. No more of the firm's can be taken back than has come.
     */
    static Shares of(
            RemittanceLine said, ClaimState claim, Function<ClaimState, Optional<Payment>> sent) {
        if (said.what() != AdviceStatus.PAID) {
            return new Shares(Money.ZERO, Money.ZERO, As.FIRMS);
        }
        if (!said.amount().isNegative()) {
            return of(said.amount(), claim, sent);
        }
        Shares paid = of(Money.ZERO.minus(said.amount()), claim, sent);
        Money come = claim.received().orNothing();
        Money back = paid.firms().compareTo(come) > 0 ? come : paid.firms();
        return new Shares(Money.ZERO.minus(back), Money.ZERO.minus(paid.nobodys()), paid.as());
    }

    /** Where the owner is paid too, what of the payment was taken for whose, in a sentence. */
    Optional<String> understood(Money amount, ClaimState claim) {
        if (claim.toOwner().isZero()) {
            return Optional.empty();
        }
        return Optional.of(amount + " is understood as " + whose(amount, claim) + ".");
    }

    private String whose(Money amount, ClaimState claim) {
        return switch (as) {
            case OWNERS -> "what the owner is paid; nothing of it is the firm's";
            case FIRMS ->
                    "money of the firm"
                            + (amount.equals(claim.expected()) ? ", its part of the payment" : "")
                            + "; the owner's "
                            + claim.toOwner()
                            + " is not in it";
            case WHOLE -> "the whole payment: " + parts(amount);
            case WITHOUT_TOP -> "the whole payment without GST on top: " + parts(amount);
            case TOP -> "the GST on top: " + parts(amount);
        };
    }

    private String parts(Money amount) {
        Money owners = amount.minus(firms).minus(nobodys);
        return firms
                + " is the firm's"
                + (owners.isZero() ? "" : ", " + owners + " the owner's")
                + (nobodys.isZero() ? "" : ", " + nobodys + " nobody's yet");
    }
}
