package paperbark.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** Looks up what the ledger knows that concerns a job. */
final class Histories {
    private static final String OTHERS =
            " FROM claim c JOIN job j ON j.job_key = c.job_key AND j.version = c.version"
                    + " JOIN entry e ON e.seq = c.entry JOIN progress g ON g.entry = e.seq";

    private static final String PRINTS =
            " FROM job j JOIN personal p ON p.job_key = j.job_key AND p.version = j.version";

    private final Sql sql;
    private final Optional<PrintKey> printKey;
    private final BatchWords words;

    /**
     * Looks things up.
     *
     * @param printKey the ledger's key, without which it cannot be told what changed
     */
    Histories(Sql sql, Optional<PrintKey> printKey) {
        this.sql = sql;
        this.printKey = printKey;
        this.words = new BatchWords(sql);
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
                                .filter(ClaimState::isWithBuyer)
                                .map(claim -> new UnderWay(claim, changed(job, claim)))
                                .toList();
        List<String> named = Keys.named(job.corrects(), new Versions(sql)::isKnown);
        return new JobHistory(
                earlier(job, key),
                underWay,
                conflicts,
                claims(key, named),
                papers(job, key),
                new Versions(sql)
                        .corrected(job.corrects()).stream()
                                .filter(other -> !other.equals(key))
                                .flatMap(other -> replaced(other, job).stream())
                                .toList());
    }

    /** What went out for a job that stands, or that fell away because this one takes its place. */
    private List<Replaced> replaced(String other, Job by) {
        return sql.list(
                "SELECT j.reference, p.kind, e.name, e.day FROM paper p"
                        + " JOIN job j ON j.job_key = p.job_key AND j.version = p.version"
                        + " JOIN entry e ON e.seq = p.entry WHERE p.job_key = ? AND NOT EXISTS"
                        + " (SELECT 1 FROM paper l WHERE l.job_key = p.job_key AND l.kind = p.kind"
                        + " AND l.version > p.version) AND NOT EXISTS"
                        + " (SELECT 1 FROM withdrawn w WHERE w.job_key = p.job_key"
                        + " AND w.version >= p.version AND w.reason <> ?) ORDER BY p.kind",
                r ->
                        new Replaced(
                                r.getString(1),
                                r.getString(2),
                                r.getString(3),
                                LocalDate.parse(r.getString(4))),
                other,
                Withdrawing.CORRECTED_BY + by.reference());
    }

    private List<ClaimState> claims(String key, List<String> named) {
        ClaimReader reader = new ClaimReader(sql);
        Map<Long, ClaimState> all = new TreeMap<>();
        reader.where("c.job_key = ?", key).forEach(c -> all.put(c.id(), c));
        // Jobs or claims that the remark on what is corrected names.
        for (String word : named) {
            reader.where("c.job_key = ?", word).forEach(c -> all.put(c.id(), c));
            reader.where("c.reference = ?", word).forEach(c -> all.put(c.id(), c));
        }
        return List.copyOf(all.values());
    }

    private List<PrintedPaper> papers(Job job, String key) {
        Map<Long, Prints> versions = new TreeMap<>(Comparator.reverseOrder());
        sql.list(
                        "SELECT p.version, p.print_key, p.prints FROM personal p WHERE p.job_key = ?",
                        r -> Map.entry(r.getLong(1), Prints.stored(r.getString(2), r.getString(3))),
                        key)
                .forEach(v -> versions.put(v.getKey(), v.getValue()));
        ScanBook book = new ScanBook(sql);
        List<PaperState> states =
                versions.isEmpty() || !book.isUsed() ? List.of() : book.ofKey(key);
        List<PrintedPaper> papers = new ArrayList<>();
        Set<JobFact> toldOtherwise = new HashSet<>();
        versions.forEach(
                (version, then) -> {
                    Optional<Set<JobFact>> changed = then.changedIn(job, printKey);
                    Set<JobFact> unknown = then.unknown();
                    changed.ifPresent(
                            all ->
                                    all.stream()
                                            .filter(fact -> !unknown.contains(fact))
                                            .forEach(toldOtherwise::add));
                    // What a later list said was written in by hand.
                    Set<JobFact> blank = new HashSet<>(unknown);
                    blank.removeAll(toldOtherwise);
                    papers.addAll(papers(key, version, changed, blank, states));
                });
        return papers;
    }

    private List<PrintedPaper> papers(
            String key,
            long version,
            Optional<Set<JobFact>> changed,
            Set<JobFact> blank,
            List<PaperState> states) {
        return sql.list(
                "SELECT a.kind, e.name, e.day, j.pack, a.says FROM paper a"
                        + " JOIN job j ON j.job_key = a.job_key AND j.version = a.version"
                        + " JOIN entry e ON e.seq = j.entry"
                        + " WHERE a.job_key = ? AND a.version = ? AND NOT EXISTS"
                        + " (SELECT 1 FROM withdrawn w WHERE w.job_key = j.job_key"
                        + " AND w.version >= j.version) ORDER BY a.kind",
                r ->
                        new PrintedPaper(
                                r.getString(1),
                                r.getString(2),
                                LocalDate.parse(r.getString(3)),
                                r.getString(4),
                                r.getString(5),
                                changed,
                                blank,
                                step(states, version, r.getString(1))),
                key,
                version);
    }

    private static Optional<PaperState.Step> step(
            List<PaperState> states, long version, String kind) {
        return states.stream()
                .filter(s -> s.version() == version && s.kind().equals(kind))
                .map(PaperState::step)
                .findFirst();
    }

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
                "SELECT j.version, e.name, e.day, j.outcome, j.pack, p.print_key, p.prints, p.salt,"
                        + " w.reason, b.day AS withdrawn_on, g.place,"
                        + " CASE WHEN b.kind = 'batch' THEN '' ELSE b.source_name END AS by_list"
                        + PRINTS
                        + " JOIN entry e ON e.seq = j.entry JOIN progress g ON g.entry = e.seq"
                        + " LEFT JOIN withdrawn w ON w.job_key = j.job_key AND w.version = j.version"
                        + " LEFT JOIN entry b ON b.seq = w.entry"
                        + " WHERE j.job_key = ? ORDER BY j.version DESC LIMIT 1",
                r ->
                        new Earlier(
                                r.getInt(1),
                                r.getString(2),
                                words.of(r.getString(2), r.getString("place")),
                                LocalDate.parse(r.getString(3)),
                                JobOutcome.of(r.getString(4)),
                                r.getString(5),
                                Prints.stored(r.getString(6), r.getString(7))
                                        .changedIn(job, printKey),
                                withdrawn(r),
                                r.getString(8).isEmpty()),
                key);
    }

    private static Optional<Withdrawn> withdrawn(ResultSet r) throws SQLException {
        return r.getString("withdrawn_on") == null
                ? Optional.empty()
                : Optional.of(
                        new Withdrawn(
                                LocalDate.parse(r.getString("withdrawn_on")),
                                r.getString("reason"),
                                r.getString("by_list")));
    }

    private List<Conflict> serial(String key, Serial serial) {
        return sql.list(
                "SELECT s.serial_key, s.seen, c.scheme, j.reference, e.name, e.day, g.place"
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
                                words.of(r.getString(5), r.getString("place")),
                                LocalDate.parse(r.getString(6))),
                Keys.lookalike(serial),
                key);
    }

    private List<Conflict> site(String key, String site) {
        return sql.list(
                "SELECT c.scheme, j.reference, e.name, e.day, g.place"
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
                                words.of(r.getString(3), r.getString("place")),
                                LocalDate.parse(r.getString(4))),
                site,
                key);
    }
}
