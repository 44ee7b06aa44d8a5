package paperbark.office;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.job.Job;
import paperbark.ledger.CurrentJob;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;
import paperbark.output.Label;
import paperbark.output.Letter;
import paperbark.output.paper.LabelSheet;
import paperbark.output.paper.Labels;

/**
 * Makes labels and envelopes of an office's jobs, from their registers. A job that was called off
 * or forgotten gets none, and where one job is refused nothing is made: half a sheet would be
 * printed twice.
 */
public final class LabelDesk {
    private static final Pattern MEASURE =
            Pattern.compile("([0-9]{1,3})(?:\\.([0-9]))?x([0-9]{1,3})(?:\\.([0-9]))?");

    private final Office office;
    private final LocalDate today;
    private final String version;

    /**
     * For an office and day.
     *
     * @param version of the program
     */
    public LabelDesk(Office office, LocalDate today, String version) {
        this.office = office;
        this.today = today;
        this.version = version;
    }

    /**
     * How labels lie on a sheet, as people type it: millimetres, such as {@code 70x37.5}.
     *
     * @param single whether each label is a page
     * @param grid how many lie across and down; empty for the usual
     * @param size of a label, likewise
     * @param first upper left corner of the first, likewise
     * @param step from one label to the next; empty for labels without gaps
     * @param start the first free place on the sheet, from 1
     */
    public record Measures(
            boolean single,
            Optional<String> grid,
            Optional<String> size,
            Optional<String> first,
            Optional<String> step,
            int start) {}

    /**
     * What came of it.
     *
     * @param pdf the document; empty where something was refused
     * @param pages how many pages it has
     * @param refused why, in a sentence each
     */
    public record Result(Optional<byte[]> pdf, int pages, List<String> refused) {
        /** Keeps the list from being changed. */
        public Result {
            refused = List.copyOf(refused);
        }

        private static Result refused(List<String> why) {
            return new Result(Optional.empty(), 0, why);
        }
    }

    /**
     * Labels, in the order of the jobs.
     *
     * @param forTanks whether they are for tanks, and name no owner; otherwise for folders
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted
     */
    public Result labels(List<String> jobs, boolean forTanks, Measures measures) {
        Optional<LabelSheet> sheet = sheet(measures).filter(LabelSheet::fits);
        if (sheet.isEmpty()) {
            return Result.refused(
                    List.of(
                            "Labels do not lie on a sheet of A4 like that. Measures are millimetres, such"
                                    + " as 70x37.5, and the first free place is one of the sheet."));
        }
        return made(
                jobs,
                (papers, found) ->
                        papers.labels(
                                found.stream().map(Label::of).toList(),
                                forTanks ? "tank" : "folder",
                                sheet.get()),
                job -> Optional.empty(),
                (jobs.size() + sheet.get().start() - 2) / sheet.get().places() + 1);
    }

    /** The words for the forms of an envelope. */
    public static List<String> envelopeForms() {
        return Stream.of(Labels.Envelope.values()).map(Labels.Envelope::word).toList();
    }

    /**
     * Envelopes for the owners of the jobs.
     *
     * @param form one of {@link #envelopeForms()}
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted
     */
    public Result envelopes(List<String> jobs, String form) {
        Labels.Envelope envelope =
                Stream.of(Labels.Envelope.values())
                        .filter(e -> e.word().equals(form))
                        .findFirst()
                        .orElseThrow();
        return made(
                jobs,
                (papers, found) ->
                        papers.envelopes(found.stream().map(Letter::of).toList(), envelope),
                LabelDesk::unsendable,
                jobs.size());
    }

    private static Optional<String> unsendable(Job job) {
        return Letter.of(job).isComplete()
                ? Optional.empty()
                : Optional.of(
                        "The register tells no whole postal address for the owner of job "
                                + job.reference()
                                + ".");
    }

    private Result made(
            List<String> named,
            BiFunction<Labels, List<Job>, byte[]> make,
            Function<Job, Optional<String>> unfit,
            int pages) {
        Optional<Firm> firm = FirmTablesReader.read(office.tables()).result().map(FirmTables::firm);
        if (firm.isEmpty()) {
            return Result.refused(
                    List.of("The firm's tables cannot be read; see the command doctor."));
        }
        if (pages > Labels.MOST_PAGES) {
            return Result.refused(
                    List.of(
                            pages
                                    + " pages are more than "
                                    + Labels.MOST_PAGES
                                    + ". Name fewer jobs."));
        }
        List<String> refused = new ArrayList<>();
        List<Job> jobs = jobs(named, refused);
        jobs.stream().map(unfit).flatMap(Optional::stream).distinct().forEach(refused::add);
        if (!refused.isEmpty()) {
            return Result.refused(refused);
        }
        Labels papers = new Labels(office.templates(), firm.get(), today, version);
        return new Result(Optional.of(make.apply(papers, jobs)), pages, List.of());
    }

    private List<Job> jobs(List<String> named, List<String> refused) {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            FiledJobs filed = new FiledJobs(office);
            List<CurrentJob> current = ledger.currentJobs();
            List<Job> jobs = new ArrayList<>();
            for (String job : new LinkedHashSet<>(named)) {
                why(job, current, ledger.versions(job)).ifPresent(refused::add);
            }
            for (String job : refused.isEmpty() ? named : List.<String>of()) {
                filed.of(ledger, job)
                        .ifPresentOrElse(
                                jobs::add,
                                () ->
                                        refused.add(
                                                "The register of job "
                                                        + job
                                                        + " is not in filed/ any more, or does not name"
                                                        + " the job."));
            }
            return jobs;
        }
    }

    private static Optional<String> why(
            String job, List<CurrentJob> current, List<JobVersion> versions) {
        Optional<CurrentJob> known =
                current.stream()
                        .filter(j -> Keys.job(j.reference()).equals(Keys.job(job)))
                        .findFirst();
        if (known.isEmpty()) {
            return Optional.of("The ledger knows no job " + job + ".");
        }
        if (versions.get(versions.size() - 1).forgotten()) {
            return Optional.of("Job " + job + " was forgotten.");
        }
        return known.get().withdrawn()
                ? Optional.of("Job " + job + " was called off or replaced.")
                : Optional.empty();
    }

    private static Optional<LabelSheet> sheet(Measures typed) {
        LabelSheet usual = typed.single() ? LabelSheet.SINGLE : LabelSheet.OF_24;
        Optional<LabelSheet.Extent> size = read(typed.size(), usual.size());
        Optional<LabelSheet.Extent> first = read(typed.first(), usual.first());
        Optional<LabelSheet.Extent> grid =
                read(typed.grid(), new LabelSheet.Extent(usual.across() * 10, usual.down() * 10));
        Optional<LabelSheet.Extent> step = size.flatMap(s -> read(typed.step(), s));
        if (size.isEmpty() || first.isEmpty() || grid.isEmpty() || step.isEmpty()) {
            return Optional.empty();
        }
        boolean single = grid.get().wide() == 0 && grid.get().high() == 0;
        if (single != typed.single()) {
            return Optional.empty();
        }
        return Optional.of(
                new LabelSheet(
                        grid.get().wide() / 10,
                        grid.get().high() / 10,
                        size.get(),
                        first.get(),
                        step.get(),
                        typed.start()));
    }

    private static Optional<LabelSheet.Extent> read(
            Optional<String> typed, LabelSheet.Extent usual) {
        if (typed.isEmpty()) {
            return Optional.of(usual);
        }
        Matcher parts = MEASURE.matcher(typed.get());
        return parts.matches()
                ? Optional.of(
                        new LabelSheet.Extent(
                                tenths(parts.group(1), parts.group(2)),
                                tenths(parts.group(3), parts.group(4))))
                : Optional.empty();
    }

    private static int tenths(String whole, String tenth) {
        return Integer.parseInt(whole) * 10 + (tenth == null ? 0 : Integer.parseInt(tenth));
    }
}
