package paperbark.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Which claims that are to be lodged can be: whether the newest assignment of each came back with
 * all its pages and was not taken back since. Claims whose assignment the ledger does not list are
 * those of an earlier program and are left out. The earliest last day comes first. A claim that is
 * past its last day is neither ready nor awaited, whatever is back of it.
 *
 * @param ready whose assignment is back
 * @param awaited whose assignment is not back, or not all of it, or counts no longer
 * @param tooLate that are not lodged and can be no longer
 */
public record Lodging(List<Assigned> ready, List<Assigned> awaited, List<ClaimState> tooLate) {
    /** What is to be done about claims that are past their last day. */
    public static final String WHEN_TOO_LATE =
            "The certificates can be created no longer. Ask the buyer whether it was done in time. If so,"
                    + " enter it with lodged and the day. If not, read the rule behind the last day (explain),"
                    + " and drop the job's register again: its claim falls away, and nobody waits for the"
                    + " money.";

    /** Keeps the lists from being changed. */
    public Lodging {
        ready = List.copyOf(ready);
        awaited = List.copyOf(awaited);
        tooLate = List.copyOf(tooLate);
    }

    /**
     * A claim and its assignment.
     *
     * @param claim the claim
     * @param paper how the newest assignment stands
     */
    public record Assigned(ClaimState claim, PaperState paper) {

        /** Name of the paper: the scheme's word and that it is an assignment. */
        public String name() {
            return claim.scheme().word() + " assignment";
        }
    }

    /**
     * How the assignments stand now.
     *
     * @param claims claims of the ledger; those that are lodged are passed over
     * @param day the day, which decides what is past its last day
     * @return empty where no papers are scanned: such an office is told nothing of them
     */
    public static Optional<Lodging> of(Ledger ledger, List<ClaimState> claims, LocalDate day) {
        ScanBook book = new ScanBook(ledger);
        if (!book.isUsed()) {
            return Optional.empty();
        }
        List<ClaimState> open = byLastDay(claims, claim -> claim.isToLodge(day));
        Map<Long, PaperState> papers = book.assignments(open);
        List<Assigned> ready = new ArrayList<>();
        List<Assigned> awaited = new ArrayList<>();
        for (ClaimState claim : open) {
            PaperState paper = papers.get(claim.id());
            if (paper != null) {
                (paper.isReady() ? ready : awaited).add(new Assigned(claim, paper));
            }
        }
        return Optional.of(new Lodging(ready, awaited, tooLate(claims, day)));
    }

    /** Claims that are not lodged and can be no longer, the longest past its last day first. */
    public static List<ClaimState> tooLate(List<ClaimState> claims, LocalDate day) {
        return byLastDay(claims, claim -> claim.isTooLate(day));
    }

    /**
     * Claims that fall away once the register of their job comes again: they are not lodged and can
     * be no longer. None that was made before it was first entered what became of any: until then
     * an office lodges and does not tell, and a list that runs for years would take back its oldest
     * jobs.
     */
    public static List<ClaimState> fallingAway(Ledger ledger, LocalDate day) {
        ClaimReader reader = new ClaimReader(ledger.sql());
        Optional<LocalDate> told = reader.firstTold();
        return told.isEmpty()
                ? List.of()
                : tooLate(reader.closedBefore(day), day).stream()
                        .filter(claim -> !claim.claimedOn().isBefore(told.get()))
                        .toList();
    }

    /** Some of the claims, the earliest last day first. */
    public static List<ClaimState> byLastDay(List<ClaimState> claims, Predicate<ClaimState> which) {
        return claims.stream()
                .filter(which)
                .sorted(
                        Comparator.comparing((ClaimState c) -> c.lodgeBy().orElse(LocalDate.MAX))
                                .thenComparing(ClaimState::id))
                .toList();
    }
}
