package paperbark.ledger;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.value.SchemeName;

/** Looks up the versions of a job, and how long its papers may be asked for. */
final class Versions {
    private final Sql sql;

    Versions(Sql sql) {
        this.sql = sql;
    }

    List<JobVersion> of(String jobKey) {
        BatchWords words = new BatchWords(sql);
        return sql.list(
                "SELECT j.version, e.name, e.day, j.pack, j.installed_on, j.warranty_until, p.salt,"
                        + " g.place"
                        + " FROM job j JOIN entry e ON e.seq = j.entry JOIN progress g ON g.entry = e.seq"
                        + " JOIN personal p ON p.job_key = j.job_key AND p.version = j.version"
                        + " WHERE j.job_key = ? ORDER BY j.version",
                r ->
                        new JobVersion(
                                r.getInt(1),
                                r.getString(2),
                                words.of(r.getString(2), r.getString("place")),
                                LocalDate.parse(r.getString(3)),
                                r.getString(4),
                                Sql.day(r, "installed_on"),
                                Sql.day(r, "warranty_until"),
                                r.getString(7).isEmpty()),
                jobKey);
    }

    List<CurrentJob> current() {
        return sql.list(
                "SELECT j.reference, j.outcome, j.installed_on, e.name, e.day,"
                        + " (SELECT count(*) FROM withdrawn w WHERE w.job_key = j.job_key"
                        + " AND w.version >= j.version) FROM job j JOIN entry e ON e.seq = j.entry"
                        + " WHERE NOT EXISTS (SELECT 1 FROM job n WHERE n.job_key = j.job_key"
                        + " AND n.version > j.version) ORDER BY j.job_key",
                r ->
                        new CurrentJob(
                                r.getString(1),
                                JobOutcome.of(r.getString(2)),
                                Sql.day(r, "installed_on"),
                                r.getString(4),
                                LocalDate.parse(r.getString(5)),
                                r.getLong(6) > 0));
    }

    /** Whether there is a job, or a claim, of that key. */
    boolean isKnown(String key) {
        return sql.number(
                        "SELECT count(*) FROM (SELECT job_key FROM job WHERE job_key = ? UNION ALL"
                                + " SELECT reference FROM claim WHERE reference = ?) AS named",
                        key,
                        key)
                > 0;
    }

    /** The keys of jobs that a remark on what is corrected names, by their number or a claim's. */
    List<String> corrected(Optional<String> corrects) {
        return Keys.named(corrects, this::isKnown).stream()
                .flatMap(
                        named ->
                                sql
                                        .list(
                                                "SELECT job_key FROM job WHERE job_key = ? UNION"
                                                        + " SELECT job_key FROM claim WHERE reference = ?",
                                                r -> r.getString(1),
                                                named,
                                                named)
                                        .stream())
                .distinct()
                .toList();
    }

    Set<String> keysIn(String batch) {
        return Set.copyOf(
                sql.list(
                        "SELECT j.job_key FROM job j JOIN entry e ON e.seq = j.entry"
                                + " WHERE e.name = ?",
                        r -> r.getString(1),
                        batch));
    }

    Map<SchemeName, LocalDate> lastDays(String jobKey) {
        Map<SchemeName, LocalDate> days = new EnumMap<>(SchemeName.class);
        sql.list(
                        "SELECT scheme, lodge_by FROM claim WHERE job_key = ? AND lodge_by <> ''",
                        r ->
                                Map.entry(
                                        SchemeName.valueOf(r.getString(1)),
                                        LocalDate.parse(r.getString(2))),
                        jobKey)
                .forEach(
                        claim ->
                                days.merge(
                                        claim.getKey(),
                                        claim.getValue(),
                                        (a, b) -> a.isAfter(b) ? a : b));
        return days;
    }

    List<Forgotten> forgottenSince(long entry) {
        return sql.list(
                "SELECT DISTINCT f.entry, f.job_key FROM forgotten f WHERE f.entry > ?"
                        + " ORDER BY f.entry",
                r -> new Forgotten(r.getLong(1), r.getString(2)),
                entry);
    }
}
