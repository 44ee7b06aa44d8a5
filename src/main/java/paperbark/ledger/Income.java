package paperbark.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What the firm earned and what came, for the activity statement. */
public final class Income {
    private static final String NOW = LocalDate.of(9999, 12, 31).toString();

    // The newest version of a job by a day, where neither a withdrawal nor a job that corrects it
    // has taken it away by then. That no newer one is there is asked so that a server can answer it
    // for all jobs at once; the newest number of each it would look up one by one.
    private static final String SALES =
            """
             FROM sale s JOIN entry e ON e.seq = s.entry
             LEFT JOIN (SELECT c.job_key, max(x.entry) AS entry FROM withdrawal x
                          JOIN claim c ON c.id = x.claim JOIN entry b ON b.seq = x.entry
                         WHERE x.reason LIKE ? AND b.day <= ? GROUP BY c.job_key) g
                    ON g.job_key = s.job_key
             WHERE e.day <= ? AND (g.entry IS NULL OR g.entry < s.entry)
               AND NOT EXISTS (SELECT 1 FROM job n JOIN entry b ON b.seq = n.entry
                                WHERE n.job_key = s.job_key AND n.version > s.version
                                  AND b.day <= ?)
               AND NOT EXISTS (SELECT 1 FROM withdrawn w JOIN entry b ON b.seq = w.entry
                                WHERE w.job_key = s.job_key AND w.version >= s.version
                                  AND b.day <= ?)""";

    private final Sql sql;

    Income(Sql sql) {
        this.sql = sql;
    }

    /**
     * What owners were charged, by the newest version of each job, as far as it was entered by the
     * end of a day.
     */
    public List<Sale> sales(LocalDate asOf) {
        String day = asOf.toString();
        return sql.list(
                "SELECT s.installed_on, s.price_cents, s.gst_cents "
                        + SALES
                        + " ORDER BY s.installed_on, s.job_key",
                Income::sale,
                Withdrawing.CORRECTED_BY + "%",
                day,
                day,
                day,
                day);
    }

    /** The sale of a job's newest version, where nothing has called it off or replaced it. */
    public Optional<Sale> sale(String reference) {
        return sql.first(
                "SELECT s.installed_on, s.price_cents, s.gst_cents " + SALES + " AND s.job_key = ?",
                Income::sale,
                Withdrawing.CORRECTED_BY + "%",
                NOW,
                NOW,
                NOW,
                NOW,
                Keys.job(reference));
    }

    /** Whether the newest version of a job is a sale that nothing has called off or replaced. */
    public boolean isSold(String reference) {
        return sale(reference).isPresent();
    }

    private static Sale sale(ResultSet row) throws SQLException {
        return new Sale(
                LocalDate.parse(row.getString(1)),
                Money.ofCents(row.getLong(2)),
                Money.ofCents(row.getLong(3)));
    }

    /**
     * The entries that may have booked the sale of a job or taken it back, the newest first: the
     * batches that had it, those in which another job took its place, and its withdrawals.
     *
     * @param references the job, and jobs whose batches count as well
     */
    public List<String> entriesOfSale(String... references) {
        String keys = String.join(", ", Collections.nCopies(references.length, "?"));
        Object[] named = Arrays.stream(references).map(Keys::job).toArray();
        List<Object> parameters = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            parameters.addAll(List.of(named));
        }
        parameters.add(Withdrawing.CORRECTED_BY + "%");
        return sql.list(
                ("SELECT name FROM entry WHERE seq IN (SELECT entry FROM job WHERE job_key IN (%1$s)"
                                + " UNION SELECT entry FROM withdrawn WHERE job_key IN (%1$s)"
                                + " UNION SELECT x.entry FROM withdrawal x"
                                + " JOIN claim c ON c.id = x.claim"
                                + " WHERE c.job_key IN (%1$s) AND x.reason LIKE ?)"
                                + " ORDER BY seq DESC")
                        .formatted(keys),
                r -> r.getString(1),
                parameters.toArray());
    }

    /** The jobs that each withdrawal called off when their newest version was a sale. */
    public Map<String, List<String>> calledOff() {
        Map<String, List<String>> jobs = new LinkedHashMap<>();
        sql.list(
                        "SELECT e.name, j.reference FROM withdrawn w JOIN entry e ON e.seq = w.entry"
                                + " AND e.kind = 'withdrawal' JOIN sale s ON s.job_key = w.job_key AND s.version = w.version"
                                + " JOIN job j ON j.job_key = w.job_key AND j.version = w.version"
                                + " ORDER BY e.seq, j.reference",
                        r -> Map.entry(r.getString(1), r.getString(2)))
                .forEach(
                        off ->
                                jobs.computeIfAbsent(off.getKey(), e -> new ArrayList<>())
                                        .add(off.getValue()));
        return jobs;
    }

    /**
     * All money that came or was taken back by the end of a day, in the order in which it was taken
     * in.
     */
    public List<Receipt> receipts(LocalDate asOf) {
        return sql.list(
                "SELECT m.day, c.scheme, m.cents FROM matched m JOIN claim c ON c.id = m.claim"
                        + " WHERE m.kind = 'paid' AND m.day <= ? AND NOT EXISTS (SELECT 1 FROM line u"
                        + " WHERE u.line_key = 'unsaid line ' || m.line) ORDER BY m.line",
                r ->
                        new Receipt(
                                LocalDate.parse(r.getString(1)),
                                SchemeName.valueOf(r.getString(2)),
                                Money.ofCents(r.getLong(3))),
                asOf.toString());
    }
}
