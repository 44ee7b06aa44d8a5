package paperbark.ledger;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads claims together with what became of them. */
final class ClaimReader {
    private static final String LAST_DAY = "9999-12-31";

    // Which of two happenings came last is told by the number of the line, never by its day. Money
    // taken back does not mend a claim that failed; that a person lodged it again does. What was
    // said by mistake and unsaid since never was.
    private static final String QUERY =
            """
            SELECT c.id, j.reference, c.scheme, c.buyer, c.certificates, c.installed_on,
                   c.lodge_by, c.expected_cents, c.owner_cents, c.gst_cents, c.due, %s, c.entry,
                   m.touched, m.received, m.paid_on, m.failed_line, m.mended_line, f.day, f.reason
              FROM claim c
              JOIN job j ON j.job_key = c.job_key AND j.version = c.version
              LEFT JOIN (SELECT claim, count(*) AS touched, sum(cents) AS received,
                                max(CASE WHEN kind = 'paid' THEN day END) AS paid_on,
                                max(CASE WHEN kind = 'failed' THEN line END) AS failed_line,
                                max(CASE WHEN kind = 'paid' AND NOT taken_back
                                           OR kind = 'lodged' AND how = 'said by hand'
                                         THEN line END) AS mended_line
                           FROM (SELECT matched.*, line.cents < 0 AS taken_back
                                   FROM matched JOIN line ON line.id = matched.line
                                  WHERE NOT EXISTS (SELECT 1 FROM line u
                                          WHERE u.line_key = 'unsaid line ' || line.id)) AS told
                          WHERE day <= ? %s GROUP BY claim) m ON m.claim = c.id
              LEFT JOIN matched f ON f.line = m.failed_line AND f.claim = c.id
             WHERE %s ORDER BY c.id""";

    private static final String NOW = "c.active";

    // What fell away after a day stood then.
    private static final String STOOD =
            "(c.active = 1 OR c.id IN (SELECT x.claim FROM withdrawal x JOIN entry b ON b.seq = x.entry"
                    + " WHERE b.day > ?)) AND c.entry IN (SELECT seq FROM entry WHERE day <= ?)";

    private static final String GONE =
            "c.id IN (SELECT x.claim FROM withdrawal x JOIN entry b ON b.seq = x.entry"
                    + " WHERE b.day <= ?)";

    private final Sql sql;

    ClaimReader(Sql sql) {
        this.sql = sql;
    }

    /** All claims that stand, as they stood at the end of a day. */
    List<ClaimState> standing(LocalDate asOf) {
        ClaimRows rows = new ClaimRows(batches("day <= ?", asOf.toString()));
        String day = asOf.toString();
        return sql.list(QUERY.formatted("1", "", STOOD), rows::state, day, day, day);
    }

    /** Claims that stand no longer at the end of a day and of which money is here. */
    List<ClaimState> paidBefore(LocalDate asOf) {
        ClaimRows rows = new ClaimRows(batches("day <= ?", asOf.toString()));
        String day = asOf.toString();
        return sql.list(QUERY.formatted("0", "", GONE), rows::state, day, day).stream()
                .filter(claim -> !claim.received().isZero())
                .toList();
    }

    /** All claims, standing or withdrawn, as of now. */
    List<ClaimState> all() {
        ClaimRows rows = new ClaimRows(batches("day <= ?", LAST_DAY));
        return sql.list(QUERY.formatted(NOW, "", "1 = 1"), rows::state, LAST_DAY);
    }

    /**
     * Whether nothing is of a later day; that of an advice says nothing, that of its lines does.
     */
    boolean endBy(LocalDate day) {
        return sql.number(
                        "SELECT count(*) FROM (SELECT day FROM entry WHERE kind IN ('batch',"
                                + " 'withdrawal') UNION ALL SELECT day FROM matched) AS told"
                                + " WHERE day > ?",
                        day.toString())
                == 0;
    }

    private Map<Long, ClaimRows.Batch> batches(String condition, Object parameter) {
        Map<Long, ClaimRows.Batch> batches = new HashMap<>();
        sql.list(
                "SELECT seq, name, day FROM entry WHERE " + condition,
                r ->
                        batches.put(
                                r.getLong(1),
                                new ClaimRows.Batch(
                                        r.getString(2), LocalDate.parse(r.getString(3)))),
                parameter);
        return batches;
    }

    /** The claims, standing or withdrawn, that a condition on claim {@code c} names, as of now. */
    List<ClaimState> where(String condition, Object parameter) {
        return sql
                .list(
                        "SELECT c.id FROM claim c WHERE " + condition + " ORDER BY c.id",
                        r -> r.getLong(1),
                        parameter)
                .stream()
                .flatMap(id -> one(id).stream())
                .toList();
    }

    /** Standing claims for which exactly this much was expected. */
    List<ClaimState> expecting(long cents) {
        return where("c.active = 1 AND c.expected_cents = ?", cents);
    }

    /** The day on which it was first entered what became of a claim; empty where it never was. */
    Optional<LocalDate> firstTold() {
        return sql.first(
                "SELECT day FROM entry WHERE seq = (SELECT min(entry) FROM matched)",
                r -> LocalDate.parse(r.getString(1)));
    }

    /** Claims that stand and whose last day is before a day, as of now. */
    List<ClaimState> closedBefore(LocalDate day) {
        ClaimRows rows = new ClaimRows(batches("day <= ?", LAST_DAY));
        return sql.list(
                QUERY.formatted(NOW, "", "c.active = 1 AND c.lodge_by < ?"),
                rows::state,
                LAST_DAY,
                day.toString());
    }

    Optional<ClaimState> one(long id) {
        ClaimRows rows = new ClaimRows(batches("seq = (SELECT entry FROM claim WHERE id = ?)", id));
        return sql.first(
                QUERY.formatted(NOW, "AND claim = ?", "c.id = ?"), rows::state, LAST_DAY, id, id);
    }
}
