package paperbark.office;

import java.io.IOException;
import java.util.Optional;

/** Puts into words why something beside the batches could not be made. */
final class Failed {
    private Failed() {}

    /** The failure's own words; where it has none, whose fault it is. */
    static String because(Throwable failure) {
        return Optional.ofNullable(failure.getMessage())
                .filter(said -> !said.isBlank())
                .orElseGet(
                        () ->
                                failure instanceof IOException
                                        ? "the disk gives no reason"
                                        : "the program failed and gives no reason; please report it");
    }
}
