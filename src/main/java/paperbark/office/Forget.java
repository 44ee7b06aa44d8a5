package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.batch.AdviceFiles;
import paperbark.batch.Erasure;
import paperbark.batch.Keeping;
import paperbark.batch.OutputFolder;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Proof;

/**
 * Takes what an office knows of a job's owner out of its ledger and files, once the law no longer
 * wants it kept. The ledger's commit is the decision; the files follow, by the next start at the
 * latest.
 */
public final class Forget {
    private final Office office;
    private final String place;

    private Forget(Office office) throws IOException {
        this.office = office;
        this.place = OutputFolder.id(office.packs());
    }

    /**
     * What is to be forgotten.
     *
     * @param job the job number
     * @param today the day, which decides whether it may be
     * @param at moment, for people only
     * @param version version of the program
     * @param warrantyEnded when the last warranty ended, where a person says so
     * @param onlyShow whether nothing is to be changed
     */
    public record Order(
            String job,
            LocalDate today,
            Instant at,
            String version,
            Optional<LocalDate> warrantyEnded,
            boolean onlyShow) {}

    /**
     * What came of it.
     *
     * @param versions what the ledger has of the job; none when it does not know it
     * @param periods for how long it must be kept, the longest first
     * @param warrantyKnown whether it is known when the last warranty ends
     * @param done what was changed, a line a file; nothing while it must be kept
     * @param unread files that were left as they are, and may tell of the job still
     */
    public record Result(
            List<JobVersion> versions,
            List<Keeping> periods,
            boolean warrantyKnown,
            List<String> done,
            List<Path> unread) {

        /** Whether the time is over for which it must be kept. */
        public boolean mayGo(LocalDate today) {
            return warrantyKnown && periods.stream().noneMatch(p -> !today.isAfter(p.until()));
        }
    }

    /**
     * Forgets a job, if it may be forgotten.
     *
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted
     * @throws IOException when a file cannot be read or written; a second run completes it
     */
    public static Result run(OfficeLock lock, Order order) throws IOException {
        Forget forget = new Forget(lock.office());
        try (Ledger ledger = Ledger.open(lock.office().ledger())) {
            LedgerProof.prove(lock.office(), ledger, new Proof());
            Result asked = asked(ledger, lock.office(), order);
            if (asked.versions().isEmpty() || !asked.mayGo(order.today()) || order.onlyShow()) {
                return asked;
            }
            if (asked.versions().stream().anyMatch(v -> !v.forgotten())) {
                ledger.forget(
                        order.job(), order.today(), order.at(), order.version(), forget.place);
            }
            List<Path> unread = new ArrayList<>();
            List<String> done = forget.files(ledger, order.job(), order.today(), unread);
            return new Result(asked.versions(), asked.periods(), true, done, unread);
        }
    }

    private static Result asked(Ledger ledger, Office office, Order order) {
        List<JobVersion> versions = ledger.versions(order.job());
        boolean known = order.warrantyEnded().or(() -> Keeping.warrantyUntil(versions)).isPresent();
        List<Keeping> periods =
                versions.isEmpty()
                        ? List.of()
                        : Keeping.of(
                                ledger,
                                order.job(),
                                versions,
                                order.warrantyEnded(),
                                office.rules());
        return new Result(versions, periods, known, List.of(), List.of());
    }

    /** Completes what an earlier run had decided and was kept from finishing. */
    static void complete(Office office, Ledger ledger, LocalDate today) throws IOException {
        Forget forget = new Forget(office);
        for (String job : ledger.halfForgotten(forget.place)) {
            forget.files(ledger, job, today, new ArrayList<>());
        }
    }

    private List<String> files(Ledger ledger, String job, LocalDate today, List<Path> unread)
            throws IOException {
        Erasure erasure = new Erasure(job);
        List<String> done = new ArrayList<>();
        for (JobVersion version : ledger.versions(job)) {
            Path batch = office.packs().resolve(version.batch());
            Optional<EntryRecord> entry = ledger.entry(version.batch());
            if (Files.isDirectory(batch) && entry.isPresent()) {
                done.addAll(
                        erasure.ofBatch(batch, version.pack(), ledger.id(), entry.get(), unread));
            }
        }
        done.addAll(erasure.ofLists(office.filed(), unread));
        done.addAll(erasure.ofLists(office.returned(), unread));
        done.addAll(copies(ledger, today, unread));
        AdviceFiles.complete(ledger, AdviceFiles.beside(office.ledger()));
        ledger.forgotten(job, place);
        return done;
    }

    /** Older copies of the ledger tell of the job still; a fresh one takes their place. */
    private List<String> copies(Ledger ledger, LocalDate today, List<Path> unread)
            throws IOException {
        List<String> done = new ArrayList<>();
        Backups.renew(office, ledger, today).forEach(old -> done.add("deleted backups/" + old));
        for (Path file : Office.list(office.root())) {
            String name = file.getFileName().toString();
            if (name.startsWith("paperbark-set-aside")) {
                // Perhaps somebody still wants to know what had happened to it.
                unread.add(file);
            } else if (name.startsWith(LedgerPlace.FILE + ".schema-")) {
                Files.delete(file);
                done.add("deleted " + name);
            }
        }
        return done;
    }
}
