package paperbark.ledger;

import java.time.LocalDate;
import java.util.Collections;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * How a paper stands that went out for a job.
 *
 * @param job the job number
 * @param kind name of the paper's kind
 * @param version which version of the job it was printed for, from 1
 * @param batch name of the batch
 * @param printedOn day of that batch
 * @param replaced whether a later batch printed the paper anew
 * @param withdrawn whether the job was booked out since
 * @param takenBack the batch of the job's newest version, where it tells to take this paper back
 *     and prints no new one
 * @param dropped whether that is because the job has no such paper any more; otherwise the new one
 *     is held
 * @param bookedAgain whether it was printed for what was installed, and the newest version of the
 *     job is only booked
 * @param pages how many pages it has; 0 while none came back
 * @param back the pages that came back
 * @param blank pages that came back with an empty box each time, and how many boxes were empty when
 *     each came last
 * @param lastCame when the last page came back
 */
public record PaperState(
        String job,
        String kind,
        int version,
        String batch,
        LocalDate printedOn,
        boolean replaced,
        boolean withdrawn,
        Optional<String> takenBack,
        boolean dropped,
        boolean bookedAgain,
        int pages,
        Set<Integer> back,
        SortedMap<Integer, Integer> blank,
        Optional<LocalDate> lastCame) {

    /** Keeps the sets from being changed. */
    public PaperState {
        back = Set.copyOf(back);
        blank = Collections.unmodifiableSortedMap(new TreeMap<>(blank));
    }

    /** How far a paper has come. */
    public enum Step {
        /** It went out, and no page of it came back. */
        PRINTED("printed", "not back yet"),
        /** Some of its pages came back. */
        INCOMPLETE("incomplete", "back in part"),
        /** All pages came back, and a box on one is empty. */
        BLANK_BOX("back, with an empty box", "back, with an empty box"),
        /** All pages came back. */
        BACK("back", "back");

        private final String words;
        private final String awaited;

        Step(String words, String awaited) {
            this.words = words;
            this.awaited = awaited;
        }

        /** The same to whoever waits for the paper. */
        public String awaited() {
            return awaited;
        }

        /** The step in words. */
        public String words() {
            return words;
        }

        /** Whether every page is here. */
        public boolean isBack() {
            return this == BACK || this == BLANK_BOX;
        }
    }

    /** Whether it still counts, and every page is here. */
    public boolean isReady() {
        return counts() && step().isBack();
    }

    /**
     * Whether it still counts: no later batch printed it anew or took it back, and nothing says
     * that its job was not done.
     */
    public boolean counts() {
        return !replaced && !withdrawn && !bookedAgain && takenBack.isEmpty();
    }

    /** The boxes that seem empty, in words by page; empty text where none does. */
    public String emptyBoxes() {
        return blank.entrySet().stream()
                .map(
                        e ->
                                (e.getValue() == 1
                                                ? "1 box seems empty"
                                                : e.getValue() + " boxes seem empty")
                                        + " on page "
                                        + e.getKey())
                .collect(Collectors.joining(", "));
    }

    /**
     * How it stands, to whoever waits for it. Whether an earlier one is taken back, or agreed on
     * with the buyer who has it, the finding of its job says.
     */
    public String awaited() {
        if (bookedAgain) {
            return "to be taken back, since the job is only booked again";
        }
        if (dropped) {
            return "to be taken back, since the job has no such paper any more";
        }
        return takenBack.isPresent() ? "changed since, and the new one is held" : step().awaited();
    }

    /** How far it has come, whether it counts or not. */
    public Step step() {
        if (back.isEmpty()) {
            return Step.PRINTED;
        }
        if (back.size() < pages) {
            return Step.INCOMPLETE;
        }
        return blank.isEmpty() ? Step.BACK : Step.BLANK_BOX;
    }
}
