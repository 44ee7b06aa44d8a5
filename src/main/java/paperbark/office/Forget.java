package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.batch.AdviceFiles;
import paperbark.disk.Disk;
import paperbark.entitlement.Retention;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.Forgotten;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Proof;
import paperbark.output.paper.Packs;

/**
 * Takes what an office knows of a job's owner out of its ledger and files, once the law no longer
 * wants it kept. The ledger's commit is the decision; the files follow, by the next start at the
 * latest.
 */
public final class Forget {
    private final Office office;
    private final Ledger ledger;

    private Forget(Office office, Ledger ledger) {
        this.office = office;
        this.ledger = ledger;
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
     * @param unread what may tell of the job still, in a sentence each
     */
    public record Result(
            List<JobVersion> versions,
            List<Retention.Period> periods,
            boolean warrantyKnown,
            List<String> done,
            List<String> unread) {

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
        try (Ledger ledger = Ledger.open(lock.office().ledger())) {
            LedgerProof.prove(lock.office(), ledger, new Proof(), ProvedFiles.none());
            Result asked = asked(ledger, lock.office(), order);
            if (asked.versions().isEmpty() || !asked.mayGo(order.today()) || order.onlyShow()) {
                return asked;
            }
            if (asked.versions().stream().anyMatch(v -> !v.forgotten())) {
                ledger.forget(order.job(), order.today(), order.at(), order.version());
            }
            List<String> unread = new ArrayList<>();
            try {
                new HalfMade(lock.office(), ledger).clear(order.at());
                List<String> done =
                        new Forget(lock.office(), ledger)
                                .files(Keys.job(order.job()), order.today(), unread);
                return new Result(asked.versions(), asked.periods(), true, done, unread);
            } catch (IOException e) {
                throw new IOException(
                        "The job is forgotten in the ledger, but not yet in every file ("
                                + e.getMessage()
                                + "). The next start of watch goes on with it.",
                        e);
            }
        }
    }

    private static Result asked(Ledger ledger, Office office, Order order) {
        List<JobVersion> versions = ledger.versions(order.job());
        // What the ledger knows is not shortened by what somebody says.
        Optional<LocalDate> warranty =
                Stream.concat(
                                order.warrantyEnded().stream(),
                                Keeping.warrantyUntil(versions).stream())
                        .max(Comparator.naturalOrder());
        List<Retention.Period> periods =
                versions.isEmpty()
                        ? List.of()
                        : Keeping.of(ledger, order.job(), versions, warranty, office.rules());
        return new Result(versions, periods, warranty.isPresent(), List.of(), List.of());
    }

    /**
     * Takes out of this office's files whatever was forgotten since it last did so: by a run that
     * was kept from finishing, or by another office that shares the ledger.
     *
     * @return the jobs
     */
    static List<String> complete(Office office, Ledger ledger, LocalDate today) throws IOException {
        List<String> jobs = new ArrayList<>();
        for (Forgotten forgotten : ledger.forgottenSince(done(office))) {
            Forget forget = new Forget(office, ledger);
            forget.job(forgotten.job(), today, new ArrayList<>());
            forget.note(forgotten);
            jobs.add(forgotten.job());
        }
        return jobs;
    }

    /** The same, and the files of one job whether or not they have seen it. */
    private List<String> files(String jobKey, LocalDate today, List<String> unread)
            throws IOException {
        List<String> done = new ArrayList<>(job(jobKey, today, unread));
        for (Forgotten forgotten : ledger.forgottenSince(done(office))) {
            if (!forgotten.job().equals(jobKey)) {
                job(forgotten.job(), today, new ArrayList<>());
            }
            note(forgotten);
        }
        return done;
    }

    private void note(Forgotten forgotten) throws IOException {
        Disk.replace(mark(office), (forgotten.entry() + "\n").getBytes(StandardCharsets.UTF_8));
    }

    /** Whether something is forgotten in the ledger and not yet in this office's files. */
    static boolean isUnfinished(Office office, Ledger ledger) throws IOException {
        return !ledger.forgottenSince(done(office)).isEmpty();
    }

    /** Where an office notes the last entry whose forgetting its files have seen. */
    private static Path mark(Office office) {
        return office.packs().resolve(".paperbark-forgotten");
    }

    private static long done(Office office) throws IOException {
        Path mark = mark(office);
        return Files.exists(mark) ? Long.parseLong(Files.readString(mark).strip()) : 0;
    }

    private List<String> job(String job, LocalDate today, List<String> unread) throws IOException {
        // A process that attends the office for weeks remembers what it made papers of.
        Packs.forgetPapers();
        Erasure erasure = new Erasure(job);
        List<String> done = new ArrayList<>();
        List<Path> left = new ArrayList<>();
        // Copies of a batch tell of the job as well.
        BatchFolders batches = new BatchFolders(office, ProvedFiles.none());
        for (JobVersion version : ledger.versions(job)) {
            List<Path> folders = batches.of(office, version.batch());
            Optional<EntryRecord> entry = ledger.records().named(version.batch());
            for (Path batch : entry.isPresent() ? folders : List.<Path>of()) {
                done.addAll(erasure.ofBatch(batch, version.pack(), ledger.id(), entry.get(), left));
            }
            if (folders.isEmpty() || entry.isEmpty()) {
                unread.add(
                        "packs/"
                                + version.batch()
                                + " is not here; an office that shares the ledger forgets it with its"
                                + " next watch, and one that was moved away is yours to look into.");
            }
        }
        done.addAll(erasure.ofLists(office.filed(), left));
        done.addAll(erasure.ofLists(office.returned(), left));
        done.addAll(erasure.ofSigned(office, left));
        done.addAll(erasure.ofDrafts(office));
        done.addAll(PhotoErasure.of(office, ledger, job, left));
        done.addAll(week());
        done.addAll(copies(today, left));
        AdviceFiles.complete(ledger, AdviceFiles.beside(office.ledger()));
        left.forEach(
                file ->
                        unread.add(
                                office.root().relativize(file)
                                        + " was left as it is and may tell of the job still; delete"
                                        + " it if you need it no more."));
        if (Office.list(office.intake()).stream().anyMatch(f -> !Office.isHidden(f))) {
            unread.add("the lists in intake were not looked into.");
        }
        return done;
    }

    /** The page of the week may show the owner's number; whoever works next makes it anew. */
    private List<String> week() throws IOException {
        List<String> done = new ArrayList<>();
        for (String ending : List.of(".html", ".pdf", ".eml")) {
            if (Files.deleteIfExists(office.week(ending))) {
                done.add("deleted week" + ending);
            }
        }
        return done;
    }

    /** Older copies of the ledger tell of the job still; a fresh one takes their place. */
    private List<String> copies(LocalDate today, List<Path> unread) throws IOException {
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
