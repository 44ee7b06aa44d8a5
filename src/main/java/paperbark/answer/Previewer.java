package paperbark.answer;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import paperbark.batch.Cases;
import paperbark.batch.Inputs;
import paperbark.batch.Outcome;
import paperbark.batch.Request;
import paperbark.disk.Disk;
import paperbark.disk.Shipped;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.job.Job;
import paperbark.output.CaseFile;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.sheet.Reading;
import paperbark.value.Nearest;

/** Finds the job that a paper is tried with, among the firm's or those of the sample week. */
public final class Previewer {
    /** The day for which the sample week was written: its offers are in force then. */
    public static final LocalDate SAMPLE_DAY = LocalDate.of(2026, 11, 23);

    private static final String DEFAULT = "default";

    private final Request request;
    private Reading<Inputs> reading;

    /** A previewer on the register and tables of a request. */
    public Previewer(Request request) {
        this.request = request;
    }

    /** What came of asking for a preview. */
    public sealed interface Opened {
        /** A paper that can be made. */
        record Ready(Preview preview) implements Opened {}

        /** The register or the firm's tables could not be used. */
        record Refused(Outcome outcome) implements Opened {}

        /** There is no such paper or job: what is wrong, and what there is instead. */
        record Misunderstood(String fact, String remedy) implements Opened {}
    }

    /**
     * Opens a paper with a job of the sample week.
     *
     * @param request where templates and, other than the sample firm's, tables lie
     * @param ownTables whether the tables of the request are used
     * @throws IOException when the sample cannot be unpacked
     */
    public static Opened ofSample(
            Request request, boolean ownTables, String paper, Optional<String> job)
            throws IOException {
        return withSample(request, ownTables, previewer -> previewer.open(paper, job));
    }

    /**
     * Fills each of some papers once with a job of the sample week.
     *
     * @param papers names as {@link #open} takes them
     * @return what went wrong with the templates and forms, each once
     * @throws IOException when the sample cannot be unpacked
     */
    public static List<Finding> tryAll(Request request, Collection<String> papers)
            throws IOException {
        return withSample(
                request,
                false,
                previewer ->
                        papers.stream()
                                .map(paper -> previewer.open(paper, Optional.empty()))
                                .flatMap(
                                        opened ->
                                                opened instanceof Opened.Ready ready
                                                        ? ready
                                                                .preview()
                                                                .render()
                                                                .findings()
                                                                .stream()
                                                        : Stream.empty())
                                .filter(f -> f.severity() != Severity.NOTE)
                                .distinct()
                                .toList());
    }

    private static <T> T withSample(Request request, boolean ownTables, Function<Previewer, T> work)
            throws IOException {
        Path folder = Shipped.unpacked(Shipped.SAMPLES);
        try {
            Path tables = folder.resolve("tables");
            Request.FirmFiles sample =
                    new Request.FirmFiles(
                            tables,
                            request.firm().templates(),
                            Optional.of(tables.resolve("rules")));
            return work.apply(
                    new Previewer(
                            new Request(
                                    new Request.Register(
                                            folder.resolve(Shipped.REGISTER), Optional.empty()),
                                    ownTables ? request.firm() : sample,
                                    request.out(),
                                    request.run(),
                                    request.extras(),
                                    request.ledger())));
        } finally {
            Disk.delete(folder);
        }
    }

    /**
     * Opens a paper.
     *
     * @param paper its folder, with a variant behind a slash or without
     * @param job the job's number; without one the first job that has the paper, not held if
     *     possible
     */
    public Opened open(String paper, Optional<String> job) {
        String[] parts = paper.strip().split("/", 2);
        Optional<PaperKind> kind =
                PaperKind.values().stream()
                        .filter(k -> k.folder().equalsIgnoreCase(parts[0]))
                        .findFirst();
        if (kind.isEmpty()) {
            return noSuchPaper(parts[0]);
        }
        Optional<String> variant =
                parts.length == 1
                        ? Optional.empty()
                        : Optional.of(parts[1].replaceAll("\\.ftlh$", ""));
        if (reading == null) {
            reading = Inputs.read(request);
        }
        if (reading.result().isEmpty()) {
            return new Opened.Refused(Outcome.refused(request, reading.findings()));
        }
        List<CaseFile> cases = cases(reading.result().get(), job);
        if (cases.isEmpty()) {
            List<String> numbers =
                    reading.result().get().jobs().stream().map(Job::reference).toList();
            Explained.Misunderstood none =
                    Explainer.noSuchJob(job.orElseThrow(), request.register().name(), numbers);
            return new Opened.Misunderstood(none.fact(), none.remedy());
        }
        // A job named by its number shows the variant that it gets.
        Optional<String> wanted =
                variant.or(() -> job.isPresent() ? variant : Optional.of(DEFAULT));
        CaseFile chosen = best(cases, kind.get(), wanted);
        return new Opened.Ready(
                new Preview(
                        chosen, paperOf(chosen, kind.get(), wanted), request.firm().templates()));
    }

    private List<CaseFile> cases(Inputs inputs, Optional<String> job) {
        Cases cases = new Cases(inputs, "preview", request);
        return inputs.jobs().stream()
                .filter(j -> job.map(w -> j.reference().equalsIgnoreCase(w.strip())).orElse(true))
                .map(j -> cases.of(j, ""))
                .toList();
    }

    private static CaseFile best(List<CaseFile> cases, PaperKind kind, Optional<String> variant) {
        return cases.stream()
                .min(Comparator.comparingInt(c -> misfit(c, kind, variant)))
                .orElseThrow();
    }

    /** 0 for a job that gets just this paper; more, the less it fits. */
    private static int misfit(CaseFile file, PaperKind kind, Optional<String> variant) {
        return file.papers().stream()
                .filter(p -> p.kind() == kind)
                .findFirst()
                .map(
                        p ->
                                (p.isBlocked() ? 2 : 0)
                                        + (variant.map(p.variant()::equals).orElse(true) ? 0 : 1))
                .orElse(4);
    }

    private static Paper paperOf(CaseFile file, PaperKind kind, Optional<String> variant) {
        Optional<Paper> planned = file.papers().stream().filter(p -> p.kind() == kind).findFirst();
        return new Paper(
                kind,
                variant.or(() -> planned.map(Paper::variant)).orElse(DEFAULT),
                planned.map(Paper::blockedBy).orElse(List.of()));
    }

    private static Opened noSuchPaper(String name) {
        List<String> folders = PaperKind.values().stream().map(PaperKind::folder).toList();
        return new Opened.Misunderstood(
                "There is no paper \"" + name + "\".",
                Nearest.to(name, folders)
                        .map(n -> "The nearest is \"" + n + "\".")
                        .orElse("There are " + String.join(", ", folders) + "."));
    }
}
