package paperbark.settle;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Lodging;
import paperbark.value.DebtAge;
import paperbark.value.Money;

/**
 * What is still to come, by how long it is overdue, and which claims must be lodged soon.
 *
 * @param asOf the day
 * @param open claims with money still to come, longest overdue first
 * @param failed claims that failed and bring nothing until they are lodged again, the earliest
 *     closing date first
 * @param closing other claims not lodged whose closing date is near, earliest first
 * @param tooLate claims that are not lodged or failed, and can be lodged no longer, earliest
 *     closing date first
 * @param paidBefore claims that stand no longer and were paid: their money may be asked back
 * @param awaited why the claims of these two cannot be lodged: how far their assignment has come,
 *     by the number of the claim; those that are ready to lodge are left out
 */
public record Owing(
        LocalDate asOf,
        List<Line> open,
        List<ClaimState> failed,
        List<ClaimState> closing,
        List<ClaimState> tooLate,
        List<ClaimState> paidBefore,
        Map<Long, String> awaited) {
    /** A claim that is not lodged is told when its closing date is fewer than so many days off. */
    public static final int CLOSING_DAYS = 60;

    /** Keeps the lists from being changed. */
    public Owing {
        open = List.copyOf(open);
        failed = List.copyOf(failed);
        closing = List.copyOf(closing);
        tooLate = List.copyOf(tooLate);
        paidBefore = List.copyOf(paidBefore);
        awaited = Map.copyOf(awaited);
    }

    /**
     * Money still to come for a claim.
     *
     * @param claim the claim
     * @param daysOverdue days past the due day; 0 or fewer where it is not due, or has no due day
     */
    public record Line(ClaimState claim, long daysOverdue) {

        /** How long it is overdue. */
        public DebtAge age() {
            return DebtAge.of(daysOverdue);
        }
    }

    /** What is still to come of claims as they stood on a day. */
    public static Owing of(List<ClaimState> claims, LocalDate asOf) {
        List<Line> open =
                claims.stream()
                        .filter(ClaimState::isOpen)
                        .map(c -> new Line(c, overdue(c, asOf)))
                        .sorted(
                                Comparator.comparing(Line::daysOverdue)
                                        .reversed()
                                        .thenComparing(l -> l.claim().id()))
                        .toList();
        LocalDate near = asOf.plusDays(CLOSING_DAYS);
        return new Owing(
                asOf,
                open,
                Lodging.byLastDay(claims, c -> c.failed().isPresent() && c.isToLodge(asOf)),
                Lodging.byLastDay(
                        claims,
                        c ->
                                c.failed().isEmpty()
                                        && c.isToLodge(asOf)
                                        && c.lodgeBy().filter(d -> d.isBefore(near)).isPresent()),
                Lodging.tooLate(claims, asOf),
                List.of(),
                Map.of());
    }

    /** What is still to come on a day, as a ledger has it. */
    public static Owing of(LedgerPlace place, LocalDate asOf) {
        try (Ledger ledger = Ledger.open(place)) {
            Owing owing = of(ledger.claims(asOf), asOf);
            List<ClaimState> told =
                    Stream.concat(owing.closing().stream(), owing.failed().stream()).toList();
            Map<Long, String> awaited = new HashMap<>();
            Lodging.of(ledger, told, asOf)
                    .map(Lodging::awaited)
                    .orElse(List.of())
                    .forEach(a -> awaited.put(a.claim().id(), a.paper().awaited()));
            return new Owing(
                    asOf,
                    owing.open(),
                    owing.failed(),
                    owing.closing(),
                    owing.tooLate(),
                    ledger.paidBefore(asOf),
                    awaited);
        }
    }

    private static long overdue(ClaimState claim, LocalDate asOf) {
        return claim.due().map(d -> ChronoUnit.DAYS.between(d, asOf)).orElse(0L);
    }

    /** What is to come by buyer and age; every age is there. */
    public Map<String, Map<DebtAge, Money>> byBuyer() {
        Map<String, Map<DebtAge, Money>> all = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        for (Line line : open) {
            String buyer = line.claim().buyer().isEmpty() ? "(no buyer)" : line.claim().buyer();
            all.computeIfAbsent(buyer, b -> none())
                    .merge(line.age(), line.claim().outstanding(), Money::plus);
        }
        return all;
    }

    /** What is to come by age. */
    public Map<DebtAge, Money> total() {
        Map<DebtAge, Money> total = none();
        open.forEach(l -> total.merge(l.age(), l.claim().outstanding(), Money::plus));
        return total;
    }

    private static Map<DebtAge, Money> none() {
        Map<DebtAge, Money> none = new EnumMap<>(DebtAge.class);
        Arrays.stream(DebtAge.values()).forEach(a -> none.put(a, Money.ZERO));
        return none;
    }
}
