package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import paperbark.batch.OutputFolder;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.job.Job;
import paperbark.ledger.Batches;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.output.WeekView;
import paperbark.output.calendar.CalendarDay;
import paperbark.settle.Owing;
import paperbark.value.Days;

/** Gathers what an office looks at on a Monday. */
final class WeekFacts {
    private static final int BATCHES = 20;
    private static final int AHEAD_DAYS = Owing.CLOSING_DAYS;
    private static final int BACK_DAYS = 60;
    // Common practice, no source: each one asked about is one more register to be read.
    private static final int BOOKED_YEARS = 1;
    private static final String LIES =
            " (a certificate lies in photos/: is its number in the register?)";

    private final LocalDate today;
    private final LocalDate sunday;
    private final DaysLeft left;

    private WeekFacts(LocalDate today) {
        this.today = today;
        this.sunday = monday(today).plusDays(6);
        this.left = new DaysLeft(today);
    }

    /**
     * What is known of an office's jobs beside the ledger.
     *
     * @param days the office's calendar
     * @param filed what its registers say
     * @param photos what lies in {@code photos/}; empty where that folder is not used
     */
    record Jobs(List<CalendarDay> days, FiledJobs filed, Optional<Photos.Result> photos) {}

    /** The Monday on or before a day. */
    static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    /** The week in words, such as {@code 23 Nov 2026 to 29 Nov 2026}. */
    static String week(LocalDate day) {
        return Days.show(monday(day)) + " to " + Days.show(monday(day).plusDays(6));
    }

    /**
     * What there is to look at.
     *
     * @param known what the ledger says on the day
     * @param jobs what is known of its jobs beside the ledger
     * @throws IOException when a folder cannot be read
     */
    static WeekView of(
            Office office,
            LedgerFacts known,
            Optional<FirmTables> tables,
            Jobs jobs,
            String version)
            throws IOException {
        LocalDate today = known.today();
        Ledger ledger = known.ledger();
        WeekFacts facts = new WeekFacts(today);
        WeekClaims words = new WeekClaims(facts.left, tables);
        List<ClaimState> claims = known.claims();
        Owing owing = Owing.of(claims, today);
        List<ClaimState> lodge = new ArrayList<>(owing.closing());
        lodge.removeIf(c -> last(c).isAfter(facts.sunday));
        List<ClaimState> soon = owing.closing().subList(lodge.size(), owing.closing().size());
        List<Owing.Line> late = owing.open().stream().filter(l -> l.daysOverdue() > 0).toList();
        return new WeekView(
                tables.map(FirmTables::firm).map(Firm::name).orElse(""),
                Days.show(today),
                week(today),
                version,
                words.closings(lodge),
                words.closings(soon),
                words.closings(owing.failed()),
                new WeekView.Further(
                        WeekClaims.further(lodge),
                        WeekClaims.further(soon),
                        WeekClaims.further(owing.failed())),
                words.tooLate(owing.tooLate()),
                known.lodging().map(l -> words.signed(l, ledger, jobs.filed())),
                jobs.photos().map(p -> words.files(p, claims)),
                facts.visits(known, jobs.filed()),
                facts.papers(jobs),
                held(office, ledger),
                words.overdue(late),
                WeekClaims.sum(late).toString(),
                facts.ending(jobs.days()),
                facts.machine(office));
    }

    private static LocalDate last(ClaimState claim) {
        return claim.lodgeBy().orElse(LocalDate.MAX);
    }

    /**
     * A visit that is over and of which nobody told what came of it; the longest ago first. A
     * booking that no batch told of for a year is given up.
     */
    private List<WeekView.Line> visits(LedgerFacts known, FiledJobs filed) {
        return known.currentJobs().stream()
                .filter(j -> j.installedOn().isEmpty() && !j.withdrawn())
                .filter(j -> !j.day().isBefore(today.minusYears(BOOKED_YEARS)))
                .flatMap(j -> filed.of(known.ledger(), j.reference()).stream())
                .filter(Job::isBooked)
                .filter(j -> j.ruleDay().filter(day -> day.isBefore(today)).isPresent())
                .sorted(Comparator.comparing(j -> j.ruleDay().orElseThrow()))
                .map(this::visit)
                .toList();
    }

    private WeekView.Line visit(Job job) {
        LocalDate day = job.ruleDay().orElseThrow();
        return new WeekView.Line(job.reference(), Days.show(day), left.until(day));
    }

    private List<WeekView.Line> papers(Jobs jobs) {
        List<CalendarDay> days =
                jobs.days().stream().filter(d -> d.name().startsWith("paper ")).toList();
        return lines(
                days,
                today.minusDays(BACK_DAYS),
                sunday,
                d -> d.title() + (hasFile(d, jobs) ? LIES : ""));
    }

    /** A paper that is not on file by the register may have come as a file since. */
    private static boolean hasFile(CalendarDay day, Jobs jobs) {
        return jobs.photos().stream()
                .flatMap(p -> p.jobs().stream())
                .anyMatch(j -> j.awaitsNumber() && day.name().startsWith("paper " + j.job() + " "));
    }

    private List<WeekView.Line> ending(List<CalendarDay> days) {
        return lines(
                days.stream().filter(d -> d.name().matches("(?s)(licence|offer|rule) .*")).toList(),
                today,
                today.plusDays(AHEAD_DAYS),
                CalendarDay::title);
    }

    private List<WeekView.Line> lines(
            List<CalendarDay> days,
            LocalDate from,
            LocalDate to,
            Function<CalendarDay, String> title) {
        return days.stream()
                .filter(d -> !d.cancelled() && !d.day().isBefore(from) && !d.day().isAfter(to))
                .map(
                        d ->
                                new WeekView.Line(
                                        title.apply(d), Days.show(d.day()), left.until(d.day())))
                .toList();
    }

    private static List<WeekView.Held> held(Office office, Ledger ledger) throws IOException {
        List<WeekView.Held> held = new ArrayList<>();
        String place = OutputFolder.known(office.packs()).orElse("");
        for (Batches.BatchState batch : ledger.batches().newest(BATCHES, place)) {
            if (batch.held() > 0) {
                String page = "index.html";
                boolean there = Files.exists(office.packs().resolve(batch.name()).resolve(page));
                held.add(new WeekView.Held(batch.name(), there ? page : "", batch.held()));
            }
        }
        return held;
    }

    private List<WeekView.Line> machine(Office office) throws IOException {
        List<WeekView.Line> lines = new ArrayList<>();
        CheckResult space = new FolderCheck(office).space();
        lines.add(new WeekView.Line("Disk: " + space.said(), "", ""));
        List<Path> copies = Backups.newestFirst(office);
        Optional<LocalDate> newest = copies.stream().findFirst().flatMap(WeekFacts::day);
        lines.add(
                newest.map(
                                day ->
                                        new WeekView.Line(
                                                (copies.size() == 1
                                                                ? "1 copy"
                                                                : copies.size() + " copies")
                                                        + " of the ledger, the newest of",
                                                Days.show(day),
                                                left.until(day)))
                        .orElse(
                                new WeekView.Line(
                                        "No copy of the ledger yet; watch makes one a day.",
                                        "",
                                        "")));
        return lines;
    }

    private static Optional<LocalDate> day(Path copy) {
        String name = copy.getFileName().toString().replaceAll("^paperbark-|\\.db$", "");
        return Days.parse(name).toOptional();
    }
}
