package paperbark.fault;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A step after which the power may fail. A process started with {@code -Dpaperbark.fault=STAGED}
 * ends there at once, as if killed; with {@code STAGED:io} the disk fails there; with {@code
 * PAPER:halt:3} it ends when it comes there for the third time. With {@code EACH:pause} it notes
 * each step in the {@link Trace} and waits there until that file is taken away. Otherwise nothing
 * happens.
 */
public enum FaultPoint {
    /** The office folder is ours. */
    LOCKED,
    /** The ledger was opened and proved. */
    VERIFIED,
    /** A folder for the register was made. */
    NAMED,
    /** The register was moved there. */
    TAKEN,
    /** Register and tables were read. */
    READ,
    /** A file of the batch was written. */
    PAPER,
    /** The manifest was written. */
    MANIFEST,
    /** Everything is on the disk. */
    STAGED,
    /** The batch is in the ledger, not yet committed. */
    IN_TRANSACTION,
    /** The batch is in the ledger. */
    COMMITTED,
    /** The folder is where people see it. */
    PUBLISHED,
    /** The register was moved to where it stays. */
    FILED,
    /** The ledger knows that. */
    NOTED,
    /** A file of a pile of scans was written. */
    SORTED,
    /** A file of a pile of scans is where it stays. */
    PLACED,
    /** What goes back with a register that cannot be used was written. */
    RETURNING,
    /** A register that cannot be used went back. */
    RETURNED;

    private static final int KILLED = 137;
    private static final String[] WANTED = System.getProperty("paperbark.fault", "").split(":");
    private static final AtomicInteger VISITS = new AtomicInteger();

    /** Says that the step is done. */
    public void reach() {
        if (!isWanted()) {
            return;
        }
        String way = WANTED.length > 1 ? WANTED[1] : "halt";
        switch (way) {
            case "io" -> throw new UncheckedIOException(new IOException("No space left on device"));
            case "pause" -> Trace.PAUSE.untilTakenAway(name());
            default -> Runtime.getRuntime().halt(KILLED);
        }
    }

    private boolean isWanted() {
        return WANTED[0].equals("EACH")
                || WANTED[0].equals(name())
                        && VISITS.incrementAndGet()
                                == (WANTED.length > 2 ? Integer.parseInt(WANTED[2]) : 1);
    }
}
