package paperbark.output.index;

import java.util.List;

/**
 * What leaves the house, as drafts.
 *
 * @param firm the firm's name
 * @param day the day
 * @param program version of the program
 * @param notes what somebody should know, a sentence each
 * @param batches the letters by batch, the newest first
 */
public record SendView(
        String firm, String day, String program, List<String> notes, List<OfBatch> batches) {

    /** Keeps the lists from being changed. */
    public SendView {
        notes = List.copyOf(notes);
        batches = List.copyOf(batches);
    }

    /**
     * The letters of a batch.
     *
     * @param name of the batch and of its folder
     * @param letters buyers' first, then makers' and owners'
     */
    public record OfBatch(String name, List<Line> letters) {
        /** Keeps the list from being changed. */
        public OfBatch {
            letters = List.copyOf(letters);
        }
    }

    /**
     * A letter.
     *
     * @param who kind of recipient
     * @param name of the recipient
     * @param address its address; empty text where none is known
     * @param about the claim, or the jobs
     * @param enclosed how many files go with it
     * @param waiting what has to come before it can go; empty text where nothing has
     * @param look what somebody should look at before it goes; empty text where nothing
     * @param apart what does not go with it; empty text where all does
     * @param draft path of the draft; empty text where it was taken away
     * @param list path of the page that covers a claim's papers; empty text for others
     */
    public record Line(
            String who,
            String name,
            String address,
            String about,
            int enclosed,
            String waiting,
            String look,
            String apart,
            String draft,
            String list) {}
}
