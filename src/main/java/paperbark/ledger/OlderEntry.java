package paperbark.ledger;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Brings an entry of an older schema to a newer one. The same entry becomes the same rows wherever
 * it is found.
 *
 * <p>In the second schema what a job tells of a person stands by itself. In the third prints are
 * keyed; those from before, which had no key, are emptied. The fourth knows scanned papers.
 */
final class OlderEntry {
    private static final SealedTable JOB = table("job");
    private static final SealedTable CLAIM = table("claim");
    private static final SealedTable SALE = table("sale");
    private static final SealedTable PERSONAL_2 = SealedTable.personal(2);

    private OlderEntry() {}

    private static SealedTable table(String name) {
        return SealedTable.of(1).stream()
                .filter(t -> t.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** The entry in the schema of today; its digest is made anew, the seal before is not known. */
    static EntryRecord lifted(EntryRecord old) {
        return lifted(old, Schema.VERSION, List.of());
    }

    /**
     * The same entry as a newer program wrote it elsewhere: in that schema, and without what was
     * emptied there before it was brought to that schema.
     */
    static EntryRecord lifted(EntryRecord old, EntryRecord newer) {
        return lifted(old, newer.schema(), newer.rows(SealedTable.personal(newer.schema())));
    }

    private static EntryRecord lifted(
            EntryRecord old, int schema, List<List<String>> personalThere) {
        EntryRecord entry = old;
        if (entry.schema() == 1 && schema > 1) {
            entry = second(entry);
        }
        if (entry.schema() == 2 && schema > 2) {
            entry = third(entry, personalThere);
        }
        if (entry.schema() == 3 && schema > 3) {
            entry = anew(entry, 4, entry.rows());
        }
        return entry;
    }

    private static EntryRecord second(EntryRecord old) {
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
        rows.put("claim", old.rows(CLAIM).stream().map(OlderEntry::claim).toList());
        return anew(old, 2, rows);
    }

    private static EntryRecord third(EntryRecord old, List<List<String>> personalThere) {
        Map<String, List<List<String>>> rows = new HashMap<>(old.rows());
        rows.put(
                "personal",
                old.rows(PERSONAL_2).stream().map(row -> unprinted(row, personalThere)).toList());
        return anew(old, 3, rows);
    }

    /** A row that was emptied already keeps its seal, which nobody can make any more. */
    private static List<String> unprinted(List<String> row, List<List<String>> personalThere) {
        List<String> names = row.subList(0, PERSONAL_2.at("site_key"));
        String seal = cell(PERSONAL_2, row, "seal");
        List<String> emptied = new ArrayList<>(names);
        emptied.addAll(List.of("", "", "", "", seal));
        if (PERSONAL_2.isEmptied(row) || personalThere.contains(emptied)) {
            return emptied;
        }
        List<String> left = new ArrayList<>(names);
        left.addAll(
                List.of(cell(PERSONAL_2, row, "site_key"), "", "", cell(PERSONAL_2, row, "salt")));
        return SealedTable.PERSONAL.sealed(left);
    }

    private static EntryRecord anew(
            EntryRecord old, int schema, Map<String, List<List<String>>> rows) {
        EntryRecord lifted =
                EntryRecordBuilder.builder(old)
                        .schema(schema)
                        .before("")
                        .rowsSha256("")
                        .rows(rows)
                        .build();
        return EntryRecordBuilder.builder(lifted).rowsSha256(Seals.rows(lifted)).build();
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
        return PERSONAL_2.sealed(
                List.of(
                        key,
                        version,
                        site,
                        cell(JOB, job, "facts"),
                        DigestUtils.sha256Hex(old.rowsSha256() + key + "/" + version)));
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
