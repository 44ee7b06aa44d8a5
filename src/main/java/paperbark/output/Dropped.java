package paperbark.output;

import java.time.LocalDate;

/**
 * A paper of an earlier batch that counts no longer, and in whose place the pack has none.
 *
 * @param kind which paper
 * @param batch name of the batch
 * @param day day of that batch
 */
public record Dropped(PaperKind kind, String batch, LocalDate day) {
    /** The name on paper. */
    public String title() {
        return kind.title();
    }
}
