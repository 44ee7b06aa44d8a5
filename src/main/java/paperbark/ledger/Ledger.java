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
import java.util.Set;
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
        database.prove(sql, new Chain(sql)::verify);
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
     * What a batch would add, without adding it.
     *
     * @throws LedgerBusyException also when a serial was claimed meanwhile for another job
     */
    public EntryRecord rehearse(BatchEntry batch) {
        return sql.rehearse(
                () -> {
                    new Recorder(sql).batch(batch);
                    return records().newest();
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
                    if (!records().newest().addsTheSame(rehearsed)) {
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

    /** Its entries as they lie in it. */
    public Records records() {
        return new Records(sql);
    }

    /** How its batches stand. */
    public Batches batches() {
        return new Batches(sql);
    }

    /** What the firm earned and what came. */
    public Income income() {
        return new Income(sql);
    }

    /** Who the ledger is. */
    public LedgerId id() {
        return records().office();
    }

    /**
     * Makes a ledger anew from what was entered into another.
     *
     * @param place where nothing must be yet
     * @param records everything that was entered, in the order of work
     * @throws LedgerException when they do not fit together
     */
    public static void rebuild(LedgerPlace place, LedgerId id, List<EntryRecord> records) {
        Database.of(place).create(id, sql -> new RecordWriter(sql).addAll(records));
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
        List<EntryRecord> entries = records().all();
        List<EntryProgress.Came> came = new EntryProgress(sql).all(Schema.VERSION);
        Database.of(other)
                .create(
                        id(),
                        copy -> {
                            new RecordWriter(copy).addAll(entries);
                            new EntryProgress(copy).bringBack(came);
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

    /**
     * Copies the ledger, whole, into a file that must not exist yet.
     *
     * @throws LedgerException when it cannot be written
     */
    public void copyTo(Path copy) {
        database.copy(this, sql, copy);
    }

    /** All claims that stand, as they stood at the end of a day, in the order of claiming. */
    public List<ClaimState> claims(LocalDate asOf) {
        return new ClaimReader(sql).standing(asOf);
    }

    /** Claims that stand no longer at the end of a day and of which money is here. */
    public List<ClaimState> paidBefore(LocalDate asOf) {
        return new ClaimReader(sql).paidBefore(asOf);
    }

    /** All claims, standing or withdrawn, as of now, in the order of claiming. */
    public List<ClaimState> allClaims() {
        return new ClaimReader(sql).all();
    }

    /** Whether no claim was made, called off, lodged, paid or failed on a day after this one. */
    public boolean endsBy(LocalDate day) {
        return new ClaimReader(sql).endBy(day);
    }

    /** Every job by its newest version, in the order of job numbers. */
    public List<CurrentJob> currentJobs() {
        return new Versions(sql).current();
    }

    /** What the jobs of a batch are compared by; see {@link Keys#job}. */
    public Set<String> keysIn(String batch) {
        return new Versions(sql).keysIn(batch);
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
                    String before = records().end();
                    new Withdrawing(sql).enter(withdrawal);
                    return !records().end().equals(before);
                });
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
