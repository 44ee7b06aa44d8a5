package paperbark.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.fault.FaultPoint;
import paperbark.fault.Trace;
import paperbark.value.SchemeName;

/** What the ledger knows of papers that came back signed. */
public final class ScanBook {
    // SQLite refuses a question with too many values (its page on limits: 999 before 3.32).
    private static final int AT_ONCE = 500;

    private final Sql sql;

    /** Asks and writes in a ledger that stays open. */
    public ScanBook(Ledger ledger) {
        this(ledger.sql());
    }

    ScanBook(Sql sql) {
        this.sql = sql;
    }

    /**
     * Takes in pages that came back, whole or not at all.
     *
     * @throws LedgerBusyException when another program writes in the ledger
     */
    public void enter(ScanEntry scan) {
        sql.whole(
                () -> {
                    long seq = sql.number("SELECT max(seq) FROM entry") + 1;
                    sql.run(
                            "INSERT INTO entry VALUES (?, 'scan', ?, ?, ?, ?, ?, ?, '', '', '')",
                            seq,
                            "scan-" + seq,
                            scan.file(),
                            scan.sha256(),
                            scan.day().toString(),
                            scan.at().toString(),
                            scan.program());
                    scan.pages().forEach(page -> enter(seq, page));
                    new Chain(sql).seal(seq);
                    FaultPoint.IN_TRANSACTION.reach();
                    return null;
                });
        Trace.COMMIT.of();
    }

    private void enter(long seq, ScanEntry.Page page) {
        sql.run(
                "INSERT INTO scanned VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                seq,
                page.place(),
                Keys.job(page.job()),
                page.version(),
                page.kind(),
                page.page(),
                page.pages(),
                page.blank());
    }

    /** Whether papers are scanned at all: an office that does not is told nothing of them. */
    public boolean isUsed() {
        return firstDay().isPresent();
    }

    /** How often these bytes were taken in. */
    public long times(String sha256) {
        return sql.number(
                "SELECT count(*) FROM entry WHERE kind = 'scan' AND source_sha256 = ?", sha256);
    }

    /** Every paper that went out for a job, by kind, the newest version first. */
    public List<PaperState> papers(String job) {
        return ofKey(Keys.job(job));
    }

    List<PaperState> ofKey(String jobKey) {
        return states("p.job_key = ?", jobKey);
    }

    /** The papers of a batch, by job and kind. */
    public List<PaperState> ofBatch(String batch) {
        return states("e.name = ?", batch);
    }

    /** The day on which the first pile was taken in; empty where no papers are scanned. */
    public Optional<LocalDate> firstDay() {
        return sql.first(
                "SELECT day FROM entry WHERE kind = 'scan' ORDER BY seq LIMIT 1",
                r -> LocalDate.parse(r.getString(1)));
    }

    /**
     * The newest version of every paper of these kinds that was printed on a day or later, and
     * whose job was not called off or forgotten and has such a paper still.
     */
    public List<PaperState> newest(Collection<String> kinds, LocalDate since) {
        return newest("e.day >= ?", List.of(since.toString()), kinds);
    }

    /** The same of jobs, whenever they were printed. */
    public List<PaperState> newestOf(Collection<String> jobs, Collection<String> kinds) {
        List<Object> keys = jobs.stream().<Object>map(Keys::job).distinct().toList();
        List<PaperState> all = new ArrayList<>();
        for (int i = 0; i < keys.size(); i += AT_ONCE) {
            List<Object> some = keys.subList(i, Math.min(i + AT_ONCE, keys.size()));
            all.addAll(newest("p.job_key IN (" + marks(some.size()) + ")", some, kinds));
        }
        return all;
    }

    private List<PaperState> newest(
            String condition, List<Object> values, Collection<String> kinds) {
        List<Object> all = new ArrayList<>(values);
        all.addAll(kinds);
        return states(
                        condition
                                + " AND p.kind IN ("
                                + marks(kinds.size())
                                + ") AND NOT EXISTS (SELECT 1 FROM forgotten f WHERE"
                                + " f.job_key = p.job_key AND f.version >= p.version)",
                        all.toArray())
                .stream()
                .filter(p -> !p.replaced() && !p.withdrawn() && !p.bookedAgain() && !p.dropped())
                .toList();
    }

    private static String marks(int howMany) {
        return String.join(", ", Collections.nCopies(howMany, "?"));
    }

    /** The newest assignment of each claim by the claim's number; a later one counts alone. */
    public Map<Long, PaperState> assignments(List<ClaimState> claims) {
        Map<Long, PaperState> all = new HashMap<>();
        for (SchemeName scheme : SchemeName.values()) {
            List<ClaimState> ofScheme = claims.stream().filter(c -> c.scheme() == scheme).toList();
            for (int i = 0; i < ofScheme.size(); i += AT_ONCE) {
                List<ClaimState> some = ofScheme.subList(i, Math.min(i + AT_ONCE, ofScheme.size()));
                Map<String, PaperState> byJob = newest(scheme, some);
                for (ClaimState claim : some) {
                    Optional.ofNullable(byJob.get(Keys.job(claim.job())))
                            .ifPresent(paper -> all.put(claim.id(), paper));
                }
            }
        }
        return all;
    }

    private Map<String, PaperState> newest(SchemeName scheme, List<ClaimState> claims) {
        List<Object> values = new ArrayList<>(List.of(scheme.key()));
        claims.forEach(c -> values.add(Keys.job(c.job())));
        return states(
                        "p.kind = ? AND p.job_key IN (" + marks(claims.size()) + ")",
                        values.toArray())
                .stream()
                .filter(paper -> !paper.replaced())
                .collect(Collectors.toMap(paper -> Keys.job(paper.job()), paper -> paper));
    }

    private List<PaperState> states(String condition, Object... values) {
        return new PaperRows(sql).where(condition, values);
    }
}
