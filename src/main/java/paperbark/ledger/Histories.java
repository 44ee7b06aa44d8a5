package paperbark.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** Looks up what the ledger knows that concerns a job. */
final class Histories {
    private static final String OTHERS =
            " FROM claim c JOIN job j ON j.job_key = c.job_key AND j.version = c.version"
                    + " JOIN entry e ON e.seq = c.entry";

    private static final String PRINTS =
            " FROM job j JOIN personal p ON p.job_key = j.job_key AND p.version = j.version";

    private final Sql sql;
    private final Optional<PrintKey> printKey;

    /**
     * Looks things up.
     *
     * @param printKey the ledger's key, without which it cannot be told what changed
     */
    Histories(Sql sql, Optional<PrintKey> printKey) {
        this.sql = sql;
        this.printKey = printKey;
    }

    JobHistory of(Job job) {
        String key = Keys.job(job.reference());
        List<Conflict> conflicts = new ArrayList<>();
        for (Serial serial : job.heater().serials()) {
            conflicts.addAll(serial(key, serial));
        }
        Keys.site(job.site()).ifPresent(site -> conflicts.addAll(site(key, site)));
        List<UnderWay> underWay =
                new ClaimReader(sql)
                        .where("c.active = 1 AND c.job_key = ?", key).stream()
                                .filter(ClaimState::lodged)
                                .map(claim -> new UnderWay(claim, changed(job, claim)))
                                .toList();
        return new JobHistory(earlier(job, key), underWay, conflicts);
    }

    /**
     * The papers that the buyer has are of the newest version that went out since the claim was
     * made; where a later one was held they are not of that.
     */
    private Optional<Set<JobFact>> changed(Job job, ClaimState claim) {
        return sql.first(
                        "SELECT p.print_key, p.prints"
                                + PRINTS
                                + " JOIN claim c ON c.job_key = j.job_key AND c.version <= j.version"
                                + " WHERE c.id = ? AND (c.version = j.version OR j.outcome = 'issued')"
                                + " ORDER BY j.version DESC LIMIT 1",
                        r -> Prints.stored(r.getString(1), r.getString(2)),
                        claim.id())
                .flatMap(then -> then.changedIn(job, printKey));
    }

    private Optional<Earlier> earlier(Job job, String key) {
        return sql.first(
                "SELECT j.version, e.name, e.day, j.outcome, j.pack, p.print_key, p.prints, p.salt"
                        + PRINTS
                        + " JOIN entry e ON e.seq = j.entry"
                        + " WHERE j.job_key = ? ORDER BY j.version DESC LIMIT 1",
                r ->
                        new Earlier(
                                r.getInt(1),
                                r.getString(2),
                                LocalDate.parse(r.getString(3)),
                                JobOutcome.of(r.getString(4)),
                                r.getString(5),
                                Prints.stored(r.getString(6), r.getString(7))
                                        .changedIn(job, printKey),
                                r.getString(8).isEmpty()),
                key);
    }

    private List<Conflict> serial(String key, Serial serial) {
        return sql.list(
                "SELECT s.serial_key, s.seen, c.scheme, j.reference, e.name, e.day"
                        + OTHERS
                        + " JOIN serial s ON s.claim = c.id"
                        + " WHERE s.active = 1 AND s.lookalike_key = ? AND c.job_key <> ?"
                        + " ORDER BY c.id",
                r ->
                        new Conflict(
                                r.getString(1).equals(serial.key())
                                        ? Conflict.Kind.SERIAL
                                        : Conflict.Kind.LOOKALIKE,
                                SchemeName.valueOf(r.getString(3)),
                                serial.seen(),
                                r.getString(2),
                                r.getString(4),
                                r.getString(5),
                                LocalDate.parse(r.getString(6))),
                Keys.lookalike(serial),
                key);
    }

    private List<Conflict> site(String key, String site) {
        return sql.list(
                "SELECT c.scheme, j.reference, e.name, e.day"
                        + OTHERS
                        + " JOIN personal p ON p.job_key = c.job_key AND p.version = c.version"
                        + " WHERE c.active = 1 AND p.site_key = ? AND c.job_key <> ? ORDER BY c.id",
                r ->
                        new Conflict(
                                Conflict.Kind.SITE,
                                SchemeName.valueOf(r.getString(1)),
                                "",
                                "",
                                r.getString(2),
                                r.getString(3),
                                LocalDate.parse(r.getString(4))),
                site,
                key);
    }
}
