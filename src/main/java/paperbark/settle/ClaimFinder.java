package paperbark.settle;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.ledger.AdviceBook;
import paperbark.ledger.AdviceStatus;
import paperbark.ledger.ClaimState;
import paperbark.value.Money;

/**
 * Finds the claim that a line is about: by reference, serial or job; only where none of them is
 * known by amount and day, with a score.
 *
 * <p>Score, out of 100 (our own weights): the amount still to come, to the cent, 40; the same buyer
 * 25; the same number of certificates 15; paid within a week of the due day 20, within a month 10.
 */
final class ClaimFinder {
    /** From this score on a match by amount and day is sure, if no other claim comes near. */
    static final int SURE = 85;

    /** So far behind another claim must stay. */
    static final int LEAD = 15;

    private static final int LISTED = 3;
    private static final int WEEK_DAYS = 7;
    private static final int MONTH_DAYS = 31;

    private final AdviceBook book;

    ClaimFinder(AdviceBook book) {
        this.book = book;
    }

    /**
     * What was found.
     *
     * @param claim the claim, if it is sure
     * @param how by what, in words
     * @param candidates the likeliest claims where none is sure
     * @param why why none is sure
     */
    record Found(Optional<ClaimState> claim, String how, List<ClaimState> candidates, String why) {}

    Found find(RemittanceLine said) {
        List<Named> named = named(said);
        if (named.isEmpty()) {
            return said.what() == AdviceStatus.PAID && said.amount().compareTo(Money.ZERO) > 0
                    ? byAmount(said)
                    : unsure(List.of(), "no claim of that name is known");
        }
        Set<ClaimState> common = new LinkedHashSet<>(named.get(0).claims());
        named.forEach(n -> common.retainAll(n.claims()));
        String how = named.stream().map(Named::by).collect(Collectors.joining(" and "));
        if (common.isEmpty()) {
            return unsure(
                    named.stream().flatMap(n -> n.claims().stream()).distinct().toList(),
                    how + " name different claims");
        }
        List<ClaimState> standing = preferred(List.copyOf(common), ClaimState::active);
        if (standing.size() > 1) {
            standing = preferred(standing, c -> c.outstanding().equals(said.amount()));
            how += " and amount";
        }
        return standing.size() == 1
                ? new Found(Optional.of(standing.get(0)), how, List.of(), "")
                : unsure(standing, how + " fit more than one claim");
    }

    /** Claims that one of the line's names stands for. */
    private record Named(String by, List<ClaimState> claims) {}

    private List<Named> named(RemittanceLine said) {
        List<Named> named = new ArrayList<>();
        add(
                named,
                said,
                "reference",
                Stream.of(said.claim(), said.buyerReference())
                        .flatMap(Optional::stream)
                        .flatMap(r -> book.byReference(r).stream()));
        add(named, said, "serial", said.serial().stream().flatMap(s -> book.bySerial(s).stream()));
        add(
                named,
                said,
                "job",
                said.job().or(said::claim).stream().flatMap(j -> book.byJob(j).stream()));
        return named;
    }

    private static void add(
            List<Named> named, RemittanceLine said, String by, Stream<ClaimState> claims) {
        List<ClaimState> fitting =
                claims.distinct()
                        .filter(c -> said.scheme().map(s -> s == c.scheme()).orElse(true))
                        .toList();
        if (!fitting.isEmpty()) {
            named.add(new Named(by, fitting));
        }
    }

    private static List<ClaimState> preferred(
            List<ClaimState> claims, Predicate<ClaimState> better) {
        List<ClaimState> best = claims.stream().filter(better).toList();
        return best.isEmpty() ? claims : best;
    }

    private record Scored(ClaimState claim, int score) {}

    private Found byAmount(RemittanceLine said) {
        List<Scored> scored =
                book.owing(said.amount()).stream()
                        .filter(c -> said.scheme().map(s -> s == c.scheme()).orElse(true))
                        .filter(c -> said.buyer().map(b -> sameBuyer(b, c)).orElse(true))
                        .map(c -> new Scored(c, score(said, c)))
                        .sorted(
                                Comparator.comparing(Scored::score)
                                        .reversed()
                                        .thenComparing(s -> s.claim().id()))
                        .toList();
        List<ClaimState> likeliest = scored.stream().limit(LISTED).map(Scored::claim).toList();
        if (scored.isEmpty()) {
            return unsure(likeliest, "no claim of that name or amount is known");
        }
        int best = scored.get(0).score();
        boolean alone = scored.size() == 1 || scored.get(1).score() <= best - LEAD;
        return best >= SURE && alone
                ? new Found(
                        Optional.of(scored.get(0).claim()),
                        "amount and day, score " + best,
                        List.of(),
                        "")
                : unsure(likeliest, "only the amount fits, with a score of " + best);
    }

    static int score(RemittanceLine said, ClaimState claim) {
        int score = claim.outstanding().equals(said.amount()) ? 40 : 0;
        score += said.buyer().map(b -> sameBuyer(b, claim)).orElse(false) ? 25 : 0;
        score += said.certificates().map(c -> c == claim.certificates()).orElse(false) ? 15 : 0;
        long days =
                claim.due()
                        .map(due -> Math.abs(ChronoUnit.DAYS.between(due, said.day())))
                        .orElse(Long.MAX_VALUE);
        return score + (days <= WEEK_DAYS ? 20 : days <= MONTH_DAYS ? 10 : 0);
    }

    private static boolean sameBuyer(String buyer, ClaimState claim) {
        return buyer.equalsIgnoreCase(claim.buyer());
    }

    private static Found unsure(List<ClaimState> candidates, String why) {
        return new Found(Optional.empty(), "", candidates.stream().limit(LISTED).toList(), why);
    }
}
