package paperbark.output.index;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import paperbark.offer.Expected;
import paperbark.offer.Standing;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.index.Chart.Part;
import paperbark.output.table.JobStatus;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** The batch at a glance: certificates by scheme and day, money by week, packs by status. */
final class Glance {
    // Two weeks; more bars are no glance any more.
    private static final int MOST_BARS = 14;
    private static final LocalDate UNKNOWN = LocalDate.MAX;

    private Glance() {}

    /** The charts of a batch; those that would show nothing are left out. */
    static List<Chart> of(BatchView view) {
        List<Chart> charts = new ArrayList<>();
        for (SchemeName scheme : SchemeName.values()) {
            charts.add(certificates(view, scheme));
        }
        charts.add(money(view));
        charts.add(packs(view));
        return charts.stream().filter(chart -> !chart.bars().isEmpty()).toList();
    }

    private static Chart certificates(BatchView view, SchemeName scheme) {
        Sums sums = new Sums();
        for (CaseFile file : view.cases()) {
            long count =
                    file.entitlements().of(scheme).stream()
                            .mapToLong(e -> e.certificates().orElse(0))
                            .sum();
            Standing standing = file.standing(scheme);
            if (count > 0 && (standing.counts() || standing == Standing.HELD)) {
                sums.add(
                        file.countedOn().orElse(UNKNOWN),
                        BigDecimal.valueOf(count),
                        standing.counts());
            }
        }
        Spans spans = Spans.of(sums.days(), false);
        return Chart.headed(
                        scheme.word() + "s by " + spans.word() + " of installation",
                        spans.heading(),
                        scheme.word() + "s",
                        "Held")
                .drawn(sums.parts(spans), BigDecimal::toPlainString);
    }

    private static Chart money(BatchView view) {
        Sums sums = new Sums();
        for (CaseFile file : view.cases()) {
            for (Expected expected : file.expected()) {
                Standing standing = file.standing(expected.scheme());
                sums.add(expected.due(), expected.split().toFirm().amount(), standing.counts());
            }
        }
        Spans spans = Spans.of(sums.days(), true);
        return Chart.headed(
                        "Money for the firm by " + spans.word() + " due",
                        spans.heading(),
                        "Expected",
                        "Held")
                .drawn(sums.parts(spans), dollars -> new Money(dollars.setScale(2)).toString());
    }

    private static Chart packs(BatchView view) {
        List<Part> parts =
                Arrays.stream(JobStatus.values())
                        .sorted(Comparator.reverseOrder())
                        .map(status -> part(view, status))
                        .filter(part -> part.counts().add(part.held()).signum() > 0)
                        .toList();
        return Chart.headed("Packs by status", "Status", "Packs", "Held")
                .drawn(parts, BigDecimal::toPlainString);
    }

    private static Part part(BatchView view, JobStatus status) {
        BigDecimal count =
                BigDecimal.valueOf(
                        view.cases().stream().filter(f -> JobStatus.of(f) == status).count());
        return status == JobStatus.HELD
                ? new Part(status.word(), BigDecimal.ZERO, count)
                : new Part(status.word(), count, BigDecimal.ZERO);
    }

    /**
     * How long a time a bar is of: a day where that makes few enough bars, else a week or a month.
     *
     * @param word its name
     * @param heading of the column of days
     * @param first the first day of the time that a day is in
     */
    private record Spans(String word, String heading, UnaryOperator<LocalDate> first) {
        private static final Spans DAYS = new Spans("day", "Day", UnaryOperator.identity());
        private static final Spans WEEKS =
                new Spans(
                        "week",
                        "Week from",
                        d -> d.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)));
        private static final Spans MONTHS =
                new Spans("month", "Month from", d -> d.withDayOfMonth(1));

        static Spans of(List<LocalDate> days, boolean weeks) {
            if (!weeks && few(days, DAYS)) {
                return DAYS;
            }
            return few(days, WEEKS) ? WEEKS : MONTHS;
        }

        private static boolean few(List<LocalDate> days, Spans spans) {
            return days.stream().map(spans.first()).distinct().count() <= MOST_BARS;
        }
    }

    /** What counts and what is held, by day. */
    private static final class Sums {
        private final TreeMap<LocalDate, Part> byDay = new TreeMap<>();

        void add(LocalDate day, BigDecimal amount, boolean counts) {
            BigDecimal none = BigDecimal.ZERO;
            merge(byDay, day, new Part("", counts ? amount : none, counts ? none : amount));
        }

        List<LocalDate> days() {
            return byDay.keySet().stream().filter(day -> !day.equals(UNKNOWN)).toList();
        }

        List<Part> parts(Spans spans) {
            Map<LocalDate, Part> bySpan = new LinkedHashMap<>();
            byDay.forEach(
                    (day, part) ->
                            merge(
                                    bySpan,
                                    day.equals(UNKNOWN) ? day : spans.first().apply(day),
                                    part));
            return folded(
                    bySpan.entrySet().stream()
                            .map(e -> named(e.getKey(), e.getValue()))
                            .filter(part -> part.counts().add(part.held()).signum() != 0)
                            .toList());
        }

        private static Part named(LocalDate day, Part part) {
            return new Part(
                    day.equals(UNKNOWN) ? "no day yet" : Days.show(day),
                    part.counts(),
                    part.held());
        }

        /** Months beyond the last bar are told together. */
        private static List<Part> folded(List<Part> parts) {
            if (parts.size() <= MOST_BARS) {
                return parts;
            }
            List<Part> few = new ArrayList<>(parts.subList(0, MOST_BARS - 1));
            few.add(
                    parts.subList(MOST_BARS - 1, parts.size()).stream()
                            .reduce(
                                    new Part("later", BigDecimal.ZERO, BigDecimal.ZERO),
                                    Sums::sum));
            return few;
        }

        private static void merge(Map<LocalDate, Part> to, LocalDate day, Part part) {
            to.merge(day, part, Sums::sum);
        }

        private static Part sum(Part a, Part b) {
            return new Part(a.label(), a.counts().add(b.counts()), a.held().add(b.held()));
        }
    }
}
