package paperbark.ledger;

import java.time.LocalDate;
import java.util.List;
import paperbark.ledger.Ledger.BatchState;

/** Looks batches up, newest first. */
final class Batches {
    private final Sql sql;

    Batches(Sql sql) {
        this.sql = sql;
    }

    List<BatchState> of(String registerSha256) {
        return where("AND e.source_sha256 = ?", registerSha256);
    }

    List<BatchState> newest(int howMany) {
        return where(
                "AND e.seq IN (SELECT entry FROM progress WHERE staged <> ''"
                        + " ORDER BY entry DESC LIMIT ?)",
                howMany);
    }

    List<BatchState> newest(int howMany, String place) {
        return where(
                "AND e.seq IN (SELECT entry FROM progress WHERE staged <> '' AND place IN (?, '')"
                        + " ORDER BY entry DESC LIMIT ?)",
                place,
                howMany);
    }

    List<BatchState> after(LocalDate day) {
        return where("AND e.day > ?", day.toString());
    }

    List<BatchState> unfiled(String place) {
        return where("AND p.state = 'published' AND p.place IN (?, '')", place);
    }

    private List<BatchState> where(String condition, Object... parameters) {
        return sql.list(
                "SELECT e.name, e.source_name, e.day, p.state, count(j.reference),"
                        + " sum(CASE WHEN j.outcome = 'held' AND NOT EXISTS (SELECT 1 FROM job n"
                        + " WHERE n.job_key = j.job_key AND n.version > j.version)"
                        + " AND NOT EXISTS (SELECT 1 FROM withdrawn w"
                        + " WHERE w.job_key = j.job_key AND w.version = j.version)"
                        + " THEN 1 ELSE 0 END)"
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
                parameters);
    }
}
