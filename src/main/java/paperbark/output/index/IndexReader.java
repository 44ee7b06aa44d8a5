package paperbark.output.index;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.entitlement.Entitlement;
import paperbark.finding.Finding;
import paperbark.finding.RuleRef;
import paperbark.finding.Severity;
import paperbark.finding.Told;
import paperbark.job.Job;
import paperbark.job.Stage;
import paperbark.offer.Standing;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.Deadline;
import paperbark.output.EarlierPaper;
import paperbark.output.Paper;
import paperbark.output.RunFile;
import paperbark.output.index.IndexView.Closing;
import paperbark.output.index.IndexView.Figure;
import paperbark.output.index.IndexView.FindingLine;
import paperbark.output.index.IndexView.JobLine;
import paperbark.output.index.IndexView.SeverityCount;
import paperbark.output.index.IndexView.Step;
import paperbark.output.table.DeadlinesTable;
import paperbark.output.table.ExpectedTable;
import paperbark.output.table.GroupedSums;
import paperbark.output.table.JobStatus;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** Puts a batch into the words of its index page. */
final class IndexReader {
    private static final int CLOSING_SHOWN = 5;
    private static final int NEAR_DAYS = 31;
    private static final List<Severity> GRAVEST_FIRST =
            List.of(Severity.STOP, Severity.CHECK, Severity.NOTE);

    private final BatchView view;
    private final HiddenValues secrets;
    private final List<Told> told;
    private final Set<Finding> folded;
    private final Map<CaseFile, String> anchors = new IdentityHashMap<>();
    private final Map<CaseFile, Step> nextProblems = new IdentityHashMap<>();
    private final List<RunFile> runs;
    private final List<IndexView.Workbook> workbooks;
    private final IndexPage.Beside beside;
    private final List<CaseFile> heldFirst;

    IndexReader(
            BatchView view,
            List<RunFile> runs,
            List<IndexView.Workbook> workbooks,
            IndexPage.Beside beside) {
        this.beside = beside;
        this.view = view;
        this.workbooks = workbooks;
        this.runs = runs;
        this.secrets = HiddenValues.in(view);
        this.told = Told.of(view.findings());
        this.folded =
                told.stream()
                        .filter(t -> t.isFolded() && t.first().severity() == Severity.NOTE)
                        .flatMap(t -> t.all().stream())
                        .collect(Collectors.toSet());
        // Job numbers may hold anything and come twice, so anchors are counted.
        for (CaseFile file : view.cases()) {
            anchors.putIfAbsent(file, "job-" + (anchors.size() + 1));
        }
        heldFirst =
                view.cases().stream()
                        .sorted(Comparator.comparing((CaseFile file) -> !file.isHeld()))
                        .toList();
        List<CaseFile> problems =
                heldFirst.stream().filter(f -> JobStatus.of(f) != JobStatus.READY).toList();
        for (int i = 1; i < problems.size(); i++) {
            nextProblems.put(problems.get(i - 1), findings(problems.get(i)));
        }
    }

    private Step step(CaseFile file) {
        return new Step(anchors.get(file), file.job().reference());
    }

    /** To its findings, and for want of any to its row. */
    private Step findings(CaseFile file) {
        return own(file).isEmpty()
                ? step(file)
                : new Step(anchors.get(file) + "-findings", file.job().reference());
    }

    private Optional<Step> firstProblem() {
        return heldFirst.stream()
                .filter(f -> JobStatus.of(f) != JobStatus.READY)
                .findFirst()
                .map(this::findings);
    }

    IndexView read() {
        return new IndexView(
                view.firm().name(),
                view.info().id(),
                view.info().register(),
                Days.show(view.info().preparedOn()),
                view.info().program(),
                runs,
                workbooks,
                totals(),
                Glance.of(view),
                GRAVEST_FIRST.stream().map(s -> count(s, view.findings())).toList(),
                DeadlinesTable.due(view).stream()
                        .limit(CLOSING_SHOWN)
                        .map(due -> closing(due.file(), due.deadline()))
                        .toList(),
                heldFirst.stream().map(this::job).toList(),
                firstProblem(),
                CrewDays.of(view.cases(), this::step),
                CrewDays.choices(view.cases()),
                general(),
                view.cases().stream()
                        .flatMap(file -> file.entitlements().all().stream())
                        .anyMatch(Entitlement::isDemo));
    }

    private List<Figure> totals() {
        List<Figure> totals = new ArrayList<>();
        totals.add(
                new Figure(
                        "Jobs",
                        Integer.toString(view.cases().size()),
                        view.cases().stream()
                                        .filter(file -> JobStatus.of(file) == JobStatus.HELD)
                                        .count()
                                + " held"
                                + (view.cancelled() > 0
                                        ? ", " + view.cancelled() + " cancelled"
                                        : "")
                                + (view.leftOut() > 0
                                        ? ", rows left out as no jobs: " + view.leftOut()
                                        : "")));
        totals.add(new Figure("Packs", Integer.toString(view.cases().size()), ""));
        for (SchemeName scheme : SchemeName.values()) {
            long held = count(scheme, Standing.HELD);
            totals.add(
                    new Figure(
                            scheme.word() + "s",
                            Long.toString(
                                    count(scheme, Standing.DUE) + count(scheme, Standing.BOOKED)),
                            beside(
                                    count(scheme, Standing.BOOKED) + " of them only booked",
                                    count(scheme, Standing.BOOKED) > 0,
                                    held + " more held",
                                    held > 0)));
        }
        GroupedSums<String> expected = GroupedSums.byWord(ExpectedTable.of(view), "standing");
        Money held = toFirm(expected, Standing.HELD);
        Money booked = toFirm(expected, Standing.BOOKED);
        boolean fees =
                Stream.of(Standing.DUE, Standing.BOOKED)
                        .anyMatch(s -> !sum(expected, "fee", s).isZero());
        String parts =
                Stream.of(
                                fees ? "net of fees" : "",
                                booked.isZero() ? "" : booked + " of it only booked",
                                held.isZero() ? "" : held + " more held")
                        .filter(part -> !part.isEmpty())
                        .collect(Collectors.joining(", "));
        totals.add(
                new Figure(
                        "Money expected",
                        toFirm(expected, Standing.DUE).plus(booked).toString(),
                        parts));
        return totals;
    }

    private static String beside(String booked, boolean isBooked, String held, boolean isHeld) {
        return Stream.of(isBooked ? booked : "", isHeld ? held : "")
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private long count(SchemeName scheme, Standing standing) {
        return view.cases().stream()
                .filter(file -> file.standing(scheme) == standing)
                .flatMap(file -> file.entitlements().of(scheme).stream())
                .mapToLong(e -> e.certificates().orElse(0))
                .sum();
    }

    private static Money toFirm(GroupedSums<String> expected, Standing standing) {
        return sum(expected, "to-firm", standing);
    }

    private static Money sum(GroupedSums<String> expected, String column, Standing standing) {
        return new Money(expected.sum(standing.word(), column));
    }

    private JobLine job(CaseFile file) {
        Job job = file.job();
        JobStatus status = JobStatus.of(file);
        return new JobLine(
                anchors.get(file),
                job.reference(),
                job.owner().names().orElse("owner not known"),
                job.owner().contact().orElse(""),
                job.owner().phone(),
                job.site().address().suburb().orElse(""),
                when(job),
                job.visit().crew().orElse(""),
                CrewDays.crew(job.visit()),
                CrewDays.day(job.visit()),
                status.shape(),
                status.word(),
                file.papers().stream().filter(Paper::isBlocked).map(Paper::title).toList(),
                file.entitlements().all().stream().map(e -> certificates(file, e)).toList(),
                stops(file),
                status == JobStatus.LOOK ? ToDoLines.checks(file, secrets) : List.of(),
                ToDoLines.missing(file.toDo()),
                file.deadlines().stream().map(d -> closing(file, d)).toList(),
                file.packFile(),
                beside.typing().getOrDefault(file.packFile(), List.of()),
                Optional.ofNullable(beside.fillable().get(file.packFile())),
                own(file),
                stand(file),
                GRAVEST_FIRST.stream()
                        .map(s -> count(s, file.findings()))
                        .filter(c -> c.count() > 0)
                        .toList(),
                Optional.ofNullable(nextProblems.get(file)));
    }

    private static String when(Job job) {
        Optional<String> day =
                job.isInstalled()
                        ? job.doneOn()
                                .map(on -> "installed " + Days.show(on) + signed(job))
                                .or(() -> Optional.of("installed, day not known"))
                        : job.ruleDay().map(on -> "booked for " + Days.show(on));
        return job.stage() == Stage.NO_CLAIM
                ? day.map(on -> on + ", ").orElse("") + job.stage().word()
                : day.orElse(job.stage().word());
    }

    private static List<String> stand(CaseFile file) {
        return file.papers().stream()
                .filter(p -> !p.isPrinted())
                .map(p -> stands(p.title(), p.stands().orElseThrow()))
                .toList();
    }

    private static String stands(String title, EarlierPaper earlier) {
        String came = earlier.came().isEmpty() ? "" : " (" + earlier.came() + ")";
        return title + " of batch " + earlier.batch() + came;
    }

    private static String signed(Job job) {
        return job.signedOn().map(on -> ", signed " + Days.show(on)).orElse("");
    }

    private static String certificates(CaseFile file, Entitlement entitlement) {
        String count =
                entitlement
                        .certificates()
                        .map(n -> n + " " + entitlement.scheme().word() + (n == 1 ? "" : "s"))
                        .orElse(entitlement.scheme().word() + "s not worked out");
        if (file.standing(entitlement.scheme()) == Standing.HELD) {
            return count + ", held";
        }
        return entitlement.provisional() ? count + " (planned day)" : count;
    }

    private List<String> stops(CaseFile file) {
        return file.papers().stream()
                .flatMap(p -> p.blockedBy().stream())
                .distinct()
                .map(this::said)
                .toList();
    }

    /** What is wrong, with the cell's heading and value where the sentence does not have them. */
    private String said(Finding finding) {
        String fact = secrets.cleaned(finding, finding.fact());
        String heading = finding.place().columnHeading();
        String seen = secrets.seen(finding);
        List<String> cell = new ArrayList<>();
        if (!heading.isEmpty() && !fact.contains(heading)) {
            cell.add(heading);
        }
        // What stays off the page needs no words of its own here.
        if (seen.equals(finding.seen()) && !seen.isEmpty() && !fact.contains(seen)) {
            cell.add('"' + seen + '"');
        }
        return cell.isEmpty() ? fact : String.join(", ", cell) + ": " + fact;
    }

    private Closing closing(CaseFile file, Deadline deadline) {
        long left = deadline.daysLeft();
        String words =
                left < 0 ? "past by " + days(-left) : left == 0 ? "today" : days(left) + " left";
        return new Closing(
                deadline.what(),
                Days.show(deadline.lastDay()),
                words,
                left <= NEAR_DAYS,
                anchors.get(file),
                file.job().reference());
    }

    private static String days(long count) {
        return count == 1 ? "1 day" : count + " days";
    }

    /** What belongs to no job, or shows in several: one cause is told once. */
    private List<FindingLine> general() {
        Set<Finding> ofJobs =
                view.cases().stream()
                        .flatMap(file -> file.findings().stream())
                        .collect(Collectors.toCollection(HashSet::new));
        return told.stream()
                .filter(t -> t.isFolded() || !ofJobs.contains(t.first()))
                .map(this::finding)
                .toList();
    }

    /** What a job has to read of its own; a stop or check of several jobs stands with each. */
    private List<FindingLine> own(CaseFile file) {
        return file.findings().stream()
                .filter(f -> !folded.contains(f))
                .map(f -> finding(new Told(List.of(f))))
                .toList();
    }

    private FindingLine finding(Told told) {
        Finding finding = told.first();
        return new FindingLine(
                finding.severity().word(),
                finding.code().code(),
                told.where(),
                secrets.seen(finding),
                told.isFolded() ? String.join(", ", told.jobs()) : "",
                secrets.cleaned(finding, told.fact()),
                secrets.remedy(finding),
                finding.why(),
                finding.rule().map(RuleRef::inWords).orElse(""));
    }

    private static SeverityCount count(Severity severity, List<Finding> findings) {
        return new SeverityCount(
                severity.word(), findings.stream().filter(f -> f.severity() == severity).count());
    }
}
