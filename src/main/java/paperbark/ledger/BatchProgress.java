package paperbark.ledger;

/**
 * How far a batch has come, as the ledger has it.
 *
 * @param name of the batch
 * @param place id of the output folder; empty text where an older or rebuilt ledger does not tell
 * @param state committed, published or filed
 */
public record BatchProgress(String name, String place, String state) {
    /** Whether it belongs to an output folder, or may. */
    public boolean isOf(String folder) {
        return place.isEmpty() || place.equals(folder);
    }

    /** Whether its folder is known to be where people see it. */
    public boolean isPublished() {
        return !state.equals("committed");
    }

    /** Whether its register is known to be where it stays. */
    public boolean isFiled() {
        return state.equals("filed");
    }
}
