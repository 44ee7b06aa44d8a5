package paperbark.ledger;

import java.time.LocalDate;
import java.util.List;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What the firm earned and what came, for the activity statement. */
public final class Income {
    private final Sql sql;

    Income(Sql sql) {
        this.sql = sql;
    }

    /** What owners were charged, by the newest version of each job. */
    public List<Sale> sales() {
        return sql.list(
                "SELECT s.installed_on, s.price_cents, s.gst_cents FROM sale s"
                        + " WHERE s.version = (SELECT max(version) FROM sale n WHERE n.job_key = s.job_key)"
                        + " AND NOT EXISTS (SELECT 1 FROM withdrawn w"
                        + " WHERE w.job_key = s.job_key AND w.version >= s.version)"
                        // Another job has taken the place of one that was corrected by it.
                        + " AND s.job_key NOT IN (SELECT c.job_key FROM withdrawal x"
                        + " JOIN claim c ON c.id = x.claim WHERE x.reason LIKE ? AND NOT EXISTS"
                        + " (SELECT 1 FROM claim o WHERE o.job_key = c.job_key AND o.active = 1))"
                        + " ORDER BY s.installed_on, s.job_key",
                r ->
                        new Sale(
                                LocalDate.parse(r.getString(1)),
                                Money.ofCents(r.getLong(2)),
                                Money.ofCents(r.getLong(3))),
                Withdrawing.CORRECTED_BY + "%");
    }

    /** Whether the newest version of a job is a sale that nothing has called off or replaced. */
    public boolean isSold(String reference) {
        return sql.number(
                        "SELECT count(*) FROM sale s WHERE s.job_key = ?"
                                + " AND s.version = (SELECT max(version) FROM job n WHERE n.job_key = s.job_key)"
                                + " AND NOT EXISTS (SELECT 1 FROM withdrawn w"
                                + " WHERE w.job_key = s.job_key AND w.version >= s.version)"
                                + " AND NOT (EXISTS (SELECT 1 FROM withdrawal x"
                                + " JOIN claim c ON c.id = x.claim"
                                + " WHERE c.job_key = s.job_key AND x.reason LIKE ?) AND NOT EXISTS"
                                + " (SELECT 1 FROM claim o WHERE o.job_key = s.job_key AND o.active = 1))",
                        Keys.job(reference),
                        Withdrawing.CORRECTED_BY + "%")
                > 0;
    }

    /** All money that came or was taken back, in the order in which it was taken in. */
    public List<Receipt> receipts() {
        return sql.list(
                "SELECT m.day, c.scheme, m.cents FROM matched m JOIN claim c ON c.id = m.claim"
                        + " WHERE m.kind = 'paid' AND NOT EXISTS (SELECT 1 FROM line u"
                        + " WHERE u.line_key = 'unsaid line ' || m.line) ORDER BY m.line",
                r ->
                        new Receipt(
                                LocalDate.parse(r.getString(1)),
                                SchemeName.valueOf(r.getString(2)),
                                Money.ofCents(r.getLong(3))));
    }
}
