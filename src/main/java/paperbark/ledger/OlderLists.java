package paperbark.ledger;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Finds the batches that an earlier version of a list made. Of a list of the same name at least
 * half of the jobs are there still, of another four of five; next week's list has few or none.
 */
final class OlderLists {
    private final Sql sql;

    OlderLists(Sql sql) {
        this.sql = sql;
    }

    private record Line(String key, String reference, boolean claimed) {}

    List<GoneJobs> gone(String register, Collection<String> references) {
        Set<String> here = references.stream().map(Keys::job).collect(Collectors.toSet());
        Set<Long> batches = new TreeSet<>();
        for (String key : new TreeSet<>(here)) {
            batches.addAll(
                    sql.list(
                            "SELECT DISTINCT entry FROM job WHERE job_key = ?",
                            r -> r.getLong(1),
                            key));
        }
        List<GoneJobs> gone = new ArrayList<>();
        for (long batch : batches) {
            List<Line> lines = lines(batch);
            List<String> left =
                    lines.stream()
                            .filter(l -> l.claimed() && !here.contains(l.key()))
                            .map(Line::reference)
                            .toList();
            long still = lines.stream().filter(l -> here.contains(l.key())).count();
            if (!left.isEmpty() && isOlder(batch, register, still, lines.size())) {
                gone.add(new GoneJobs(new BatchWords(sql).of(name(batch, "name")), left));
            }
        }
        return gone;
    }

    private boolean isOlder(long batch, String register, long still, long all) {
        return name(batch, "source_name").equalsIgnoreCase(register)
                ? 2 * still >= all
                : 5 * still >= 4 * all;
    }

    private String name(long batch, String column) {
        return sql.first(
                        "SELECT " + column + " FROM entry WHERE seq = ?",
                        r -> r.getString(1),
                        batch)
                .orElse("");
    }

    /** The jobs of a batch, and whether a claim stands of which that batch has the newest. */
    private List<Line> lines(long batch) {
        return sql.list(
                "SELECT j.job_key, j.reference, CASE WHEN EXISTS (SELECT 1 FROM claim c"
                        + " WHERE c.job_key = j.job_key AND c.active = 1) AND NOT EXISTS"
                        + " (SELECT 1 FROM job n WHERE n.job_key = j.job_key AND n.version > j.version)"
                        + " THEN 1 ELSE 0 END FROM job j WHERE j.entry = ? ORDER BY j.source_row, j.job_key",
                r -> new Line(r.getString(1), r.getString(2), r.getInt(3) == 1),
                batch);
    }
}
