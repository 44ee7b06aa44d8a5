package paperbark.ledger;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/**
 * A claim as it goes into the ledger.
 *
 * @param scheme which certificates
 * @param buyer who takes the assignment; empty text where no buyer is chosen
 * @param certificates how many, more than none
 * @param installedOn day of the installation
 * @param lodgeBy last day on which the certificates can be created
 * @param serials of all parts, the tank's first
 * @param promise what the buyer is expected to pay
 */
public record ClaimEntry(
        SchemeName scheme,
        String buyer,
        int certificates,
        LocalDate installedOn,
        Optional<LocalDate> lodgeBy,
        List<Serial> serials,
        Promise promise) {

    /** Keeps the list from being changed and the count from being nothing. */
    public ClaimEntry {
        serials = List.copyOf(serials);
        if (certificates < 1) {
            throw new IllegalArgumentException("a claim is for at least one certificate");
        }
    }

    /** The name that a claim of a job has on its papers: job number, hyphen and scheme. */
    public static String reference(String job, SchemeName scheme) {
        return job + "-" + scheme.word();
    }
}
