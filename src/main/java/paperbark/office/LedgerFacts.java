package paperbark.office;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import paperbark.ledger.ClaimState;
import paperbark.ledger.CurrentJob;
import paperbark.ledger.Ledger;
import paperbark.ledger.Lodging;

/**
 * What a ledger says on a day. Whatever reads all claims or all jobs is asked once, however many
 * pages show it; for that it must not be kept longer than it takes to make them.
 */
final class LedgerFacts {
    private final Ledger ledger;
    private final LocalDate today;
    private Optional<List<ClaimState>> all = Optional.empty();
    private Optional<List<ClaimState>> claims = Optional.empty();
    private Optional<List<CurrentJob>> jobs = Optional.empty();
    private Optional<Optional<Lodging>> lodging = Optional.empty();

    /** Asks a ledger that stays open. */
    LedgerFacts(Ledger ledger, LocalDate today) {
        this.ledger = ledger;
        this.today = today;
    }

    /** The ledger, for what concerns one job or batch. */
    Ledger ledger() {
        return ledger;
    }

    LocalDate today() {
        return today;
    }

    /** All claims, standing or withdrawn, as of now, in the order of claiming. */
    List<ClaimState> allClaims() {
        if (all.isEmpty()) {
            all = Optional.of(ledger.allClaims());
        }
        return all.get();
    }

    /** All claims that stand, as they stand at the end of the day, in the order of claiming. */
    List<ClaimState> claims() {
        if (claims.isEmpty()) {
            // Where nothing is of a later day, what stands now is what stands on the day.
            claims =
                    Optional.of(
                            ledger.endsBy(today)
                                    ? allClaims().stream().filter(ClaimState::active).toList()
                                    : ledger.claims(today));
        }
        return claims.get();
    }

    /** Every job by its newest version, in the order of job numbers. */
    List<CurrentJob> currentJobs() {
        if (jobs.isEmpty()) {
            jobs = Optional.of(ledger.currentJobs());
        }
        return jobs.get();
    }

    /** How the assignments of claims stand; empty where no papers are scanned. */
    Optional<Lodging> lodging() {
        if (lodging.isEmpty()) {
            lodging = Optional.of(Lodging.of(ledger, claims(), today));
        }
        return lodging.get();
    }
}
