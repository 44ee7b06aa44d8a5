package paperbark.job;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.value.Serial;

/** Checks over all jobs of a batch: what may be there only once. */
public final class BatchCheck {
    // A sentence that names hundreds of rows helps nobody.
    private static final int NAMED = 3;

    private BatchCheck() {}

    /**
     * Everything that two or more jobs share and should not; each job involved gets its own
     * finding.
     */
    public static List<Finding> of(List<Job> jobs) {
        List<Finding> findings = new ArrayList<>();
        // What a cancelled job has may well be another's: it was booked again.
        List<Job> live = jobs.stream().filter(job -> job.stage() != Stage.CANCELLED).toList();
        Set<String> rowEach = onRowsOfTheirOwn(jobs);
        findings.addAll(
                numbers(
                        jobs.stream().filter(job -> !rowEach.contains(number(job))).toList(),
                        "Give each job its own number, or delete the row that is wrong."));
        findings.addAll(
                numbers(
                        jobs.stream().filter(job -> rowEach.contains(number(job))).toList(),
                        RowsOfJob.ROW_EACH));
        findings.addAll(
                shared(
                        live,
                        BatchCheck::serials,
                        FindingCode.SERIAL_TWICE,
                        "The serial also stands in ",
                        "Read the numbers off both plates again."));
        findings.addAll(certificates(live, Field.PLUMBING_CERTIFICATE, Compliance::plumbingNumber));
        findings.addAll(
                certificates(live, Field.ELECTRICAL_CERTIFICATE, Compliance::electricalNumber));
        findings.addAll(
                shared(
                        live,
                        job -> job.site().position().isPresent() ? Stream.empty() : address(job),
                        FindingCode.ADDRESS_TWICE,
                        "The site address also stands in ",
                        "Type under \""
                                + Field.SITE_POSITION.label()
                                + "\" where on the property each heater stands."));
        columns(live).ifPresent(findings::add);
        findings.addAll(UntoldClaims.of(live));
        rowEach(jobs, rowEach).ifPresent(findings::add);
        return findings;
    }

    private static List<Finding> numbers(List<Job> jobs, String remedy) {
        return shared(
                jobs,
                job -> mark(Field.JOB, Optional.of(job.reference()), s -> s),
                FindingCode.JOB_TWICE,
                "The job number also stands in ",
                remedy);
    }

    /** Jobs of a list with a row a certificate that nobody told the program about. */
    private static Set<String> onRowsOfTheirOwn(List<Job> jobs) {
        Set<String> found = new LinkedHashSet<>();
        Map<String, Job> byNumber = new HashMap<>();
        for (Job job : jobs) {
            Job other = byNumber.putIfAbsent(number(job), job);
            if (other != null && isOneJob(other, job)) {
                found.add(number(job));
            }
        }
        return found;
    }

    private static Optional<Finding> rowEach(List<Job> jobs, Set<String> rowEach) {
        int count = rowEach.size();
        return rowEach.stream()
                .findFirst()
                .map(
                        first ->
                                Finding.of(
                                        FindingCode.ROW_A_CERTIFICATE,
                                        new Place.InFile(jobs.get(0).origin().file()),
                                        (count == 1 ? "1 job stands" : count + " jobs stand")
                                                + " on two rows each, one a scheme, such as "
                                                + first
                                                + ".",
                                        RowsOfJob.ROW_EACH));
    }

    private static boolean isOneJob(Job one, Job other) {
        return !RowsOfJob.schemes(one).isEmpty()
                && !RowsOfJob.schemes(other).isEmpty()
                && Collections.disjoint(RowsOfJob.schemes(one), RowsOfJob.schemes(other))
                && one.owner().name().equals(other.owner().name())
                && one.site().address().equals(other.site().address())
                && one.heater().tankSerial().equals(other.heater().tankSerial());
    }

    private static List<Finding> certificates(
            List<Job> jobs, Field field, Function<Compliance, Optional<String>> number) {
        return shared(
                jobs,
                job -> mark(field, number.apply(job.compliance()), s -> s),
                FindingCode.CERTIFICATE_TWICE,
                "The certificate number also stands in ",
                "Compare both certificates and correct the number that is wrong.");
    }

    /**
     * Facts that installed jobs miss because the register has no column for them: told once, not
     * per job.
     */
    private static Optional<Finding> columns(List<Job> jobs) {
        List<String> absent =
                jobs.stream()
                        .filter(Job::isInstalled)
                        .flatMap(
                                job ->
                                        Missing.of(job).stream()
                                                .filter(
                                                        m ->
                                                                !m.isToldElsewhere(job)
                                                                        && !job.origin()
                                                                                .columns()
                                                                                .containsKey(
                                                                                        m.field())))
                        .map(Missing::field)
                        .distinct()
                        .sorted()
                        .map(field -> "\"" + field.label() + "\"")
                        .toList();
        return jobs.stream()
                .findFirst()
                .filter(job -> !absent.isEmpty())
                .map(
                        job ->
                                Finding.of(
                                        FindingCode.FACT_MISSING,
                                        new Place.InFile(job.origin().file()),
                                        "The register has no column for "
                                                + String.join(", ", absent)
                                                + ".",
                                        "Add the columns, or have the facts written on the papers."));
    }

    /** Something of a job that another job may not have; compared by key, shown as seen. */
    private record Mark(Field field, String key, String seen) {}

    private record Marked(Job job, Mark mark) {
        Place place() {
            return job.origin().cell(mark.field());
        }

        String seenFrom(Marked other) {
            return other.job == job
                    ? "\"" + other.place().columnHeading() + "\" of the same row"
                    : "row " + other.job.origin().row() + " (" + other.job.reference() + ")";
        }
    }

    private static Stream<Mark> serials(Job job) {
        Stream<Mark> tank = mark(Field.TANK_SERIAL, job.heater().tankSerial(), Serial::key);
        Stream<Mark> pump =
                mark(Field.HEAT_PUMP_SERIAL, job.heater().heatPumpSerial(), Serial::key);
        Stream<Mark> collectors =
                job.heater().collectorSerials().stream()
                        .map(s -> new Mark(Field.COLLECTOR_SERIALS, s.key(), s.seen()));
        return Stream.of(tank, pump, collectors).flatMap(s -> s);
    }

    private static <T> Stream<Mark> mark(Field field, Optional<T> value, Function<T, String> key) {
        return value
                .map(v -> new Mark(field, key.apply(v).toUpperCase(Locale.ROOT), v.toString()))
                .stream();
    }

    private static Stream<Mark> address(Job job) {
        return job.site().address().isComplete()
                ? Stream.of(
                        new Mark(
                                Field.SITE_STREET,
                                job.site()
                                        .address()
                                        .toString()
                                        .toUpperCase(Locale.ROOT)
                                        .replaceAll("[\\s.,]", ""),
                                job.site().address().street().orElse("")))
                : Stream.empty();
    }

    /** A job's number as numbers are compared. */
    private static String number(Job job) {
        return job.reference().toUpperCase(Locale.ROOT);
    }

    /** Rows with one job number share everything; that number is told. */
    private static boolean isJobTwice(List<Marked> same) {
        return same.stream().anyMatch(m -> m.job() != same.get(0).job())
                && same.stream().map(m -> number(m.job())).distinct().count() == 1;
    }

    private static String more(int others) {
        return others > NAMED ? " and %,d more".formatted(others - NAMED) : "";
    }

    private static List<Finding> shared(
            List<Job> jobs,
            Function<Job, Stream<Mark>> marks,
            FindingCode code,
            String fact,
            String remedy) {
        Map<String, List<Marked>> byKey = new LinkedHashMap<>();
        for (Job job : jobs) {
            marks.apply(job)
                    .forEach(
                            m ->
                                    byKey.computeIfAbsent(m.key(), k -> new ArrayList<>())
                                            .add(new Marked(job, m)));
        }
        List<Finding> findings = new ArrayList<>();
        for (List<Marked> same : byKey.values()) {
            if (same.size() < 2 || (code != FindingCode.JOB_TWICE && isJobTwice(same))) {
                continue;
            }
            for (Marked one : same) {
                List<Marked> others = same.stream().filter(o -> o != one).limit(NAMED).toList();
                String where =
                        others.stream().map(one::seenFrom).collect(Collectors.joining(", "))
                                + more(same.size() - 1);
                findings.add(
                        Finding.of(code, one.place(), fact + where + ".", remedy)
                                .seeing(one.mark().seen())
                                .forJob(one.job().reference())
                                .alsoAt(others.stream().map(Marked::place).toList()));
            }
        }
        return findings;
    }
}
