package paperbark.office;

import java.io.IOException;
import java.io.UncheckedIOException;
import paperbark.ledger.LedgerException;

/** Tells the world's faults, such as a full disk, from ours. */
final class Troubles {
    private Troubles() {}

    static boolean isOfTheWorld(Throwable fault) {
        return fault instanceof IOException
                || fault instanceof UncheckedIOException
                || fault instanceof LedgerException;
    }
}
