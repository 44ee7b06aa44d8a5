package paperbark.ledger;

import java.io.IOException;

/** The server of a ledger cannot be reached, or cannot write; a later try may succeed. */
public final class ServerAwayException extends IOException {
    private static final long serialVersionUID = 1L;

    ServerAwayException(String fact, Throwable cause) {
        super(fact + " Look whether the server runs and the network is up.", cause);
    }
}
