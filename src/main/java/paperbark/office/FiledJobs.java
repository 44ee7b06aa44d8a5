package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.batch.Inputs;
import paperbark.batch.Request;
import paperbark.job.Job;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;

/**
 * What the registers behind an office's batches say of its jobs, since the ledger knows no person
 * and no address. A register is read once as long as it stays the same; whoever keeps this longer
 * makes a new one when the firm's tables change. Of a job that was forgotten nothing is known, and
 * neither is of one whose register is gone.
 */
final class FiledJobs {
    // A list of some ten thousand jobs takes seconds to read, for a page that is made often.
    private static final long MOST_BYTES = 5_000_000;

    private final Office office;
    private final Map<String, Read> registers = new HashMap<>();

    /** The jobs of a batch, and what tells whether their register is still the same. */
    private record Read(String stamp, Map<String, Job> jobs) {}

    FiledJobs(Office office) {
        this.office = office;
    }

    /** The job as its newest version was prepared, by the ledger that told of the others too. */
    Optional<Job> of(Ledger ledger, String reference) {
        List<JobVersion> versions = ledger.versions(reference);
        if (versions.isEmpty() || versions.get(versions.size() - 1).forgotten()) {
            return Optional.empty();
        }
        JobVersion newest = versions.get(versions.size() - 1);
        return Optional.ofNullable(jobs(ledger, newest).get(Keys.job(reference)));
    }

    /** What cannot be read is told where registers are looked after; here it is only not known. */
    private Map<String, Job> jobs(Ledger ledger, JobVersion version) {
        try {
            Optional<Path> register = register(version.batch());
            String stamp = register.isPresent() ? stamp(register.get()) : "";
            Read before = registers.get(version.batch());
            if (before == null || !before.stamp().equals(stamp)) {
                Map<String, Job> jobs =
                        register.isPresent()
                                ? read(register.get(), version.day())
                                : new HashMap<>();
                // A list that grows all the time is many batches' register.
                jobs.keySet().retainAll(ledger.keysIn(version.batch()));
                before = new Read(stamp, jobs);
                registers.put(version.batch(), before);
            }
            return before.jobs();
        } catch (IOException e) {
            return Map.of();
        }
    }

    private static String stamp(Path register) throws IOException {
        return Files.size(register) + " " + Files.getLastModifiedTime(register);
    }

    private Map<String, Job> read(Path register, LocalDate day) throws IOException {
        Map<String, Job> jobs = new HashMap<>();
        if (Files.size(register) <= MOST_BYTES) {
            try {
                Inputs.read(request(register, day))
                        .result()
                        .map(Inputs::jobs)
                        .orElse(List.of())
                        .forEach(j -> jobs.put(Keys.job(j.reference()), j));
            } catch (RuntimeException unreadable) {
                jobs.clear();
            }
        }
        return jobs;
    }

    /** As it was filed; where the batch was prepared by hand, its marked-up copy. */
    private Optional<Path> register(String batch) throws IOException {
        for (Path year : Office.list(office.filed())) {
            for (Path file : Office.list(year.resolve(batch))) {
                if (!Office.isHidden(file) && Files.isRegularFile(file)) {
                    return Optional.of(file);
                }
            }
        }
        return Optional.of(office.packs().resolve(batch).resolve("register-checked.xlsx"))
                .filter(Files::isRegularFile);
    }

    private Request request(Path register, LocalDate day) {
        Instant at = day.atStartOfDay(ZoneOffset.UTC).toInstant();
        return new Request(
                new Request.Register(register, Optional.empty()),
                new Request.FirmFiles(office.tables(), office.templates(), office.rules()),
                office.packs(),
                new Request.Run(day, at, ""),
                Request.Extras.NONE,
                Request.LedgerUse.NONE);
    }
}
