package paperbark.office;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import paperbark.firm.FirmTables;
import paperbark.firm.Licence;
import paperbark.firm.Offer;
import paperbark.firm.Person;
import paperbark.ledger.ClaimState;
import paperbark.ledger.CurrentJob;
import paperbark.ledger.JobOutcome;
import paperbark.output.calendar.CalendarDay;
import paperbark.rules.RuleLine;
import paperbark.rules.RuleTable;
import paperbark.rules.Rulebook;
import paperbark.value.Days;

/**
 * The days that an office must not forget: closing dates, compliance papers, maintenance, licences,
 * offers and rules that end. Of what is over, the last months are kept, so that a calendar drops
 * what was called off.
 */
final class CalendarDays {
    /** What lies further back is left out. */
    private static final int BACK_DAYS = 90;

    /** Maintenance and rules further off are left out. */
    private static final int AHEAD_MONTHS = 13;

    // Common practice, no source: the handover's diary has the same visits.
    private static final int CARE_YEARS = 5;

    private static final List<Integer> LONG_BEFORE = List.of(60, 14);
    private static final List<Integer> SHORTLY_BEFORE = List.of(2);
    private static final List<Integer> WEEK_BEFORE = List.of(7);
    private static final String CLOSING = "Create ";

    private final LocalDate today;
    private final LocalDate first;
    private final List<CalendarDay> days = new ArrayList<>();
    private final Set<String> standing = new HashSet<>();
    private final Set<String> told = new HashSet<>();

    private CalendarDays(LocalDate today) {
        this.today = today;
        this.first = today.minusDays(BACK_DAYS);
    }

    /**
     * The days, the earliest first.
     *
     * @param batches the last days that published batches knew
     * @param tables the firm's tables, where they can be read
     * @throws IOException when a batch folder cannot be read
     */
    static List<CalendarDay> of(
            LedgerFacts facts, KnownDays batches, Optional<FirmTables> tables, Rulebook rulebook)
            throws IOException {
        CalendarDays calendar = new CalendarDays(facts.today());
        calendar.claims(facts.allClaims());
        calendar.jobs(batches, facts.currentJobs());
        tables.ifPresent(
                t -> {
                    t.people().forEach(calendar::licences);
                    calendar.offers(t.offers());
                });
        rulebook.all().forEach(calendar::rules);
        calendar.days.sort(Comparator.comparing(CalendarDay::day).thenComparing(CalendarDay::name));
        return calendar.days;
    }

    private void add(
            String name,
            LocalDate day,
            String title,
            String text,
            List<Integer> warnings,
            boolean cancelled) {
        if (!day.isBefore(first)) {
            days.add(new CalendarDay(name, day, title, text, warnings, cancelled));
        }
    }

    /** Of a claim that was corrected the newest counts; no earlier one stands beside it. */
    private void claims(List<ClaimState> claims) {
        Map<String, ClaimState> newest = new TreeMap<>();
        claims.forEach(c -> newest.put(c.reference(), c));
        for (ClaimState c : newest.values()) {
            String name = "closing " + c.reference();
            told.add(name);
            if (c.active()) {
                standing.add(name);
            }
            boolean done = c.isWithBuyer();
            c.lodgeBy()
                    .filter(day -> !day.isBefore(first))
                    .ifPresent(
                            day ->
                                    add(
                                            name,
                                            day,
                                            closing(
                                                            c.certificates()
                                                                    + " "
                                                                    + c.scheme().word()
                                                                    + "s")
                                                    + ": "
                                                    + c.job(),
                                            !c.active()
                                                    ? "The claim was withdrawn."
                                                    : done
                                                            ? "Lodged; nothing is to be done."
                                                            : "Claim "
                                                                    + c.reference()
                                                                    + " is not known to be lodged.",
                                            LONG_BEFORE,
                                            done || !c.active()));
        }
    }

    private static String closing(String what) {
        return "Last day to create " + what;
    }

    private void jobs(KnownDays known, List<CurrentJob> jobs) throws IOException {
        Map<String, Map<String, Map<String, LocalDate>>> batches = new HashMap<>();
        for (CurrentJob job : jobs) {
            if (job.installedOn().isEmpty()) {
                continue;
            }
            care(job, job.installedOn().get());
            if (!batches.containsKey(job.batch())) {
                batches.put(job.batch(), known.of(job.batch(), first));
            }
            batches.get(job.batch())
                    .getOrDefault(job.reference(), Map.of())
                    .forEach((what, day) -> lastDay(job, what, day));
        }
    }

    /** The closing date of a claim that was made is that of the ledger. */
    private void lastDay(CurrentJob job, String what, LocalDate day) {
        if (!what.startsWith(CLOSING)) {
            add(
                    "paper " + job.reference() + " " + what,
                    day,
                    "Last day for " + what + ": " + job.reference(),
                    "Not on file when the job was prepared on "
                            + job.batch()
                            + ". Ask the licensed person for it.",
                    SHORTLY_BEFORE,
                    job.withdrawn());
        } else if (job.outcome() == JobOutcome.HELD && !standing.contains(claimName(job, what))) {
            String name = claimName(job, what);
            if (told.contains(name)) {
                days.removeIf(d -> d.name().equals(name));
            }
            add(
                    name,
                    day,
                    closing(what.substring(CLOSING.length())) + ": " + job.reference() + ", held",
                    "Nothing is claimed yet. Mend what the findings of " + job.batch() + " name.",
                    LONG_BEFORE,
                    job.withdrawn());
        }
    }

    private static String claimName(CurrentJob job, String what) {
        String scheme = what.substring(CLOSING.length()).replaceFirst("s$", "");
        return "closing " + job.reference() + "-" + scheme;
    }

    private void care(CurrentJob job, LocalDate installed) {
        for (int year = 1; year <= CARE_YEARS; year++) {
            LocalDate day = installed.plusYears(year);
            if (!day.isBefore(first) && day.isBefore(today.plusMonths(AHEAD_MONTHS))) {
                add(
                        "care " + job.reference() + " " + year,
                        day,
                        "Yearly look over: " + job.reference(),
                        "Year "
                                + year
                                + " after the installation of "
                                + Days.show(installed)
                                + ". Common practice; the maker's manual goes before.",
                        List.of(),
                        job.withdrawn());
            }
        }
    }

    private void licences(Person person) {
        for (Licence licence : person.licences()) {
            licence.inForce()
                    .to()
                    .filter(
                            last ->
                                    person.licence(
                                                    licence.trade(),
                                                    licence.state(),
                                                    last.plusDays(1))
                                            .isEmpty())
                    .ifPresent(
                            last ->
                                    add(
                                            "licence " + licence.state() + " " + licence.number(),
                                            last,
                                            "Licence ends: "
                                                    + person.name()
                                                    + ", "
                                                    + licence.trade().word()
                                                    + ", "
                                                    + licence.state(),
                                            "Last day of licence "
                                                    + licence.number()
                                                    + ". Enter the new one in the people table.",
                                            LONG_BEFORE,
                                            false));
        }
    }

    private void offers(List<Offer> offers) {
        for (Offer offer : offers) {
            Optional<LocalDate> last = offer.inForce().to();
            boolean goesOn =
                    last.isPresent()
                            && offers.stream()
                                    .filter(o -> o.buyer().equals(offer.buyer()))
                                    .filter(o -> o.scheme() == offer.scheme())
                                    .anyMatch(o -> o.inForce().contains(last.get().plusDays(1)));
            String name = "offer " + offer.buyer() + " " + offer.scheme() + " " + last.orElse(null);
            if (last.isPresent()
                    && !goesOn
                    && days.stream().noneMatch(d -> d.name().equals(name))) {
                add(
                        name,
                        last.get(),
                        "Offer ends: " + offer.buyer() + ", " + offer.scheme().word() + "s",
                        "Ask for the next price and enter it in the offers table.",
                        WEEK_BEFORE,
                        false);
            }
        }
    }

    private void rules(RuleTable<?, ?> table) {
        for (RuleLine line : table.ending(first, today.plusMonths(AHEAD_MONTHS))) {
            LocalDate last = line.inForce().to().orElseThrow();
            String key = line.key().isEmpty() ? "" : " for " + line.key();
            add(
                    "rule " + table.name() + " " + line.key() + " " + last,
                    last,
                    "Rule ends: " + table.name() + key,
                    "No later row follows. See the rules command, and look for the new rule.",
                    LONG_BEFORE,
                    false);
        }
    }
}
