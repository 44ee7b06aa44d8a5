package paperbark.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import paperbark.value.SchemeName;

/** Reads claims together with what became of them. */
final class ClaimReader {
    private static final String LAST_DAY = "9999-12-31";

    // Which of two happenings came last is told by the number of the line, never by its day. Money
    // taken back does not mend a claim that failed; that a person lodged it again does. What was
    // said by mistake and unsaid since never was.
    private static final String QUERY =
            """
            SELECT c.id, j.reference AS job, c.scheme, c.buyer, c.certificates, c.installed_on,
                   c.lodge_by, c.expected_cents, c.owner_cents, c.gst_cents, c.due, c.active, e.name AS batch, e.day AS claimed_on,
                   m.touched, m.received, m.paid_on, m.failed_line, m.mended_line,
                   CASE WHEN m.failed_line IS NOT NULL THEN
                     (SELECT f.reason FROM matched f
                       WHERE f.claim = c.id AND f.line = m.failed_line) END AS failed
              FROM claim c
              JOIN job j ON j.job_key = c.job_key AND j.version = c.version
              JOIN entry e ON e.seq = c.entry
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
             WHERE %s ORDER BY c.id""";

    private final Sql sql;

    ClaimReader(Sql sql) {
        this.sql = sql;
    }

    /** All claims that stand, as they stood at the end of a day. */
    List<ClaimState> standing(LocalDate asOf) {
        return sql.list(
                QUERY.formatted("", "c.active = 1 AND e.day <= ?"),
                ClaimReader::state,
                asOf.toString(),
                asOf.toString());
    }

    /** All claims, standing or withdrawn, as of now. */
    List<ClaimState> all() {
        return sql.list(QUERY.formatted("", "1 = 1"), ClaimReader::state, LAST_DAY);
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

    Optional<ClaimState> one(long id) {
        return sql.first(
                QUERY.formatted("AND claim = ?", "c.id = ?"), ClaimReader::state, LAST_DAY, id, id);
    }

    private static ClaimState state(ResultSet row) throws SQLException {
        long failedLine = row.getLong("failed_line");
        Optional<String> failed =
                failedLine > row.getLong("mended_line")
                        ? Optional.of(row.getString("failed"))
                        : Optional.empty();
        return new ClaimState(
                row.getLong("id"),
                row.getString("job"),
                SchemeName.valueOf(row.getString("scheme")),
                row.getString("buyer"),
                row.getInt("certificates"),
                LocalDate.parse(row.getString("installed_on")),
                Sql.day(row, "lodge_by"),
                Sql.money(row, "expected_cents"),
                Sql.money(row, "owner_cents"),
                Sql.money(row, "gst_cents"),
                Sql.day(row, "due"),
                row.getInt("active") == 1,
                row.getString("batch"),
                LocalDate.parse(row.getString("claimed_on")),
                row.getLong("touched") > 0,
                failed,
                Sql.money(row, "received"),
                Sql.day(row, "paid_on"));
    }
}
