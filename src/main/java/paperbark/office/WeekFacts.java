package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import paperbark.batch.OutputFolder;
import paperbark.firm.Buyer;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.job.Job;
import paperbark.ledger.Batches;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.ledger.Lodging;
import paperbark.output.WeekView;
import paperbark.output.calendar.CalendarDay;
import paperbark.settle.Owing;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.Phone;

/** Gathers what an office looks at on a Monday. */
final class WeekFacts {
    private static final int BATCHES = 20;
    // A sheet for the wall; how many more there are is said below them.
    private static final int NOT_BACK = 40;
    // More than that nobody lodges by a list on paper.
    private static final int LISTED = 200;
    private static final int AHEAD_DAYS = Owing.CLOSING_DAYS;
    private static final int BACK_DAYS = 60;
    // Common practice, no source: each one asked about is one more register to be read.
    private static final int BOOKED_YEARS = 1;
    private static final String LIES =
            " (a certificate lies in photos/: is its number in the register?)";

    private final LocalDate today;
    private final LocalDate sunday;
    private final Optional<FirmTables> tables;

    private WeekFacts(LocalDate today, Optional<FirmTables> tables) {
        this.today = today;
        this.sunday = monday(today).plusDays(6);
        this.tables = tables;
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
        WeekFacts facts = new WeekFacts(today, tables);
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
                facts.closings(lodge),
                facts.closings(soon),
                facts.closings(owing.failed()),
                new WeekView.Further(further(lodge), further(soon), further(owing.failed())),
                facts.tooLate(owing.tooLate()),
                known.lodging().map(l -> facts.signed(l, ledger, jobs.filed())),
                jobs.photos().map(p -> facts.files(p, claims)),
                facts.visits(known, jobs.filed()),
                facts.papers(jobs),
                held(office, ledger),
                facts.overdue(late),
                sum(late).toString(),
                facts.ending(jobs.days()),
                facts.machine(office));
    }

    private static LocalDate last(ClaimState claim) {
        return claim.lodgeBy().orElse(LocalDate.MAX);
    }

    private List<WeekView.Closing> closings(List<ClaimState> claims) {
        return claims.stream().limit(LISTED).map(this::closing).toList();
    }

    private static int further(List<ClaimState> claims) {
        return Math.max(0, claims.size() - LISTED);
    }

    /** Where nobody says what was lodged they are many, and the newest can still be asked about. */
    private WeekView.TooLate tooLate(List<ClaimState> claims) {
        List<ClaimState> newest =
                claims.subList(Math.max(0, claims.size() - NOT_BACK), claims.size());
        return new WeekView.TooLate(claims.size(), closings(newest), Lodging.WHEN_TOO_LATE);
    }

    private WeekView.Closing closing(ClaimState c) {
        return new WeekView.Closing(
                c.reference(),
                c.certificates() + " " + c.scheme().word() + "s",
                c.buyer(),
                phone(c.buyer()),
                c.lodgeBy().map(Days::show).orElse(""),
                c.lodgeBy().map(this::left).orElse(""),
                c.failed().orElse(""));
    }

    private WeekView.Signed signed(Lodging lodging, Ledger ledger, FiledJobs filed) {
        return new WeekView.Signed(
                lodging.ready().size(),
                lodging.awaited().size(),
                lodging.awaited().stream()
                        .limit(NOT_BACK)
                        .map(a -> notBack(a, filed.of(ledger, a.claim().job())))
                        .toList());
    }

    private WeekView.NotBack notBack(Lodging.Assigned assigned, Optional<Job> job) {
        Optional<LocalDate> last = assigned.claim().lodgeBy();
        return new WeekView.NotBack(
                assigned.claim().reference(),
                assigned.name(),
                assigned.paper().awaited(),
                assigned.paper().batch(),
                job.flatMap(j -> j.owner().phone()),
                last.map(Days::show).orElse(""),
                last.map(this::left).orElse(""));
    }

    private Optional<Phone> phone(String buyer) {
        return tables.flatMap(t -> t.buyer(buyer)).flatMap(Buyer::phone);
    }

    private String left(LocalDate day) {
        long days = ChronoUnit.DAYS.between(today, day);
        if (days == 0) {
            return "today";
        }
        return days < 0 ? count(-days) + " ago" : count(days) + " left";
    }

    private static String count(long days) {
        return days == 1 ? "1 day" : days + " days";
    }

    /** What is wanted of claims to be lodged and is not there. */
    private WeekView.Files files(Photos.Result photos, List<ClaimState> claims) {
        Set<String> toLodge =
                claims.stream()
                        .filter(c -> c.isToLodge(today))
                        .map(ClaimState::job)
                        .collect(Collectors.toSet());
        List<WeekView.Lacking> lacking =
                photos.jobs().stream()
                        .filter(j -> toLodge.contains(j.job()) && !j.lacking().isEmpty())
                        .map(j -> new WeekView.Lacking(j.job(), String.join(", ", j.lacking())))
                        .toList();
        return new WeekView.Files(
                PhotoDesk.lines(photos),
                lacking.stream().limit(NOT_BACK).toList(),
                Math.max(0, lacking.size() - NOT_BACK));
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
        return new WeekView.Line(job.reference(), Days.show(day), left(day));
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
                .map(d -> new WeekView.Line(title.apply(d), Days.show(d.day()), left(d.day())))
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

    private List<WeekView.Overdue> overdue(List<Owing.Line> late) {
        Map<String, List<Owing.Line>> byBuyer = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        late.forEach(
                l -> byBuyer.computeIfAbsent(l.claim().buyer(), b -> new ArrayList<>()).add(l));
        List<WeekView.Overdue> all = new ArrayList<>();
        byBuyer.forEach(
                (buyer, lines) ->
                        all.add(
                                new WeekView.Overdue(
                                        buyer.isEmpty() ? "(no buyer)" : buyer,
                                        phone(buyer),
                                        sum(lines).toString(),
                                        oldest(lines.get(0)),
                                        lines.size())));
        return all;
    }

    private static Money sum(List<Owing.Line> lines) {
        return lines.stream().map(l -> l.claim().outstanding()).reduce(Money.ZERO, Money::plus);
    }

    /** The lines come with the longest overdue first. */
    private static String oldest(Owing.Line line) {
        return line.claim().reference()
                + ", due "
                + line.claim().due().map(Days::show).orElse("")
                + ", "
                + count(line.daysOverdue());
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
                                                left(day)))
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
