package paperbark.disk;

import java.util.Optional;

/** Which computer this is; on a share the others are not. */
public final class Computer {
    /** Its name where the system tells it, and empty text otherwise. */
    public static final String NAME =
            Optional.ofNullable(System.getenv("COMPUTERNAME"))
                    .or(() -> Optional.ofNullable(System.getenv("HOSTNAME")))
                    .orElse("");

    private Computer() {}

    /** Its name behind a word; empty text where it is not known. */
    public static String named(String word) {
        return NAME.isEmpty() ? "" : word + NAME;
    }
}
