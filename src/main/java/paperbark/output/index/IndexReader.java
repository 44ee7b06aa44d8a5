package paperbark.output.index;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.entitlement.Entitlement;
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
import paperbark.output.index.IndexView.JobLine;
import paperbark.output.index.IndexView.Step;
import paperbark.output.table.DeadlinesTable;
import paperbark.output.table.JobStatus;
import paperbark.value.Days;

/** Puts a batch into the words of its index page. */
final class IndexReader {
    private static final int CLOSING_SHOWN = 5;
    private static final int NEAR_DAYS = 31;

    private final BatchView view;
    private final HiddenValues secrets;
    private final FindingLines lines;
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
        this.lines = new FindingLines(view, secrets);
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
        return lines.own(file).isEmpty()
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
                new Totals(view).all(),
                Glance.of(view),
                FindingLines.counts(view.findings()),
                DeadlinesTable.due(view).stream()
                        .limit(CLOSING_SHOWN)
                        .map(due -> closing(due.file(), due.deadline()))
                        .toList(),
                heldFirst.stream().map(this::job).toList(),
                firstProblem(),
                CrewDays.of(view.cases(), this::step),
                CrewDays.choices(view.cases()),
                lines.general(),
                view.cases().stream()
                        .flatMap(file -> file.entitlements().all().stream())
                        .anyMatch(Entitlement::isDemo));
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
                when(file),
                job.visit().crew().orElse(""),
                CrewDays.crew(job),
                CrewDays.day(job),
                status.shape(),
                status.word(),
                file.papers().stream().filter(Paper::isBlocked).map(Paper::title).toList(),
                file.entitlements().all().stream().map(e -> certificates(file, e)).toList(),
                lines.stops(file),
                status == JobStatus.LOOK ? ToDoLines.checks(file, secrets) : List.of(),
                ToDoLines.missing(file.toDo()),
                file.deadlines().stream().map(d -> closing(file, d)).toList(),
                noClosing(file),
                file.packFile(),
                beside.typing().getOrDefault(file.packFile(), List.of()),
                Optional.ofNullable(beside.fillable().get(file.packFile())),
                lines.own(file),
                stand(file),
                FindingLines.counts(file.findings()).stream().filter(c -> c.count() > 0).toList(),
                Optional.ofNullable(nextProblems.get(file)));
    }

    private static String when(CaseFile file) {
        Job job = file.job();
        Optional<String> day =
                job.isInstalled()
                        ? file.doneOn()
                                .map(on -> "installed " + Days.show(on) + signed(job))
                                .or(() -> job.installedOn().map(IndexReader::toCome))
                                .or(() -> Optional.of("installed, day not known"))
                        : job.ruleDay().map(on -> "booked for " + Days.show(on));
        return job.stage() == Stage.NO_CLAIM
                ? day.map(on -> on + ", ").orElse("") + job.stage().word()
                : day.orElse(job.stage().word());
    }

    private static String toCome(LocalDate day) {
        return "installed, day not known: " + Days.show(day) + " is still to come";
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
        if (file.isOnPlannedDay(entitlement)) {
            return count + " (planned day)";
        }
        return entitlement.provisional() ? count + " (day not known)" : count;
    }

    /** Work that is done and claims nothing keeps no day open. */
    private static String noClosing(CaseFile file) {
        return file.doneOn().isPresent() && !file.job().hasClaims() ? "none" : "not known yet";
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
}
