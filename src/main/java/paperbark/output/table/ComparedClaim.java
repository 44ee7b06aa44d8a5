package paperbark.output.table;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import paperbark.offer.Comparison;
import paperbark.offer.Quote;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;

/**
 * The offers for one claim, with the line of the first of them in the table of every offer.
 *
 * @param file the job
 * @param comparison the offers side by side
 * @param firstLine number of its first line, counted from 1
 */
record ComparedClaim(CaseFile file, Comparison comparison, int firstLine) {

    /** Every claim of the batch that counts and that offers were looked up for. */
    static List<ComparedClaim> of(BatchView view) {
        List<ComparedClaim> all = new ArrayList<>();
        int line = 1;
        for (CaseFile file : view.cases()) {
            for (Comparison comparison : file.comparisons()) {
                if (file.standing(comparison.scheme()).counts()) {
                    all.add(new ComparedClaim(file, comparison, line));
                    line += comparison.ranked().size();
                }
            }
        }
        return all;
    }

    /** Its offers, best first. */
    List<Line> lines() {
        return IntStream.range(0, comparison.ranked().size())
                .mapToObj(i -> new Line(this, i))
                .toList();
    }

    /** The line of one of its offers. */
    int lineOf(Quote quote) {
        return firstLine + comparison.ranked().indexOf(quote);
    }

    int lastLine() {
        return firstLine + comparison.ranked().size() - 1;
    }

    /**
     * One offer for one claim.
     *
     * @param claim the claim
     * @param place 0 for the best
     */
    record Line(ComparedClaim claim, int place) {
        Quote quote() {
            return claim.comparison().ranked().get(place);
        }

        int number() {
            return claim.firstLine() + place;
        }

        /** Whether no better offer of the same buyer stands before it. */
        boolean isBestOfItsBuyer() {
            String buyer = quote().offer().buyer();
            return claim.comparison().ranked().subList(0, place).stream()
                    .noneMatch(q -> q.offer().buyer().equals(buyer));
        }

        /** Taken, next or nothing. */
        String mark() {
            if (claim.comparison().chosen().stream().anyMatch(c -> c == quote())) {
                return "taken";
            }
            return claim.comparison().runnerUp().stream().anyMatch(r -> r == quote())
                    ? "runner-up"
                    : "";
        }
    }
}
