package paperbark.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import paperbark.fault.FaultPoint;
import paperbark.fault.Trace;
import paperbark.job.Job;
import paperbark.value.SchemeName;

/**
 * What the firm claimed, and what became of it. Rows are only ever added; each entry is sealed, see
 * {@link Chain}. One program writes at a time.
 */
public final class Ledger implements AutoCloseable {
    private static final int SHOWN = 16;

    private final LedgerPlace place;
    private final Database database;
    private final Connection connection;
    private final Sql sql;
    private Optional<PrintKey> printKey = Optional.empty();

    private Ledger(LedgerPlace place) {
        this.place = place;
        this.database = Database.of(place);
        this.connection = database.open();
        this.sql = new Sql(connection, database);
    }

    /**
     * Makes a new, empty ledger, and its key where there is none beside it.
     *
     * @param at moment of making, for people only
     * @throws LedgerException when there is something already
     */
    public static void create(LedgerPlace place, Instant at) {
        LedgerId id = new LedgerId(UUID.randomUUID().toString(), at.toString());
        Database.of(place).create(id, sql -> {});
        PrintKey.of(place);
    }

    /** The same in a file. */
    public static void create(Path file, Instant at) {
        create(new LedgerPlace.InFile(file), at);
    }

    /**
     * Opens a ledger that is there.
     *
     * @throws LedgerException when it is missing, empty, damaged, not a ledger, or of a newer
     *     program; it is left as it is
     */
    public static Ledger open(LedgerPlace place) {
        return new Ledger(place);
    }

    /** The same of a file. */
    public static Ledger open(Path file) {
        return open(new LedgerPlace.InFile(file));
    }

    /**
     * Proves that the ledger is as it was written: the pages, then every row.
     *
     * @throws LedgerException naming what is not
     */
    public void verify() {
        database.prove(sql);
        new Chain(sql).verify();
    }

    /** The seal of the newest entry; the office's own where there is none. */
    String end() {
        return seal(newestSeq());
    }

    /** The seal that the newest entry is sealed upon. */
    String beforeEnd() {
        return seal(newestSeq() - 1);
    }

    private String seal(long seq) {
        return new Records(sql).seals(seq, seq).getOrDefault(seq, "");
    }

    private long newestSeq() {
        return sql.number("SELECT max(seq) FROM entry");
    }

    /** What it knows that concerns a job. */
    public JobHistory history(Job job) {
        if (printKey.isEmpty()) {
            printKey = PrintKey.in(place);
        }
        return new Histories(sql, printKey).of(job);
    }

    /** The prints of a job, by which a later batch can tell what changed in it. */
    public Prints prints(Job job) {
        if (printKey.isEmpty()) {
            printKey = Optional.of(PrintKey.of(place));
        }
        return Prints.of(job, printKey.get());
    }

    /**
     * Takes in a batch, whole or not at all.
     *
     * @throws LedgerBusyException also when a serial was claimed meanwhile for another job
     */
    public void enter(BatchEntry batch) {
        sql.whole(
                () -> {
                    new Recorder(sql).batch(batch);
                    FaultPoint.IN_TRANSACTION.reach();
                    return null;
                });
        Trace.COMMIT.of();
    }

    /**
     * What a batch would add, without adding it.
     *
     * @throws LedgerBusyException as {@link #enter(BatchEntry)} does
     */
    public EntryRecord rehearse(BatchEntry batch) {
        return sql.rehearse(
                () -> {
                    new Recorder(sql).batch(batch);
                    return new Records(sql).newest();
                });
    }

    /**
     * Takes in a batch, whole or not at all, provided that it adds what it did when rehearsed.
     *
     * @throws LedgerBusyException also when another program wrote in the ledger since the rehearsal
     * @throws CommitUnknown when nobody can say whether it was taken in
     */
    public void enter(BatchEntry batch, EntryRecord rehearsed) {
        sql.whole(
                () -> {
                    new Recorder(sql).batch(batch);
                    if (!new Records(sql).newest().addsTheSame(rehearsed)) {
                        throw new LedgerBusyException(
                                "Another program wrote in the ledger meanwhile.",
                                "Prepare the register again.");
                    }
                    FaultPoint.IN_TRANSACTION.reach();
                    return null;
                });
        Trace.COMMIT.of();
    }

    /** What to do with the ledger when it is not as it was written. */
    public String remedy() {
        return database.remedy();
    }

    /** Who the ledger is. */
    public LedgerId id() {
        return new Records(sql).office();
    }

    /** Everything that was ever entered, in the order of work. */
    public List<EntryRecord> records() {
        return new Records(sql).all();
    }

    /** What was entered before a certain entry, in the order of work. */
    public List<EntryRecord> recordsBefore(long seq) {
        return new Records(sql).between(1, seq - 1);
    }

    /** Everything but the batches, which have folders of their own, in the order of work. */
    public List<EntryRecord> withoutFolder() {
        return new Records(sql).allBut("batch");
    }

    /** What the ledger says to an entry that lies elsewhere too. */
    public enum Knows {
        /** It has the same. */
        SAME,
        /** It has another one in its place. */
        OTHERWISE,
        /** It ends before it. */
        NOTHING
    }

    /** Holds an entry that was found elsewhere against the one here. */
    public Knows knows(EntryRecord told) {
        return new Records(sql).knows(told);
    }

    /** Whether everything up to the end of a copy is here as the copy has it. */
    public Knows knows(Ledger copy) {
        String here = seal(copy.newestSeq());
        return here.equals(copy.end())
                ? Knows.SAME
                : here.isEmpty() ? Knows.NOTHING : Knows.OTHERWISE;
    }

    /** The newest entry's number and the beginning of its seal, for people and paper. */
    public String lastSeal() {
        return "entry "
                + newestSeq()
                + ", seal "
                + end().substring(0, SHOWN).replaceAll("(.{4})(?=.)", "$1 ");
    }

    /** The day of the newest entry; empty while there is none. */
    public Optional<LocalDate> newestDay() {
        return sql.first(
                "SELECT day FROM entry ORDER BY seq DESC LIMIT 1",
                r -> LocalDate.parse(r.getString(1)));
    }

    /** Whether a batch was taken in whose manifest has that hash, wherever it is published. */
    public boolean hasManifest(String sha256) {
        return sql.number("SELECT count(*) FROM entry WHERE detail_sha256 = ?", sha256) > 0;
    }

    /** How far every batch has come, oldest first. */
    public List<BatchProgress> progress() {
        return new Progress(sql).batches();
    }

    /** The seals of all entries by their numbers. */
    public Map<Long, String> seals() {
        return new Records(sql).seals(1, newestSeq());
    }

    /** Batches whose folder is known to be published in an output folder, oldest first. */
    public List<String> publishedIn(String place) {
        return new Progress(sql).published(place);
    }

    /** Whether a batch of that name was ever taken in. */
    public boolean knows(String batch) {
        return sql.number("SELECT count(*) FROM entry WHERE name = ?", batch) > 0;
    }

    /**
     * Makes a ledger anew from what was entered into another.
     *
     * @param place where nothing must be yet
     * @param records everything that was entered, in the order of work
     * @throws LedgerException when they do not fit together
     */
    public static void rebuild(LedgerPlace place, LedgerId id, List<EntryRecord> records) {
        Database.of(place).create(id, sql -> new Records(sql).addAll(records));
        try (Ledger ledger = open(place)) {
            ledger.verify();
        }
    }

    /**
     * Makes a new ledger with everything that this one holds, with its identity, and with its key
     * where there is none beside the new one.
     */
    public void takenOverBy(LedgerPlace other) {
        copyWholeTo(other);
        PrintKey.carry(place, other);
    }

    /** Copies every entry, and how far each has come, to where no ledger is. */
    void copyWholeTo(LedgerPlace other) {
        List<EntryRecord> entries = records();
        List<Progress.Came> came = new Progress(sql).all(Schema.VERSION);
        Database.of(other)
                .create(
                        id(),
                        copy -> {
                            new Records(copy).addAll(entries);
                            new Progress(copy).bringBack(came);
                        });
        try (Ledger ledger = open(other)) {
            ledger.verify();
        }
    }

    /**
     * Whether what changed in the newest jobs can be told: nothing is printed yet, or the key is
     * here that it was printed with.
     *
     * @throws LedgerException when the file of the key is not as it was written
     */
    public boolean hasItsKey() {
        return sql.first(
                        "SELECT print_key FROM personal WHERE print_key <> ''"
                                + " ORDER BY entry DESC LIMIT 1",
                        r -> r.getString(1))
                .map(id -> PrintKey.in(place).filter(key -> key.id().equals(id)).isPresent())
                .orElse(true);
    }

    /** Notes that the folder of a batch is where people see it. */
    public void published(String batch) {
        new Progress(sql).note(batch, "published");
    }

    /** Notes that the register of a batch is where it stays. */
    public void filed(String batch) {
        new Progress(sql).note(batch, "filed");
    }

    /**
     * A batch as the office folder lists it.
     *
     * @param name of the batch
     * @param register file name of its register
     * @param day day of the run
     * @param filed whether its register is where it stays
     * @param jobs how many jobs
     * @param held how many of them are held still: no later batch has them
     */
    public record BatchState(
            String name, String register, LocalDate day, boolean filed, int jobs, int held) {}

    /** Batches made from exactly these bytes, newest first. */
    public List<BatchState> batchesOf(String registerSha256) {
        return new Batches(sql).of(registerSha256);
    }

    /** The newest batches of all output folders, newest first. */
    public List<BatchState> newest(int howMany) {
        return new Batches(sql).newest(howMany);
    }

    /** Batches of days after a certain one, newest first. */
    public List<BatchState> after(LocalDate day) {
        return new Batches(sql).after(day);
    }

    /** The newest batches of an output folder, newest first. */
    public List<BatchState> newest(int howMany, String place) {
        return new Batches(sql).newest(howMany, place);
    }

    /** Published batches of an output folder whose register is not known to be where it stays. */
    public List<BatchState> unfiled(String place) {
        return new Batches(sql).unfiled(place);
    }

    /**
     * Copies the ledger, whole, into a file that must not exist yet.
     *
     * @throws LedgerException when it cannot be written
     */
    public void copyTo(Path copy) {
        database.copy(this, sql, copy);
    }

    /**
     * A batch whose folder is not known to be published.
     *
     * @param name of the batch
     * @param staged name of its hidden folder in the output folder
     * @param manifestSha256 hash of its manifest
     */
    public record Unpublished(String name, String staged, String manifestSha256) {}

    /** Batches of an output folder that were taken in and may still be hidden there. */
    public List<Unpublished> unpublished(String place) {
        return new Progress(sql).unpublished(place);
    }

    /** All claims that stand, as they stood at the end of a day, in the order of claiming. */
    public List<ClaimState> claims(LocalDate asOf) {
        return new ClaimReader(sql).standing(asOf);
    }

    /** What owners were charged, by the newest version of each job. */
    public List<Sale> sales() {
        return new Income(sql).sales();
    }

    /** All money that came or was taken back, in the order in which it was taken in. */
    public List<Receipt> receipts() {
        return new Income(sql).receipts();
    }

    /** Everything that was entered of a job, the oldest version first. */
    public List<JobVersion> versions(String reference) {
        return new Versions(sql).of(Keys.job(reference));
    }

    /** The last days on which certificates of a job could be created, by scheme. */
    public Map<SchemeName, LocalDate> lastDays(String reference) {
        return new Versions(sql).lastDays(Keys.job(reference));
    }

    /**
     * Empties what every version of a job tells of a person, whole or not at all.
     *
     * @param at moment, for people only
     */
    public void forget(String reference, LocalDate day, Instant at, String program) {
        sql.whole(
                () -> {
                    new Forgetting(sql).enter(Keys.job(reference), day, at, program);
                    return null;
                });
        // What was emptied leaves the file only when its pages are written anew.
        sql.run("VACUUM");
    }

    /**
     * Books jobs out, whole or not at all: they are not owed, their serials and sites are free.
     *
     * @return whether there was anything to book out
     */
    public boolean withdraw(WithdrawalEntry withdrawal) {
        return sql.whole(
                () -> {
                    long before = newestSeq();
                    new Withdrawing(sql).enter(withdrawal);
                    return newestSeq() > before;
                });
    }

    /** Whether a job of a batch was booked out since. */
    public boolean hasWithdrawn(String batch) {
        return sql.number(
                        "SELECT count(*) FROM job j JOIN entry e ON e.seq = j.entry"
                                + " JOIN withdrawn w ON w.job_key = j.job_key AND w.version >= j.version"
                                + " WHERE e.name = ?",
                        batch)
                > 0;
    }

    /** The claims of a job, standing or not, as of now. */
    public List<ClaimState> claimsOf(String reference) {
        return new ClaimReader(sql).where("c.job_key = ?", Keys.job(reference));
    }

    /**
     * Jobs with claims that stood in earlier versions of a list and do not stand in it any more.
     *
     * @param register file name of the list
     * @param jobs the numbers of all jobs in it
     */
    public List<GoneJobs> gone(String register, Collection<String> jobs) {
        return new OlderLists(sql).gone(register, jobs);
    }

    /** Jobs that were forgotten after a certain entry, in that order. */
    public List<Forgotten> forgottenSince(long entry) {
        return new Versions(sql).forgottenSince(entry);
    }

    /** The entry of a batch as it is now. */
    public Optional<EntryRecord> entry(String batch) {
        return new Records(sql).named(batch);
    }

    /** Takes in an advice, whole or not at all. */
    public <T> T settle(AdviceBook.Source source, Function<AdviceBook, T> work) {
        return sql.whole(
                () -> {
                    AdviceBook book = new AdviceBook(sql, source);
                    T result = work.apply(book);
                    book.seal();
                    return result;
                });
    }

    /** Everything in it, for {@link Export}. */
    Sql sql() {
        return sql;
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw new LedgerException("The ledger could not be closed.", "Try again.", e);
        }
    }
}
