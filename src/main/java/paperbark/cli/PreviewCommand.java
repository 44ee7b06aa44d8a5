package paperbark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.answer.Preview;
import paperbark.answer.PreviewFiles;
import paperbark.answer.PreviewPapers;
import paperbark.answer.Previewer;
import paperbark.batch.Ending;
import paperbark.batch.Request;
import paperbark.disk.FolderChanges;
import paperbark.finding.Finding;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code preview}: one paper of one job, while its template is being worked on. */
@Command(
        name = "preview",
        description = {
            "Makes one paper of a job, of the sample week where no register is named, to look at a template.",
            "Without a paper it lists all of them with their variants."
        },
        footer = {"", "Example:", "  paperbark preview stc/kestrel --templates templates --watch"},
        mixinStandardHelpOptions = true)
final class PreviewCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec spec;

    @Parameters(
            arity = "0..1",
            paramLabel = "PAPER[/VARIANT]",
            completionCandidates = Papers.class,
            description =
                    "One of ${COMPLETION-CANDIDATES}; without a variant, such as stc/kestrel, the default.")
    private Optional<String> paper = Optional.empty();

    @Option(
            names = "--register",
            paramLabel = "FILE",
            description = "The firm's list of jobs; otherwise the sample week.")
    private Optional<Path> register = Optional.empty();

    @Option(
            names = "--sheet",
            paramLabel = "NAME",
            description =
                    "The sheet of that file to read; otherwise the one whose headings match best.")
    private Optional<String> sheet = Optional.empty();

    @Option(
            names = "--job",
            paramLabel = "JOB",
            description = "The job's number; otherwise the first that has the paper.")
    private Optional<String> job = Optional.empty();

    @Option(
            names = "--templates",
            paramLabel = "FOLDER",
            description =
                    "Folder of the firm's own templates; otherwise \"templates\" beside the register or here, or the shipped ones.")
    private Optional<Path> templates = Optional.empty();

    @Option(
            names = "--tables",
            paramLabel = "PATH",
            description =
                    "The firm's tables; otherwise \"tables\" beside the register, or the sample firm's.")
    private Optional<Path> tables = Optional.empty();

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description = "The day of the run; otherwise today, for the sample week its own day.")
    private Optional<LocalDate> asOf = Optional.empty();

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "Where the paper goes; otherwise preview-<paper>.pdf here.")
    private Optional<Path> out = Optional.empty();

    @Option(names = "--png", description = "A picture a page in place of a PDF.")
    private boolean png;

    @Option(
            names = "--watch",
            description = "Make it anew after each change in the template folder, until stopped.")
    private boolean watch;

    PreviewCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Request request = request();
        if (paper.isEmpty()) {
            return list(request);
        }
        if (sheet.isPresent() && register.isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(), "--sheet names a sheet of --register, which is not named.");
        }
        if (watch && request.firm().templates().isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(),
                    "There is no template folder to watch; name one with --templates.");
        }
        Previewer.Opened opened =
                register.isPresent()
                        ? new Previewer(request).open(paper.get(), job)
                        : Previewer.ofSample(request, tables.isPresent(), paper.get(), job);
        if (opened instanceof Previewer.Opened.Misunderstood wrong) {
            world.err().println(wrong.fact());
            world.err().println(wrong.remedy());
            return Ending.USAGE.exitCode();
        }
        if (opened instanceof Previewer.Opened.Refused refused) {
            new Report(world.out(), false, false).print(refused.outcome());
            return refused.outcome().ending().exitCode();
        }
        Preview preview = ((Previewer.Opened.Ready) opened).preview();
        return watch
                ? attend(preview, request.firm().templates().orElseThrow())
                : render(preview).exitCode();
    }

    private int list(Request request) throws IOException {
        for (PreviewPapers.Named named : PreviewPapers.all(request.firm().templates())) {
            world.out().printf("%-24s %s%n", named.name(), named.title());
        }
        return Ending.DONE.exitCode();
    }

    /** Whoever interrupts wants the end; until then there is none. */
    private int attend(Preview preview, Path folder) throws IOException {
        try (FolderChanges changes = new FolderChanges(folder, true)) {
            world.out().println("Watching " + folder + "; stop with Ctrl+C.");
            while (true) {
                render(preview);
                changes.await();
            }
        } catch (InterruptedException e) {
            return Ending.DONE.exitCode();
        } catch (IllegalStateException e) {
            if (Thread.interrupted()) {
                return Ending.DONE.exitCode();
            }
            throw e;
        }
    }

    private Ending render(Preview preview) throws IOException {
        long start = System.nanoTime();
        Preview.Rendered rendered = preview.render();
        List<Path> files = PreviewFiles.write(rendered, target(), png);
        double seconds = (System.nanoTime() - start) / 1e9;
        rendered.findings().forEach(this::tell);
        world.out()
                .printf(
                        Locale.ROOT,
                        "%s%s: %d %s in %.2f s -> %s%n",
                        rendered.isHeld() ? "HELD " : "",
                        preview.name(),
                        rendered.pages(),
                        rendered.pages() == 1 ? "page" : "pages",
                        seconds,
                        files.get(0));
        world.out().flush();
        if (!rendered.isHeld()) {
            return Ending.DONE;
        }
        return rendered.findings().isEmpty() ? Ending.HELD : Ending.SETUP;
    }

    private void tell(Finding finding) {
        world.out()
                .printf(
                        "%s: %s  [%s] %s%n",
                        finding.severity().word(),
                        finding.where(),
                        finding.code().code(),
                        finding.fact());
    }

    private Path target() {
        String name = paper.orElseThrow().strip().replaceAll("[^A-Za-z0-9-]+", "-");
        return world.directory()
                .resolve(out.orElse(Path.of("preview-" + name + ".pdf")))
                .normalize();
    }

    private Request request() {
        Path here = world.directory();
        Path file = register.map(here::resolve).orElse(here.resolve("sample")).normalize();
        Path beside = register.isPresent() ? ReadingOptions.beside(file) : here;
        Path tablesPath = tables.map(here::resolve).orElse(beside.resolve("tables")).normalize();
        return new Request(
                new Request.Register(file, sheet),
                new Request.FirmFiles(
                        tablesPath,
                        templates
                                .map(this::named)
                                .or(() -> ReadingOptions.existing(beside.resolve("templates"))),
                        ReadingOptions.rules(tablesPath)),
                here,
                new Request.Run(
                        asOf.orElseGet(() -> usualDay(tablesPath)),
                        world.clock().instant(),
                        Version.text()),
                Request.Extras.NONE,
                Request.LedgerUse.NONE);
    }

    private LocalDate usualDay(Path firm) {
        return register.isPresent() ? world.today(firm) : Previewer.SAMPLE_DAY;
    }

    private Path named(Path folder) {
        Path resolved = world.directory().resolve(folder);
        if (!Files.isDirectory(resolved)) {
            throw new ParameterException(
                    spec.commandLine(), "There is no folder " + resolved + " for --templates.");
        }
        return resolved;
    }

    /** The names of papers. */
    static final class Papers implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return PreviewPapers.names().iterator();
        }
    }
}
