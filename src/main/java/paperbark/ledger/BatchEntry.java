package paperbark.ledger;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * A batch as it goes into the ledger, in one transaction.
 *
 * @param name of the batch and its folder
 * @param register file name of the register
 * @param registerSha256 its hash
 * @param day day of the run
 * @param at moment of the run, for people only
 * @param program version of the program
 * @param manifestSha256 hash of the staged manifest
 * @param place which output folder it belongs to, by that folder's own id
 * @param staged name of the hidden folder in it that waits to be published
 * @param salt a word by chance, from which each job's own is made; never written down
 * @param jobs its jobs
 */
@RecordBuilder
public record BatchEntry(
        String name,
        String register,
        String registerSha256,
        LocalDate day,
        Instant at,
        String program,
        String manifestSha256,
        String place,
        String staged,
        String salt,
        List<JobEntry> jobs) {

    /** Keeps the list from being changed. */
    public BatchEntry {
        jobs = List.copyOf(jobs);
    }

    /** The same batch with the hash of its manifest. */
    public BatchEntry withManifest(String sha256) {
        return BatchEntryBuilder.builder(this).manifestSha256(sha256).build();
    }
}
