package paperbark.ledger;

/**
 * A paper of a job that went out, as it goes into the ledger.
 *
 * @param kind name of the paper's kind
 * @param says what stands on it beside the job's facts, a line each: form, buyer, certificates
 */
public record PaperEntry(String kind, String says) {
    // A row of its own beside those of papers, as no table of the ledger tells of what was not
    // printed.
    static final String TAKEN_BACK = "-taken-back";

    /**
     * A paper that is held and whose earlier one counts no longer.
     *
     * @param kind name of the paper's kind
     */
    public static PaperEntry takenBack(String kind) {
        return new PaperEntry(kind + TAKEN_BACK, "");
    }
}
