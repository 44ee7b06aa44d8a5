package paperbark.rules;

import java.util.List;
import java.util.stream.Collectors;

/** The rule tables cannot be used. Lists every fault found, not just the first. */
public final class RulebookException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * One fault.
     *
     * @param table the table's name, with a remark where it is the firm's
     * @param row 1-based line; 0 is the table as a whole
     * @param what what is wrong
     */
    public record Fault(String table, int row, String what) {
        @Override
        public String toString() {
            return row == 0 ? table + ": " + what : table + " row " + row + ": " + what;
        }
    }

    private final transient List<Fault> faults;

    /** Made by the loader. */
    RulebookException(List<Fault> faults) {
        super(
                "The rule tables cannot be used.\n"
                        + faults.stream().map(f -> "  " + f).collect(Collectors.joining("\n")));
        this.faults = List.copyOf(faults);
    }

    /** All faults, in the order of the tables. */
    public List<Fault> faults() {
        return faults;
    }
}
