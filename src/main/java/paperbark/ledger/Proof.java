package paperbark.ledger;

/**
 * What this process knows of a ledger: it is proved whole once, and then only when it does not end
 * as this process last saw it. Proving every seal takes as long as the ledger is large.
 */
public final class Proof {
    private String end = "";

    /**
     * Proves the ledger, as far as it is not proved.
     *
     * @throws LedgerException naming what is not as it was written
     */
    public void of(Ledger ledger) {
        String now = ledger.records().end();
        if (!now.equals(end)) {
            ledger.verify();
            end = now;
        }
    }

    /** Takes note of an entry that this process just made, if it lies upon what was proved. */
    public void grew(Ledger ledger) {
        if (ledger.records().beforeEnd().equals(end)) {
            end = ledger.records().end();
        }
    }

    /** Everything is to be proved once more. */
    public void forget() {
        end = "";
    }
}
