package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import paperbark.batch.OutputFolder;
import paperbark.firm.Buyer;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
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
    private static final int AHEAD_DAYS = Owing.CLOSING_DAYS;
    private static final int BACK_DAYS = 60;

    private final LocalDate today;
    private final LocalDate sunday;
    private final Optional<FirmTables> tables;

    private WeekFacts(LocalDate today, Optional<FirmTables> tables) {
        this.today = today;
        this.sunday = monday(today).plusDays(6);
        this.tables = tables;
    }

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
     * @param days the office's calendar
     * @throws IOException when a folder cannot be read
     */
    static WeekView of(
            Office office,
            Ledger ledger,
            Optional<FirmTables> tables,
            List<CalendarDay> days,
            LocalDate today,
            String version)
            throws IOException {
        WeekFacts facts = new WeekFacts(today, tables);
        List<ClaimState> claims = ledger.claims(today);
        Owing owing = Owing.of(claims, today);
        List<Owing.Line> late = owing.open().stream().filter(l -> l.daysOverdue() > 0).toList();
        return new WeekView(
                tables.map(FirmTables::firm).map(Firm::name).orElse(""),
                Days.show(today),
                week(today),
                version,
                facts.closings(owing.closing(), c -> !last(c).isAfter(facts.sunday)),
                facts.closings(owing.closing(), c -> last(c).isAfter(facts.sunday)),
                facts.closings(owing.failed(), c -> true),
                Lodging.of(ledger, claims).map(facts::signed),
                facts.papers(days),
                held(office, ledger),
                facts.overdue(late),
                sum(late).toString(),
                facts.ending(days),
                facts.machine(office));
    }

    private static LocalDate last(ClaimState claim) {
        return claim.lodgeBy().orElse(LocalDate.MAX);
    }

    private List<WeekView.Closing> closings(List<ClaimState> claims, Predicate<ClaimState> which) {
        return claims.stream().filter(which).map(this::closing).toList();
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

    private WeekView.Signed signed(Lodging lodging) {
        return new WeekView.Signed(
                lodging.ready().size(),
                lodging.awaited().size(),
                lodging.awaited().stream().limit(NOT_BACK).map(this::notBack).toList());
    }

    private WeekView.NotBack notBack(Lodging.Assigned assigned) {
        Optional<LocalDate> last = assigned.claim().lodgeBy();
        return new WeekView.NotBack(
                assigned.claim().reference(),
                assigned.name(),
                assigned.paper().awaited(),
                assigned.paper().batch(),
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
        String count = Math.abs(days) == 1 ? "1 day" : Math.abs(days) + " days";
        return days < 0 ? count + " ago" : count + " left";
    }

    private List<WeekView.Line> papers(List<CalendarDay> days) {
        return lines(
                days.stream().filter(d -> d.name().startsWith("paper ")).toList(),
                today.minusDays(BACK_DAYS),
                sunday);
    }

    private List<WeekView.Line> ending(List<CalendarDay> days) {
        return lines(
                days.stream().filter(d -> d.name().matches("(?s)(licence|offer|rule) .*")).toList(),
                today,
                today.plusDays(AHEAD_DAYS));
    }

    private List<WeekView.Line> lines(List<CalendarDay> days, LocalDate from, LocalDate to) {
        return days.stream()
                .filter(d -> !d.cancelled() && !d.day().isBefore(from) && !d.day().isAfter(to))
                .map(d -> new WeekView.Line(d.title(), Days.show(d.day()), left(d.day())))
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
                + line.daysOverdue()
                + " days";
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
