package paperbark.ledger;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Reads how papers stand: what went out, whether it counts still, and what came back of it. */
final class PaperRows {
    private static final String PAPERS =
            "SELECT j.reference, p.job_key, p.kind, p.version, e.name, e.day,"
                    + " (SELECT count(*) FROM paper l WHERE l.job_key = p.job_key AND l.kind = p.kind"
                    + " AND l.version > p.version),"
                    + " (SELECT count(*) FROM withdrawn w WHERE w.job_key = p.job_key"
                    + " AND w.version >= p.version),"
                    // What versions between said counts no longer: facts may have been put back.
                    + ofTaking("max(te.name)")
                    + ", "
                    + ofTaking("max(t.says)")
                    + ", j.outcome <> 'booked' AND 'booked' ="
                    + " (SELECT n.outcome FROM job n WHERE n.job_key = p.job_key"
                    + " ORDER BY n.version DESC LIMIT 1)"
                    + " FROM paper p JOIN entry e ON e.seq = p.entry"
                    + " JOIN job j ON j.job_key = p.job_key AND j.version = p.version WHERE p.kind NOT LIKE '%"
                    + PaperEntry.TAKEN_BACK
                    + "' AND ";

    private static final String CAME =
            "SELECT s.job_key, s.version, s.kind, s.page, s.pages, s.blank, b.day FROM scanned s"
                    + " JOIN entry b ON b.seq = s.entry JOIN paper p ON p.job_key = s.job_key"
                    + " AND p.version = s.version AND p.kind = s.kind"
                    + " JOIN entry e ON e.seq = p.entry WHERE ";

    private final Sql sql;

    PaperRows(Sql sql) {
        this.sql = sql;
    }

    private static String ofTaking(String what) {
        return " (SELECT "
                + what
                + " FROM paper t JOIN entry te ON te.seq = t.entry"
                + " WHERE t.job_key = p.job_key AND t.kind = p.kind || '"
                + PaperEntry.TAKEN_BACK
                + "' AND t.version > p.version AND t.version ="
                + " (SELECT max(n.version) FROM job n WHERE n.job_key = p.job_key))";
    }

    private record Printed(
            String job,
            String key,
            String kind,
            int version,
            String batch,
            LocalDate printedOn,
            boolean replaced,
            boolean withdrawn,
            Optional<String> takenBack,
            boolean dropped,
            boolean bookedAgain) {
        private String id() {
            return key + " " + version + " " + kind;
        }
    }

    private record Came(String paper, int page, int pages, int blank, LocalDate day) {}

    /** Two questions, however many papers: each takes its time to travel to a server. */
    List<PaperState> where(String condition, Object... values) {
        List<Printed> printed =
                sql.list(
                        PAPERS + condition,
                        r ->
                                new Printed(
                                        r.getString(1),
                                        r.getString(2),
                                        r.getString(3),
                                        r.getInt(4),
                                        r.getString(5),
                                        LocalDate.parse(r.getString(6)),
                                        r.getLong(7) > 0,
                                        r.getLong(8) > 0,
                                        Optional.ofNullable(r.getString(9)),
                                        PaperEntry.NONE_NOW.equals(r.getString(10)),
                                        r.getBoolean(11)),
                        values);
        if (printed.isEmpty()) {
            return List.of();
        }
        Map<String, List<Came>> came =
                sql
                        .list(
                                CAME + condition + " ORDER BY s.entry, s.place",
                                r ->
                                        new Came(
                                                r.getString(1)
                                                        + " "
                                                        + r.getInt(2)
                                                        + " "
                                                        + r.getString(3),
                                                r.getInt(4),
                                                r.getInt(5),
                                                r.getInt(6),
                                                LocalDate.parse(r.getString(7))),
                                values)
                        .stream()
                        .collect(Collectors.groupingBy(Came::paper));
        return printed.stream()
                .map(paper -> state(paper, came.getOrDefault(paper.id(), List.of())))
                .sorted(
                        Comparator.comparing(PaperState::job)
                                .thenComparing(PaperState::kind)
                                .thenComparing(
                                        Comparator.comparing(PaperState::version).reversed()))
                .toList();
    }

    private static PaperState state(Printed paper, List<Came> came) {
        Set<Integer> back = new HashSet<>();
        SortedMap<Integer, Integer> blank = new TreeMap<>();
        Set<Integer> whole = new HashSet<>();
        for (Came page : came) {
            back.add(page.page());
            if (page.blank() > 0) {
                blank.put(page.page(), page.blank());
            } else {
                whole.add(page.page());
            }
        }
        // A page that was signed afterwards and came again is signed.
        blank.keySet().removeAll(whole);
        Optional<LocalDate> last = came.stream().map(Came::day).max(Comparator.naturalOrder());
        return new PaperState(
                paper.job(),
                paper.kind(),
                paper.version(),
                paper.batch(),
                paper.printedOn(),
                paper.replaced(),
                paper.withdrawn(),
                paper.takenBack(),
                paper.dropped(),
                paper.bookedAgain(),
                came.stream().mapToInt(Came::pages).max().orElse(0),
                back,
                blank,
                last);
    }
}
