package paperbark.output.index;

import java.util.List;

/**
 * What a person types into the page of a maker or buyer.
 *
 * @param firm the firm's name
 * @param batch name of the batch
 * @param job the job number
 * @param owner who owns the heater; empty text where that is not known
 * @param recipient whose page it is
 * @param about the claim's name, or the paper
 * @param index path of the batch's page from here
 * @param entries in the order of the recipient's page
 */
public record TypingView(
        String firm,
        String batch,
        String job,
        String owner,
        String recipient,
        String about,
        String index,
        List<Line> entries) {

    /** Keeps the list from being changed. */
    public TypingView {
        entries = List.copyOf(entries);
    }

    /**
     * One entry.
     *
     * @param heading as the recipient calls it
     * @param value what is typed; empty text where the job lacks the fact
     */
    public record Line(String heading, String value) {}
}
