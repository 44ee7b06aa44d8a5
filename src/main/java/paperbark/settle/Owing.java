package paperbark.settle;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.value.Money;

/**
 * What is still to come, by how long it is overdue, and which claims must be lodged soon.
 *
 * @param asOf the day
 * @param open claims with money still to come, longest overdue first
 * @param closing claims not lodged whose closing date is near or past, earliest first
 */
public record Owing(LocalDate asOf, List<Line> open, List<ClaimState> closing) {
    /** A claim that is not lodged is told when its closing date is fewer than so many days off. */
    public static final int CLOSING_DAYS = 60;

    /** Keeps the lists from being changed. */
    public Owing {
        open = List.copyOf(open);
        closing = List.copyOf(closing);
    }

    /** How long money is overdue. */
    public enum Age {
        NOT_DUE("not due", 0),
        TO_30("1-30 days", 30),
        TO_60("31-60 days", 60),
        TO_90("61-90 days", 90),
        OVER_90("over 90 days", Long.MAX_VALUE);

        private final String words;
        private final long lastDay;

        Age(String words, long lastDay) {
            this.words = words;
            this.lastDay = lastDay;
        }

        /** For people. */
        public String words() {
            return words;
        }

        /** The age of money that many days past its due day; 0 or fewer is not due. */
        public static Age of(long daysOverdue) {
            return Arrays.stream(values())
                    .filter(a -> daysOverdue <= a.lastDay)
                    .findFirst()
                    .orElseThrow();
        }
    }

    /**
     * Money still to come for a claim.
     *
     * @param claim the claim
     * @param daysOverdue days past the due day; 0 or fewer where it is not due, or has no due day
     */
    public record Line(ClaimState claim, long daysOverdue) {

        /** How long it is overdue. */
        public Age age() {
            return Age.of(daysOverdue);
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
        List<ClaimState> closing =
                claims.stream()
                        .filter(c -> !c.lodged() || c.failed().isPresent())
                        .filter(
                                c ->
                                        c.lodgeBy()
                                                .filter(
                                                        d ->
                                                                d.isBefore(
                                                                        asOf.plusDays(
                                                                                CLOSING_DAYS)))
                                                .isPresent())
                        .sorted(
                                Comparator.comparing((ClaimState c) -> c.lodgeBy().orElseThrow())
                                        .thenComparing(ClaimState::id))
                        .toList();
        return new Owing(asOf, open, closing);
    }

    /** What is still to come on a day, as a ledger has it. */
    public static Owing of(LedgerPlace place, LocalDate asOf) {
        try (Ledger ledger = Ledger.open(place)) {
            return of(ledger.claims(asOf), asOf);
        }
    }

    private static long overdue(ClaimState claim, LocalDate asOf) {
        return claim.due().map(d -> ChronoUnit.DAYS.between(d, asOf)).orElse(0L);
    }

    /** What is to come by buyer and age; every age is there. */
    public Map<String, Map<Age, Money>> byBuyer() {
        Map<String, Map<Age, Money>> all = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        for (Line line : open) {
            String buyer = line.claim().buyer().isEmpty() ? "(no buyer)" : line.claim().buyer();
            all.computeIfAbsent(buyer, b -> none())
                    .merge(line.age(), line.claim().outstanding(), Money::plus);
        }
        return all;
    }

    /** What is to come by age. */
    public Map<Age, Money> total() {
        Map<Age, Money> total = none();
        open.forEach(l -> total.merge(l.age(), l.claim().outstanding(), Money::plus));
        return total;
    }

    private static Map<Age, Money> none() {
        Map<Age, Money> none = new EnumMap<>(Age.class);
        Arrays.stream(Age.values()).forEach(a -> none.put(a, Money.ZERO));
        return none;
    }
}
