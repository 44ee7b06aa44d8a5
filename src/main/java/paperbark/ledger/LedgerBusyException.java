package paperbark.ledger;

/**
 * Another program is at work in the ledger, or was since it was read; nothing was changed, and a
 * later try may succeed. The message says what to do.
 */
public final class LedgerBusyException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    LedgerBusyException(String fact, String remedy) {
        super(fact + " " + remedy);
    }

    LedgerBusyException(String fact, String remedy, Throwable cause) {
        super(fact + " " + remedy, cause);
    }
}
