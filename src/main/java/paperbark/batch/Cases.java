package paperbark.batch;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Entitlements;
import paperbark.entitlement.Schemes;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.firm.FirmTables;
import paperbark.firm.StatePaper;
import paperbark.job.Job;
import paperbark.job.JobCheck;
import paperbark.job.Missing;
import paperbark.ledger.ClaimState;
import paperbark.ledger.JobHistory;
import paperbark.offer.Comparison;
import paperbark.offer.Expected;
import paperbark.offer.Gst;
import paperbark.offer.OfferChoice;
import paperbark.offer.OwnerPrice;
import paperbark.output.BatchInfo;
import paperbark.output.CaseFile;
import paperbark.output.Deadlines;
import paperbark.output.Paper;
import paperbark.output.PaperPlan;
import paperbark.output.ToDo;
import paperbark.output.journal.Booked;
import paperbark.rules.HolidayRow;
import paperbark.rules.Rulebook;
import paperbark.value.SchemeName;
import paperbark.value.Trade;

/**
 * Makes the case file of a job: what it earns, what that is worth, what is missing, which papers it
 * gets.
 */
public final class Cases {
    private final Inputs inputs;
    private final List<Job> jobs;
    private final BatchInfo info;
    private final FirmTables tables;
    private final Rulebook rulebook;
    private final PaperPlan.Extras extras;
    private final FindingsByJob noticed;
    private final Map<String, JobHistory> histories;
    private final Function<String, Optional<Booked>> booked;
    private final boolean again;

    /**
     * The cases of what was read, where no ledger is asked.
     *
     * @param batch name that stands on every paper
     */
    public Cases(Inputs inputs, String batch, Request request) {
        this(new Remaining(inputs, Map.of(), List.of(), job -> Optional.empty()), batch, request);
    }

    /**
     * The cases of what remains of what was read.
     *
     * @param batch name that stands on every paper
     */
    Cases(Remaining remaining, String batch, Request request) {
        histories = remaining.histories();
        booked = remaining.booked();
        again = request.ledger().again();
        inputs = remaining.inputs();
        jobs = inputs.jobs();
        info =
                new BatchInfo(
                        batch,
                        inputs.sheet().file(),
                        request.run().today(),
                        request.run().version());
        tables = inputs.tables();
        rulebook = inputs.rulebook();
        extras = new PaperPlan.Extras(request.extras().siteSheets(), tables.firm().ownersCopies());
        noticed = new FindingsByJob(inputs.findings(), jobs);
    }

    /** What all papers of the batch share. */
    BatchInfo info() {
        return info;
    }

    /** The case files of all jobs, in their order. */
    List<CaseFile> all() {
        List<CaseFile> all = new ArrayList<>();
        each(all::add);
        return List.copyOf(all);
    }

    /** The same one at a time. */
    void each(Consumer<CaseFile> taker) {
        List<String> packNames = PackNames.of(jobs);
        for (int i = 0; i < jobs.size(); i++) {
            taker.accept(of(jobs.get(i), packNames.get(i)));
        }
    }

    /**
     * The case file of a job.
     *
     * @param packFile name of its pack
     */
    public CaseFile of(Job row, String packFile) {
        List<Finding> findings = new ArrayList<>(noticed.of(row));
        findings.addAll(JobCheck.of(row, tables, rulebook, info.preparedOn()));
        Schemes.Assessed assessed = inputs.assess(row, info.preparedOn());
        findings.addAll(assessed.findings());
        JobHistory history = histories.getOrDefault(row.reference(), JobHistory.NONE);
        AsClaimed asClaimed =
                AsClaimed.of(row, history, noticed.of(row), tables, booked, info.preparedOn());
        Job job = asClaimed.job();
        Entitlements earned =
                asClaimed.claims().isEmpty()
                        ? assessed.entitlements()
                        : asClaimed.earned(inputs.assess(job, info.preparedOn()).entitlements());
        List<Expected> expected = new ArrayList<>();
        List<Comparison> comparisons = new ArrayList<>();
        Map<SchemeName, ClaimState> withBuyer = history.withBuyer();
        for (Entitlement entitlement : earned.all()) {
            // What the buyer has is paid as it was offered when it was claimed.
            LocalDate day =
                    Optional.ofNullable(withBuyer.get(entitlement.scheme()))
                            .map(ClaimState::claimedOn)
                            .orElse(info.preparedOn());
            OfferChoice.Chosen chosen =
                    new OfferChoice(tables, rulebook, day)
                            .choose(asClaimed.offered(entitlement.scheme(), tables), entitlement);
            chosen.expected().ifPresent(expected::add);
            chosen.comparison().ifPresent(comparisons::add);
            findings.addAll(chosen.findings());
        }
        Set<Concern> planned = planned(job, earned);
        List<Finding> ordered =
                Finding.inOrder(
                        findings.stream()
                                .map(f -> asFelt(f, planned).forJob(job.reference()))
                                .toList());
        List<Paper> papers = PaperPlan.of(job, earned, ordered, expected, extras);
        List<StatePaper> statePapers = statePapers(job);
        Optional<OwnerPrice> price = Gst.of(job, tables.firm(), rulebook, info.preparedOn());
        CaseFile file =
                new CaseFile(
                        info,
                        tables.firm(),
                        job,
                        earned,
                        expected,
                        comparisons,
                        price,
                        statePapers,
                        Deadlines.of(
                                job,
                                earned,
                                statePapers,
                                day -> isHoliday(job, day),
                                info.preparedOn()),
                        toDo(row, ordered),
                        ordered,
                        papers,
                        packFile,
                        withBuyer.keySet(),
                        List.of());
        return new EarlierPapers(file, history, again, asClaimed.kept()).considered();
    }

    private boolean isHoliday(Job job, LocalDate day) {
        return job.site()
                .address()
                .state()
                .filter(state -> HolidayRow.isHoliday(rulebook.holidays(), state, day))
                .isPresent();
    }

    private List<StatePaper> statePapers(Job job) {
        return List.of(Trade.PLUMBING, Trade.ELECTRICAL).stream()
                .flatMap(
                        trade ->
                                job
                                        .site()
                                        .address()
                                        .state()
                                        .flatMap(state -> tables.statePaper(state, trade))
                                        .stream())
                .toList();
    }

    private static List<ToDo> toDo(Job job, List<Finding> findings) {
        List<ToDo> all = new ArrayList<>();
        Missing.of(job)
                .forEach(m -> all.add(new ToDo(m.field().label(), m.who(), Optional.empty())));
        if (findings.stream().anyMatch(f -> f.code() == FindingCode.GST_OWNER_REGISTERED)) {
            all.add(
                    new ToDo(
                            "Tax invoice to whoever takes the certificates, if the heater is used in business",
                            "owner",
                            Optional.empty()));
        }
        return all;
    }

    private Set<Concern> planned(Job job, Entitlements entitlements) {
        return PaperPlan.of(job, entitlements, List.of(), List.of(), extras).stream()
                .flatMap(paper -> paper.kind().concern().stream())
                .collect(Collectors.toSet());
    }

    /** A stop that holds none of the papers that the job gets is but a check. */
    private static Finding asFelt(Finding finding, Set<Concern> planned) {
        boolean felt =
                finding.holds().contains(Concern.JOB)
                        || !Collections.disjoint(finding.holds(), planned);
        return finding.stops() && !felt ? finding.as(Severity.CHECK) : finding;
    }
}
