package paperbark.ledger;

import java.io.UncheckedIOException;

/**
 * The connection broke at the moment of taking in: whether it was taken in is not known. What waits
 * to be published must stay, and the next run finds out.
 */
public final class CommitUnknown extends UncheckedIOException {
    private static final long serialVersionUID = 1L;

    CommitUnknown(String fact, Throwable cause) {
        super(new ServerAwayException(fact, cause));
    }
}
