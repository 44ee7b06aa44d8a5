package paperbark.fault;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * A promise that a process can be started without, so that a test sees whether breaking it is
 * noticed: with {@code -Dpaperbark.weakened=no_sync} nothing is forced to the disk. Otherwise every
 * promise is kept.
 */
public enum Weakened {
    /** The folder appears before the ledger's commit, and not after it. */
    PUBLISH_FIRST,
    /** Nothing is forced to the disk. */
    NO_SYNC;

    private static final List<String> WANTED =
            Arrays.asList(
                    System.getProperty("paperbark.weakened", "")
                            .toUpperCase(Locale.ROOT)
                            .split(","));

    /** Whether the process was started without the promise. */
    public boolean isOn() {
        return WANTED.contains(name());
    }
}
