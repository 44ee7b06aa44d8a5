package paperbark.output;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A paper of an earlier batch that counts no longer, and in whose place the pack has none.
 *
 * @param otherJob number of the other job that it is of, whose place this one takes; empty for a
 *     paper of this job
 * @param kind which paper
 * @param batch name of the batch
 * @param day day of that batch
 */
public record Dropped(Optional<String> otherJob, PaperKind kind, String batch, LocalDate day) {
    /** The name on paper. */
    public String title() {
        return kind.title();
    }
}
