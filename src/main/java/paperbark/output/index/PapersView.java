package paperbark.output.index;

import java.util.List;

/**
 * How the papers stand that people sign, all over an office.
 *
 * @param day the day
 * @param program version of the program
 * @param used whether scanned papers were ever taken in; where not, nobody knows and nothing is
 *     listed
 * @param table name of the file that holds all lines
 * @param piles the pages that tell what was found in scanned piles, from the office folder, the
 *     newest first
 * @param parts the papers by what is to be done with them
 */
public record PapersView(
        String day,
        String program,
        boolean used,
        String table,
        List<String> piles,
        List<Part> parts) {

    /** Keeps the lists from being changed. */
    public PapersView {
        piles = List.copyOf(piles);
        parts = List.copyOf(parts);
    }

    /**
     * Papers with which the same is to be done.
     *
     * @param anchor what links lead to
     * @param title what they have in common
     * @param note what is meant, in a sentence
     * @param count how many there are
     * @param lines the first of them
     */
    public record Part(String anchor, String title, String note, int count, List<Line> lines) {
        /** Keeps the list from being changed. */
        public Part {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A paper.
     *
     * @param job the job
     * @param paper the paper
     * @param file where it lies, from the office folder; empty text while nothing came back
     * @param state how far it has come, in words
     * @param came the day on which the last page came; may be empty
     * @param claim what becomes of its claim, in words; empty text for a paper without one
     * @param batch the batch that printed it
     * @param page the page of that batch, from the office folder; empty text where there is none
     */
    public record Line(
            String job,
            String paper,
            String file,
            String state,
            String came,
            String claim,
            String batch,
            String page) {}
}
