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
import java.util.stream.Collectors;
import paperbark.batch.Inputs;
import paperbark.batch.Request;
import paperbark.job.Job;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;

/**
 * What the registers behind an office's batches say of its jobs, since the ledger knows no person
 * and no address. A register is read once. Of a job that was forgotten nothing is known, and
 * neither is of one whose register is gone.
 */
final class FiledJobs {
    // A list of some ten thousand jobs takes seconds to read, for a page that is made often.
    private static final long MOST_BYTES = 5_000_000;

    private final Office office;
    private final Map<String, Map<String, Job>> registers = new HashMap<>();

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
        Map<String, Job> register =
                registers.computeIfAbsent(newest.batch(), b -> read(b, newest.day()));
        return Optional.ofNullable(register.get(Keys.job(reference)));
    }

    /** What cannot be read is told where registers are looked after; here it is only not known. */
    private Map<String, Job> read(String batch, LocalDate day) {
        try {
            Optional<Path> register = register(batch);
            if (register.isEmpty() || Files.size(register.get()) > MOST_BYTES) {
                return Map.of();
            }
            return Inputs.read(request(register.get(), day))
                    .result()
                    .map(Inputs::jobs)
                    .orElse(List.of())
                    .stream()
                    .collect(Collectors.toMap(j -> Keys.job(j.reference()), j -> j, (a, b) -> b));
        } catch (IOException | RuntimeException e) {
            return Map.of();
        }
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
