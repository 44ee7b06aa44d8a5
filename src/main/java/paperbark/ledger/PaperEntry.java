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

    /** What such a row says of a paper that the job has no more; of one that is held, nothing. */
    static final String NONE_NOW = "none now";

    /**
     * A paper that is held and whose earlier one counts no longer.
     *
     * @param kind name of the paper's kind
     */
    public static PaperEntry takenBack(String kind) {
        return new PaperEntry(kind + TAKEN_BACK, "");
    }

    /**
     * A paper that the job had and has no more.
     *
     * @param kind name of the paper's kind
     */
    public static PaperEntry dropped(String kind) {
        return new PaperEntry(kind + TAKEN_BACK, NONE_NOW);
    }
}
