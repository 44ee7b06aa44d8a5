package paperbark.ledger;

/**
 * A job that was forgotten.
 *
 * @param entry number of the entry that says so
 * @param job its number, as jobs are compared by
 */
public record Forgotten(long entry, String job) {}
