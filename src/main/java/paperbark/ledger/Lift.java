package paperbark.ledger;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Lifts an entry from the first schema to the second, in which what a job tells of a person stands
 * by itself. The same entry is lifted to the same rows wherever it is found.
 */
final class Lift {
    private static final SealedTable JOB = table("job");
    private static final SealedTable CLAIM = table("claim");
    private static final SealedTable SALE = table("sale");

    private Lift() {}

    private static SealedTable table(String name) {
        return SealedTable.of(1).stream()
                .filter(t -> t.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** The entry in the second schema; its digest is made anew, the seal before it is not known. */
    static EntryRecord of(EntryRecord old) {
        if (old.schema() > 1) {
            return old;
        }
        Map<String, List<List<String>>> rows = new HashMap<>(old.rows());
        List<List<String>> jobs = new ArrayList<>();
        List<List<String>> personal = new ArrayList<>();
        for (List<String> job : old.rows(JOB)) {
            jobs.add(job(old, job));
            personal.add(personal(old, job));
        }
        rows.put("job", jobs);
        rows.put("personal", personal);
        rows.put("forgotten", List.of());
        rows.put("claim", old.rows(CLAIM).stream().map(Lift::claim).toList());
        EntryRecord lifted = old.with(2, old.detailSha256(), "", "", rows);
        return lifted.with(2, old.detailSha256(), "", Seals.rows(lifted), rows);
    }

    /** The day of the installation is that of the claim or sale; the warranty was not kept. */
    private static List<String> job(EntryRecord old, List<String> job) {
        String installed =
                Stream.of(CLAIM, SALE)
                        .flatMap(t -> ofJob(old, t, job).map(row -> cell(t, row, "installed_on")))
                        .findFirst()
                        .orElse("");
        List<String> row = new ArrayList<>(job.subList(0, JOB.at("facts")));
        row.addAll(List.of(installed, ""));
        return row;
    }

    private static List<String> personal(EntryRecord old, List<String> job) {
        String key = cell(JOB, job, "job_key");
        String version = cell(JOB, job, "version");
        String site =
                ofJob(old, CLAIM, job)
                        .map(row -> cell(CLAIM, row, "site_key"))
                        .findFirst()
                        .orElse("");
        Personal told =
                new Personal(
                        site,
                        cell(JOB, job, "facts"),
                        DigestUtils.sha256Hex(old.rowsSha256() + key + "/" + version));
        return List.of(key, version, told.site(), told.facts(), told.salt(), told.seal());
    }

    private static Stream<List<String>> ofJob(
            EntryRecord old, SealedTable table, List<String> job) {
        return old.rows(table).stream()
                .filter(
                        row ->
                                Stream.of("job_key", "version")
                                        .allMatch(
                                                c ->
                                                        cell(table, row, c)
                                                                .equals(cell(JOB, job, c))));
    }

    private static List<String> claim(List<String> claim) {
        List<String> row = new ArrayList<>(claim);
        row.remove(CLAIM.at("site_key"));
        return row;
    }

    private static String cell(SealedTable table, List<String> row, String column) {
        return row.get(table.at(column));
    }
}
