package paperbark.ledger;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import paperbark.value.SchemeName;

/**
 * A job as it goes into the ledger.
 *
 * @param reference the firm's job number
 * @param row row of the register
 * @param corrects what the row says that it corrects
 * @param outcome what the batch did with it
 * @param pack path of its pack in the batch folder
 * @param installedOn day of the installation; empty while it is only booked
 * @param warrantyUntil last day of the longest warranty given, where known
 * @param siteKey what two sites are compared by; empty text where the address is incomplete
 * @param prints the prints of its facts
 * @param sale what the owner was charged, where known
 * @param claims the claims whose papers went out
 * @param held schemes that it claims under and whose paper is held: an earlier claim that the buyer
 *     has stands
 * @param papers the papers that were printed
 * @param asItWas whether nobody knows if the row is the job of that number: what stands of its
 *     claims stays
 */
public record JobEntry(
        String reference,
        int row,
        Optional<String> corrects,
        JobOutcome outcome,
        String pack,
        Optional<LocalDate> installedOn,
        Optional<LocalDate> warrantyUntil,
        String siteKey,
        Prints prints,
        Optional<Sale> sale,
        List<ClaimEntry> claims,
        Set<SchemeName> held,
        List<PaperEntry> papers,
        boolean asItWas) {

    /** Keeps the lists from being changed. */
    public JobEntry {
        claims = List.copyOf(claims);
        held = Set.copyOf(held);
        papers = List.copyOf(papers);
    }

    /** A row that is the job of that number. */
    public JobEntry(
            String reference,
            int row,
            Optional<String> corrects,
            JobOutcome outcome,
            String pack,
            Optional<LocalDate> installedOn,
            Optional<LocalDate> warrantyUntil,
            String siteKey,
            Prints prints,
            Optional<Sale> sale,
            List<ClaimEntry> claims,
            Set<SchemeName> held,
            List<PaperEntry> papers) {
        this(
                reference,
                row,
                corrects,
                outcome,
                pack,
                installedOn,
                warrantyUntil,
                siteKey,
                prints,
                sale,
                claims,
                held,
                papers,
                false);
    }
}
