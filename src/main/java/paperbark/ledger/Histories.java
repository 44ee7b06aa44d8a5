package paperbark.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.job.Job;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** Looks up what the ledger knows that concerns a job. */
final class Histories {
    private static final String OTHERS =
            " FROM claim c JOIN job j ON j.job_key = c.job_key AND j.version = c.version"
                    + " JOIN entry e ON e.seq = c.entry";

    private final Sql sql;

    Histories(Sql sql) {
        this.sql = sql;
    }

    JobHistory of(Job job) {
        String key = Keys.job(job.reference());
        List<Conflict> conflicts = new ArrayList<>();
        for (Serial serial : job.heater().serials()) {
            conflicts.addAll(serial(key, serial));
        }
        Keys.site(job.site()).ifPresent(site -> conflicts.addAll(site(key, site)));
        List<ClaimState> underWay =
                new Claims(sql)
                        .where("c.active = 1 AND c.job_key = ?", key).stream()
                                .filter(ClaimState::lodged)
                                .toList();
        return new JobHistory(earlier(key), underWay, conflicts);
    }

    private Optional<Earlier> earlier(String key) {
        return sql.first(
                "SELECT j.version, e.name, e.day, j.outcome, j.pack, p.facts, p.salt FROM job j"
                        + " JOIN entry e ON e.seq = j.entry"
                        + " JOIN personal p ON p.job_key = j.job_key AND p.version = j.version"
                        + " WHERE j.job_key = ? ORDER BY j.version DESC LIMIT 1",
                r ->
                        new Earlier(
                                r.getInt(1),
                                r.getString(2),
                                LocalDate.parse(r.getString(3)),
                                JobOutcome.of(r.getString(4)),
                                r.getString(5),
                                facts(r.getString(6)),
                                r.getString(7).isEmpty()),
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

    private static Map<String, String> facts(String text) {
        Map<String, String> facts = new HashMap<>();
        text.lines()
                .forEach(
                        l ->
                                facts.put(
                                        l.substring(0, l.lastIndexOf('=')),
                                        l.substring(l.lastIndexOf('=') + 1)));
        return facts;
    }
}
