package paperbark.ledger;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import paperbark.value.Money;

/**
 * What a person says of claims where no advice tells it, within the transaction of an {@link
 * AdviceBook}. It lies in the ledger as the lines of an advice without a file, so that whatever
 * asks for payments finds it. A later entry can unsay it: it has a line that names the one before,
 * which counts no longer from then on, nor for days that are over.
 */
public final class HandBook {
    /** How such a line was matched; {@link ClaimReader} asks for it by this word. */
    static final String HOW = "said by hand";

    private static final String UNSAID = "unsaid line ";
    private static final String STILL_SAID =
            " NOT EXISTS (SELECT 1 FROM line u WHERE u.line_key = '" + UNSAID + "' || m.line)";

    private final Sql sql;
    private final AdviceBook book;

    HandBook(Sql sql, AdviceBook book) {
        this.sql = sql;
        this.book = book;
    }

    /**
     * One thing that was said.
     *
     * @param line number of its line
     * @param claim number of the claim
     * @param what lodged or paid
     * @param unsaid whether it was unsaid since
     */
    public record Said(long line, long claim, AdviceStatus what, boolean unsaid) {}

    /**
     * What a batch did with the newest version of a job; empty where the ledger has no such job.
     */
    public Optional<JobOutcome> outcome(String job) {
        return sql.first(
                "SELECT outcome FROM job WHERE job_key = ? ORDER BY version DESC LIMIT 1",
                r -> JobOutcome.of(r.getString(1)),
                Keys.job(job));
    }

    /** Whether the newest version of a job is withdrawn, by a person or by its list. */
    public boolean isWithdrawn(String job) {
        return sql.number(
                        "SELECT count(*) FROM withdrawn WHERE job_key = ?"
                                + " AND version = (SELECT max(version) FROM job WHERE job_key = ?)",
                        Keys.job(job),
                        Keys.job(job))
                > 0;
    }

    /**
     * Enters that a claim was lodged or paid.
     *
     * @param amount what was paid; nothing for a lodgement
     * @param firms what of it is the firm's
     * @return the claim as it stands after it
     */
    public ClaimState say(
            ClaimState claim, AdviceStatus what, LocalDate day, Money amount, Money firms) {
        long number = sql.number("SELECT max(id) FROM line") + 1;
        AdviceLine line =
                new AdviceLine(
                        "by hand, line " + number, 0, day, amount, claim.reference().strip());
        return book.match(book.enter(line), line, claim, what, firms, HOW, "", "");
    }

    /**
     * Days on which a person said that this was paid for a claim, unsaid ones left out. Whether the
     * whole payment or the firm's part of it was told, it is the same money.
     *
     * @param amount the payment
     * @param firms what of it is the firm's
     */
    public List<LocalDate> paid(ClaimState claim, Money amount, Money firms) {
        return paid(claim, amount, firms, "AND m.how = '" + HOW + "'");
    }

    /** Days on which this was paid for a claim, whoever told it; otherwise as {@link #paid}. */
    public List<LocalDate> toldPaid(ClaimState claim, Money amount, Money firms) {
        return paid(claim, amount, firms, "");
    }

    private List<LocalDate> paid(ClaimState claim, Money amount, Money firms, String condition) {
        return sql.list(
                "SELECT m.day FROM matched m JOIN line l ON l.id = m.line WHERE m.claim = ?"
                        + " AND m.kind = 'paid' AND m.cents = ? AND (m.cents <> 0 OR l.cents = ?) AND"
                        + STILL_SAID
                        + condition.replaceFirst("^(?=.)", " ")
                        + " ORDER BY m.line",
                r -> LocalDate.parse(r.getString(1)),
                claim.id(),
                firms.cents(),
                amount.cents());
    }

    /** Whether a person said so at most so many days before or after. */
    public boolean saidNear(ClaimState claim, Money amount, Money firms, LocalDate day, int days) {
        return paid(claim, amount, firms).stream()
                .anyMatch(d -> Math.abs(ChronoUnit.DAYS.between(d, day)) <= days);
    }

    /** What an entry said by hand; nothing where it is none of these. */
    public List<Said> of(String entry) {
        return sql.list(
                "SELECT m.line, m.claim, m.kind, (SELECT count(*) FROM line u"
                        + " WHERE u.line_key = '"
                        + UNSAID
                        + "' || m.line) FROM matched m JOIN entry e ON e.seq = m.entry"
                        + " WHERE e.name = ? AND m.how = '"
                        + HOW
                        + "' ORDER BY m.line",
                r ->
                        new Said(
                                r.getLong(1),
                                r.getLong(2),
                                AdviceStatus.of(r.getString(3)),
                                r.getLong(4) > 0),
                entry);
    }

    /** Unsays one thing, and gives the claim as it stands after it. */
    public ClaimState unsay(Said said, LocalDate day) {
        book.enter(new AdviceLine(UNSAID + said.line(), 0, day, Money.ZERO, ""));
        return new ClaimReader(sql).one(said.claim()).orElseThrow();
    }
}
