package paperbark.ledger;

/** The ledger cannot be opened or trusted; nothing was changed. The message says what to do. */
public final class LedgerException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** One sentence of fact and one of what to do. */
    public LedgerException(String fact, String remedy) {
        super(fact + " " + remedy);
    }

    LedgerException(String fact, String remedy, Throwable cause) {
        super(fact + " " + remedy, cause);
    }
}
