package paperbark.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which claims that are to be lodged can be: whether the newest assignment of each came back with
 * all its pages and was not taken back since. Claims whose assignment the ledger does not list are
 * those of an earlier program and are left out. The earliest last day comes first.
 *
 * @param ready whose assignment is back
 * @param awaited whose assignment is not back, or not all of it, or counts no longer
 */
public record Lodging(List<Assigned> ready, List<Assigned> awaited) {

    /** Keeps the lists from being changed. */
    public Lodging {
        ready = List.copyOf(ready);
        awaited = List.copyOf(awaited);
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
     * @param claims claims of the ledger; those that are not to be lodged are passed over
     * @return empty where no papers are scanned: such an office is told nothing of them
     */
    public static Optional<Lodging> of(Ledger ledger, List<ClaimState> claims) {
        ScanBook book = new ScanBook(ledger);
        if (!book.isUsed()) {
            return Optional.empty();
        }
        List<ClaimState> open =
                claims.stream()
                        .filter(ClaimState::isToLodge)
                        .sorted(
                                Comparator.comparing(
                                                (ClaimState c) -> c.lodgeBy().orElse(LocalDate.MAX))
                                        .thenComparing(ClaimState::id))
                        .toList();
        Map<Long, PaperState> papers = book.assignments(open);
        List<Assigned> ready = new ArrayList<>();
        List<Assigned> awaited = new ArrayList<>();
        for (ClaimState claim : open) {
            PaperState paper = papers.get(claim.id());
            if (paper != null) {
                (paper.isReady() ? ready : awaited).add(new Assigned(claim, paper));
            }
        }
        return Optional.of(new Lodging(ready, awaited));
    }
}
