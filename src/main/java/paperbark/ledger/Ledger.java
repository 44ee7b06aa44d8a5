package paperbark.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import paperbark.fault.FaultPoint;
import paperbark.fault.Trace;
import paperbark.firm.SchemeName;
import paperbark.job.Job;
import paperbark.value.Money;

/**
 * What the firm claimed, and what became of it. Rows are only ever added; each entry is sealed, see
 * {@link Chain}. One program writes at a time.
 */
public final class Ledger implements AutoCloseable {
    private final Connection connection;
    private final Sql sql;

    private Ledger(Connection connection) {
        this.connection = connection;
        this.sql = new Sql(connection);
    }

    /**
     * Makes a new, empty ledger.
     *
     * @param at moment of making, for people only
     * @throws LedgerException when there is a file of that name
     */
    public static void create(Path file, Instant at) {
        LedgerFile.create(file, at);
    }

    /**
     * Opens a ledger that is there.
     *
     * @throws LedgerException when it is missing, empty, damaged, not a ledger, or of a newer
     *     program; the file is left as it is
     */
    public static Ledger open(Path file) {
        return new Ledger(LedgerFile.open(file));
    }

    /**
     * Proves that the ledger is as it was written: the pages, then every row.
     *
     * @throws LedgerException naming what is not
     */
    public void verify() {
        String pages = sql.first("PRAGMA integrity_check", r -> r.getString(1)).orElse("");
        if (!pages.equals("ok")) {
            throw new LedgerException(
                    "The ledger's file is damaged (" + pages + ").", LedgerFile.REMEDY);
        }
        new Chain(sql).verify();
    }

    /** The seal of the newest entry; the office's own where there is none. */
    String end() {
        return new Chain(sql).before(newestSeq() + 1);
    }

    /** The seal that the newest entry is sealed upon. */
    String beforeEnd() {
        return new Chain(sql).before(newestSeq());
    }

    private long newestSeq() {
        return sql.number("SELECT max(seq) FROM entry");
    }

    /** What it knows that concerns a job. */
    public JobHistory history(Job job) {
        return new Histories(sql).of(job);
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

    /** Who the ledger is. */
    public LedgerId id() {
        return new Records(sql).office();
    }

    /** Everything that was ever entered, in the order of work. */
    public List<EntryRecord> records() {
        return new Records(sql).all();
    }

    /** The advices taken in, in the order of work. */
    public List<EntryRecord> advices() {
        return new Records(sql).ofKind("advice");
    }

    /** Whether a batch of that name was ever taken in. */
    public boolean knows(String batch) {
        return sql.number("SELECT count(*) FROM entry WHERE name = ?", batch) > 0;
    }

    /**
     * Makes a ledger anew from what was entered into another.
     *
     * @param file a file that must not exist yet
     * @param records everything that was entered, in the order of work
     * @throws LedgerException when they do not fit together; the file is of no use then
     */
    public static void rebuild(Path file, LedgerId id, List<EntryRecord> records) {
        LedgerFile.create(file, id);
        try (Ledger ledger = open(file)) {
            ledger.sql.whole(
                    () -> {
                        records.forEach(new Records(ledger.sql)::add);
                        return null;
                    });
            ledger.verify();
        }
    }

    /** Notes that the folder of a batch is where people see it. */
    public void published(String batch) {
        sql.run(
                "UPDATE progress SET state = 'published' WHERE entry = (SELECT seq FROM entry WHERE name = ?)",
                batch);
    }

    /** Notes that the register of a batch is where it stays. */
    public void filed(String batch) {
        sql.run(
                "UPDATE progress SET state = 'filed' WHERE entry = (SELECT seq FROM entry WHERE name = ?)",
                batch);
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
        return batches("AND e.source_sha256 = ?", registerSha256);
    }

    /** The newest batches, newest first. */
    public List<BatchState> newest(int howMany) {
        return batches(
                "AND e.seq IN (SELECT seq FROM entry WHERE kind = 'batch' ORDER BY seq DESC LIMIT ?)",
                howMany);
    }

    /** Published batches whose register is not known to be where it stays. */
    public List<BatchState> unfiled() {
        return batches("AND p.state = ?", "published");
    }

    private List<BatchState> batches(String condition, Object parameter) {
        return sql.list(
                "SELECT e.name, e.source_name, e.day, p.state, count(j.reference),"
                        + " sum(CASE WHEN j.outcome = 'held' AND NOT EXISTS (SELECT 1 FROM job n"
                        + " WHERE n.job_key = j.job_key AND n.version > j.version) THEN 1 ELSE 0 END)"
                        + " FROM entry e JOIN progress p ON p.entry = e.seq"
                        + " LEFT JOIN job j ON j.entry = e.seq WHERE e.kind = 'batch' "
                        + condition
                        + " GROUP BY e.seq, e.name, e.source_name, e.day, p.state ORDER BY e.seq DESC",
                r ->
                        new BatchState(
                                r.getString(1),
                                r.getString(2),
                                LocalDate.parse(r.getString(3)),
                                r.getString(4).equals("filed"),
                                r.getInt(5),
                                r.getInt(6)),
                parameter);
    }

    /**
     * Copies the ledger, whole, into a file that must not exist yet.
     *
     * @throws LedgerException when it cannot be written
     */
    public void copyTo(Path copy) {
        sql.run("VACUUM INTO ?", copy.toString());
    }

    /**
     * A batch whose folder is not known to be published.
     *
     * @param name of the batch
     * @param staged name of its hidden folder
     * @param manifestSha256 hash of its manifest
     */
    public record Unpublished(String name, String staged, String manifestSha256) {}

    /** Batches that were taken in and whose folder may still be hidden. */
    public List<Unpublished> unpublished() {
        return sql.list(
                "SELECT e.name, p.staged, e.detail_sha256 FROM progress p JOIN entry e ON e.seq = p.entry"
                        + " WHERE p.state = 'committed' ORDER BY e.seq",
                r -> new Unpublished(r.getString(1), r.getString(2), r.getString(3)));
    }

    /** All claims that stand, as they stood at the end of a day, in the order of claiming. */
    public List<ClaimState> claims(LocalDate asOf) {
        return new Claims(sql).standing(asOf);
    }

    /** What owners were charged, by the newest version of each job. */
    public List<Sale> sales() {
        return sql.list(
                "SELECT s.installed_on, s.price_cents, s.gst_cents FROM sale s"
                        + " WHERE s.version = (SELECT max(version) FROM sale n WHERE n.job_key = s.job_key)"
                        + " ORDER BY s.installed_on, s.job_key",
                r ->
                        new Sale(
                                LocalDate.parse(r.getString(1)),
                                Money.ofCents(r.getLong(2)),
                                Money.ofCents(r.getLong(3))));
    }

    /** All money that came or was taken back, in the order in which it was taken in. */
    public List<Payment> payments() {
        return sql.list(
                "SELECT m.day, c.scheme, m.cents FROM matched m JOIN claim c ON c.id = m.claim"
                        + " WHERE m.kind = 'paid' ORDER BY m.line",
                r ->
                        new Payment(
                                LocalDate.parse(r.getString(1)),
                                SchemeName.valueOf(r.getString(2)),
                                Money.ofCents(r.getLong(3))));
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
