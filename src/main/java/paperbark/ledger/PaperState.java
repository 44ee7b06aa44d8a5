package paperbark.ledger;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;

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
 *     and holds the new one
 * @param pages how many pages it has; 0 while none came back
 * @param back the pages that came back
 * @param blank pages that came back with an empty box each time
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
        int pages,
        Set<Integer> back,
        Set<Integer> blank,
        Optional<LocalDate> lastCame) {

    /** Keeps the sets from being changed. */
    public PaperState {
        back = Set.copyOf(back);
        blank = Set.copyOf(blank);
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

    /** Whether it still counts: no later batch printed it anew or took it back. */
    public boolean counts() {
        return !replaced && !withdrawn && takenBack.isEmpty();
    }

    /** How it stands, to whoever waits for it. */
    public String awaited() {
        return takenBack.isPresent() ? "taken back, and the new one is held" : step().awaited();
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
