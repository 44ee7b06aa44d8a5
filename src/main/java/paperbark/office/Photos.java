package paperbark.office;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.job.Job;
import paperbark.ledger.CurrentJob;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;
import paperbark.rules.Rulebook;
import paperbark.value.State;

/**
 * What lies in {@code photos/} of an office folder for its jobs, what is wanted of them, and what
 * cameras wrote into their pictures that contradicts day and site. Nothing there is ever changed.
 */
public final class Photos {
    /** Of what was installed longer ago, nobody mends the pictures. */
    private static final int RECENT_DAYS = 90;

    private static final String CALLED_OFF =
            "The job was called off or replaced; nothing is wanted for it.";

    private final LedgerFacts facts;
    private final LocalDate today;
    private final Tools tools;
    private final Map<String, CurrentJob> jobs;
    private final JobFiles files;

    private Photos(LedgerFacts facts, Tools tools) throws IOException {
        this.facts = facts;
        this.today = facts.today();
        this.tools = tools;
        this.jobs = new TreeMap<>();
        facts.currentJobs().forEach(j -> jobs.put(Keys.job(j.reference()), j));
        this.files =
                JobFiles.in(
                        tools.office(), jobs.values().stream().map(CurrentJob::reference).toList());
    }

    /**
     * What a look needs.
     *
     * @param office the office
     * @param filed what its registers say
     * @param check compares pictures, and may have read some before
     */
    record Tools(Office office, FiledJobs filed, PhotoCheck check) {}

    /**
     * A job and what lies there for it.
     *
     * @param job the job number
     * @param files names of its files below {@code photos/}
     * @param wanted what is wanted, and how many of it are there, a line each; nothing for a job
     *     that is only booked or whose register is gone
     * @param lacking the names of what is wanted and not there
     * @param awaitsNumber whether a certificate lies there whose number the register does not tell
     * @param compared what was compared with day and site and what not, in a sentence
     * @param doubtful what contradicts day or site, in words by the picture's name
     */
    public record OfJob(
            String job,
            List<String> files,
            List<String> wanted,
            List<String> lacking,
            boolean awaitsNumber,
            String compared,
            Map<String, String> doubtful) {
        /** Keeps the lists from being changed. */
        public OfJob {
            files = List.copyOf(files);
            wanted = List.copyOf(wanted);
            lacking = List.copyOf(lacking);
            doubtful = Map.copyOf(doubtful);
        }
    }

    /**
     * What a look brought.
     *
     * @param jobs the jobs, by their numbers
     * @param unknown numbers that the ledger does not know
     * @param findings what people should look at
     */
    public record Result(List<OfJob> jobs, List<String> unknown, List<Finding> findings) {
        /** Keeps the lists from being changed. */
        public Result {
            jobs = List.copyOf(jobs);
            unknown = List.copyOf(unknown);
            findings = List.copyOf(findings);
        }

        /** What contradicts day or site, in words by the picture's name. */
        Map<String, String> doubtful() {
            Map<String, String> all = new TreeMap<>();
            jobs.forEach(job -> all.putAll(job.doubtful()));
            return all;
        }
    }

    /**
     * Looks at the jobs named. Where none is, at those that can still be mended: with a claim that
     * is to be lodged, or with files and not installed longer than 90 days ago.
     *
     * @throws IOException when the folder cannot be listed
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted
     */
    public static Result look(Office office, Collection<String> named, LocalDate today)
            throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            PhotoCheck check = PhotoCheck.with(Rulebook.load(office.rules()).stateBoxes());
            Photos photos =
                    new Photos(
                            new LedgerFacts(ledger, today),
                            new Tools(office, new FiledJobs(office), check));
            return named.isEmpty() ? photos.all() : photos.of(named);
        }
    }

    /** The same where no job is named. */
    static Result look(LedgerFacts facts, Tools tools) throws IOException {
        return new Photos(facts, tools).all();
    }

    private Result of(Collection<String> named) {
        List<OfJob> looked = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (String job : named) {
            Optional<CurrentJob> known = Optional.ofNullable(jobs.get(Keys.job(job)));
            known.ifPresentOrElse(j -> looked.add(look(j, findings)), () -> unknown.add(job));
        }
        return new Result(looked, unknown, findings);
    }

    private Result all() {
        Set<String> toLodge =
                facts.claims().stream()
                        .filter(c -> c.isToLodge(today))
                        .map(c -> Keys.job(c.job()))
                        .collect(Collectors.toSet());
        List<OfJob> looked = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        jobs.forEach(
                (key, job) -> {
                    boolean recent =
                            !job.installedOn().orElse(today).isBefore(today.minusDays(RECENT_DAYS));
                    if (toLodge.contains(key) || recent && !files.of(key).isEmpty()) {
                        looked.add(look(job, findings));
                    }
                });
        PhotoCheck.aside(files.aside()).ifPresent(findings::add);
        return new Result(looked, List.of(), findings);
    }

    private OfJob look(CurrentJob current, List<Finding> findings) {
        List<JobFile> here = files.of(current.reference());
        List<String> names = here.stream().map(JobFile::name).toList();
        if (current.withdrawn()) {
            return new OfJob(
                    current.reference(), names, List.of(), List.of(), false, CALLED_OFF, Map.of());
        }
        Optional<Job> job = tools.filed().of(facts.ledger(), current.reference());
        Optional<State> state = job.flatMap(j -> j.site().address().state());
        PhotoCheck.Result result =
                tools.check()
                        .of(
                                new PhotoCheck.About(
                                        current.reference(), current.installedOn(), state),
                                here,
                                today);
        findings.addAll(result.findings());
        List<JobPapers.Wanted> wanted = job.map(j -> JobPapers.of(j, here)).orElse(List.of());
        return new OfJob(
                current.reference(),
                names,
                wanted.stream().map(JobPapers.Wanted::inWords).toList(),
                wanted.stream().filter(w -> w.here() == 0).map(JobPapers.Wanted::what).toList(),
                wanted.stream().anyMatch(JobPapers.Wanted::awaitsNumber),
                compared(current, state, result),
                result.doubtful());
    }

    /** What was not compared is said too, so that silence is not taken for proof. */
    private static String compared(
            CurrentJob job, Optional<State> state, PhotoCheck.Result result) {
        if (result.pictures() == 0) {
            return "";
        }
        String day =
                job.installedOn().isEmpty()
                        ? "The job is only booked, so days were not compared."
                        : "Days are told by " + result.withDay() + ".";
        String place =
                state.isEmpty()
                        ? "The site's state is not known here, so places were not compared."
                        : "Places are told by "
                                + result.withPlace()
                                + "; the state was compared, neither suburb nor street.";
        return "Pictures: " + result.pictures() + ". " + day + " " + place;
    }
}
