package paperbark.ledger;

/**
 * A paper of a job that went out, as it goes into the ledger.
 *
 * @param kind name of the paper's kind
 * @param says what stands on it beside the job's facts, a line each: form, buyer, certificates
 */
public record PaperEntry(String kind, String says) {}
