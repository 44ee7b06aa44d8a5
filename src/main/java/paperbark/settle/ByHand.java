package paperbark.settle;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import paperbark.batch.AdviceFiles;
import paperbark.batch.BuyerPayments;
import paperbark.ledger.AdviceBook;
import paperbark.ledger.AdviceStatus;
import paperbark.ledger.ClaimState;
import paperbark.ledger.HandBook;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Lodging;
import paperbark.value.Days;
import paperbark.value.Money;

/**
 * Enters what no advice tells: that claims were lodged or paid, or that what was entered so was a
 * mistake. Each is an entry of the ledger; one that cannot be entered whole changes nothing.
 */
public final class ByHand {
    private final Ledger ledger;
    private final AdviceBook book;
    private final LocalDate today;
    private final List<String> refused = new ArrayList<>();
    private final List<String> before = new ArrayList<>();
    private final List<ClaimState> after = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();

    private ByHand(Ledger ledger, AdviceBook book, LocalDate today) {
        this.ledger = ledger;
        this.book = book;
        this.today = today;
    }

    /**
     * Where and when.
     *
     * @param ledger the ledger
     * @param payments what buyers send who pay GST on top
     * @param today day of the run
     * @param at moment of the run, for people only
     * @param version version of the program
     */
    public record Order(
            LedgerPlace ledger,
            BuyerPayments payments,
            LocalDate today,
            Instant at,
            String version) {}

    /**
     * A payment.
     *
     * @param claim its name, or the number of a job with one claim
     * @param amount more than nothing
     * @param on the day on which it came
     * @param more whether it may be more than is still to come
     * @param again whether the same amount may come for the same claim on the same day
     */
    public record Payment(String claim, Money amount, LocalDate on, boolean more, boolean again) {}

    /**
     * What came of it.
     *
     * @param refused why nothing was entered, in a sentence each; empty where it was
     * @param before what had been entered already, in a sentence each
     * @param claims the claims as they stand now, where something is new
     * @param remarks how it was understood and what is to be thought of, in a sentence each
     * @param entry name of the new entry
     */
    public record Result(
            List<String> refused,
            List<String> before,
            List<ClaimState> claims,
            List<String> remarks,
            Optional<String> entry) {

        /** Keeps the lists from being changed. */
        public Result {
            refused = List.copyOf(refused);
            before = List.copyOf(before);
            claims = List.copyOf(claims);
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * Enters that claims were lodged.
     *
     * @param names job numbers, which stand for all their claims, or names of claims
     * @param on the day of the lodgement
     * @throws IOException when the entry's file cannot be written; the next run does it
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted
     */
    public static Result lodged(List<String> names, LocalDate on, Order order) throws IOException {
        return enter(order, "lodged", (hand, said) -> hand.lodged(names, on, said));
    }

    /** Enters a payment; fails as {@link #lodged} does. */
    public static Result paid(Payment payment, Order order) throws IOException {
        return enter(order, "paid", (hand, said) -> hand.paid(payment, order.payments(), said));
    }

    /**
     * Unsays what an entry said by hand; fails as {@link #lodged} does.
     *
     * @param entry its name, as it was told when it was made
     */
    public static Result unsay(String entry, Order order) throws IOException {
        return enter(order, "unsay " + entry, (hand, said) -> hand.unsaid(entry, said));
    }

    private static Result enter(Order order, String what, BiConsumer<ByHand, HandBook> work)
            throws IOException {
        AdviceBook.Source source =
                new AdviceBook.Source(what, "", order.today(), order.at(), order.version());
        try (Ledger ledger = Ledger.open(order.ledger())) {
            ledger.verify();
            Result result =
                    ledger.settle(
                            source,
                            book -> {
                                ByHand hand = new ByHand(ledger, book, order.today());
                                work.accept(hand, book.byHand());
                                return new Result(
                                        hand.refused,
                                        hand.before,
                                        hand.after,
                                        hand.remarks,
                                        book.name());
                            });
            AdviceFiles.complete(ledger, AdviceFiles.beside(order.ledger()));
            return result;
        }
    }

    private void lodged(List<String> names, LocalDate on, HandBook said) {
        Map<Long, ClaimState> claims = new LinkedHashMap<>();
        for (String name : names) {
            List<ClaimState> standing = standing(name);
            standing.forEach(c -> dayFits(c, on));
            standing.forEach(c -> claims.put(c.id(), c));
        }
        if (!refused.isEmpty()) {
            return;
        }
        List<ClaimState> named = List.copyOf(claims.values());
        Lodging.of(ledger, named, on)
                .ifPresent(l -> l.awaited().forEach(a -> remarks.add(notReady(a))));
        // The day may be that on which it was entered, for want of another.
        Lodging.tooLate(named, on).forEach(c -> remarks.add(tooLate(c, on)));
        for (ClaimState claim : claims.values()) {
            if (claim.isWithBuyer()) {
                before.add(claim.reference() + " is known to be lodged already.");
            } else {
                after.add(said.say(claim, AdviceStatus.LODGED, on, Money.ZERO, Money.ZERO));
            }
        }
    }

    private static String notReady(Lodging.Assigned awaited) {
        return lookAt(
                awaited.claim(), "its " + awaited.name() + " is " + awaited.paper().awaited());
    }

    private static String tooLate(ClaimState claim, LocalDate on) {
        String last = claim.lodgeBy().map(Days::show).orElseThrow();
        return lookAt(claim, "its last day, " + last + ", was over on " + Days.show(on));
    }

    private static String lookAt(ClaimState claim, String why) {
        return "Look at "
                + claim.reference()
                + ": "
                + why
                + ". The claim is entered as lodged all the same.";
    }

    private void paid(Payment payment, BuyerPayments payments, HandBook said) {
        List<ClaimState> standing = standing(payment.claim());
        if (standing.size() > 1) {
            refused.add(
                    "Job "
                            + payment.claim()
                            + " has the claims "
                            + String.join(
                                    " and ", standing.stream().map(ClaimState::reference).toList())
                            + ". Name the one that was paid.");
        }
        standing.forEach(c -> dayFits(c, payment.on()));
        if (!refused.isEmpty()) {
            return;
        }
        ClaimState claim = standing.get(0);
        Shares shares = Shares.of(payment.amount(), claim, payments::of);
        Money firms = shares.firms();
        if (!payment.again()
                && said.toldPaid(claim, payment.amount(), firms).contains(payment.on())) {
            before.add(
                    payment.amount()
                            + " on "
                            + Days.show(payment.on())
                            + " for "
                            + claim.reference()
                            + " is in the ledger already. If the same came twice on that day, add --again.");
            return;
        }
        Money open = claim.expected().minus(claim.received());
        if (!payment.more() && firms.compareTo(open) > 0) {
            refused.add(tooMuch(payment, claim, open));
            return;
        }
        after.add(said.say(claim, AdviceStatus.PAID, payment.on(), payment.amount(), firms));
        shares.understood(payment.amount(), claim).ifPresent(remarks::add);
    }

    private static String tooMuch(Payment payment, ClaimState claim, Money open) {
        String still = open.compareTo(Money.ZERO) > 0 ? "Only " + open : "Nothing";
        return still
                + " is to come for "
                + claim.reference()
                + ", and "
                + payment.amount()
                + " is more. Look at claim and amount again; if the buyer did pay so much, add --more.";
    }

    private void unsaid(String entry, HandBook said) {
        List<HandBook.Said> all = said.of(entry);
        if (all.isEmpty()) {
            refused.add(
                    entry
                            + " is no entry that lodged or paid made. Its name is told when it is made, and is"
                            + " that of a file in advices.");
            return;
        }
        for (HandBook.Said one : all) {
            if (one.unsaid()) {
                before.add("What " + entry + " said was unsaid before.");
            } else {
                after.add(said.unsay(one, today));
            }
        }
    }

    private void dayFits(ClaimState claim, LocalDate on) {
        if (on.isAfter(today)) {
            refused.add(Days.show(on) + " has not come yet. Look at the day again.");
        } else if (on.isBefore(claim.installedOn())) {
            refused.add(
                    claim.reference()
                            + " is for an installation of "
                            + Days.show(claim.installedOn())
                            + ", after "
                            + Days.show(on)
                            + ". Look at the day again.");
        }
    }

    /** The claims of that name that stand; where there is none the reason is noted. */
    private List<ClaimState> standing(String name) {
        NamedClaims named = NamedClaims.of(name, book);
        named.whyNone().ifPresent(refused::add);
        return named.standing();
    }
}
