package paperbark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import paperbark.office.LabelDesk;
import paperbark.office.Office;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code envelopes}: pages with the owners' postal addresses. */
@Command(
        name = "envelopes",
        description = "Makes a page with the owner's postal address for each job, as a PDF.",
        footer = {"", "Example:", "  paperbark envelopes SB-1101 --form window --office office"},
        mixinStandardHelpOptions = true)
final class EnvelopesCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "JOB", arity = "1..*", description = "Job numbers, in order.")
    private List<String> jobs;

    @Option(
            names = "--office",
            paramLabel = "FOLDER",
            description = "The office folder; otherwise the working directory.")
    private Path folder = Path.of("");

    @Option(
            names = "--form",
            paramLabel = "FORM",
            defaultValue = "dl",
            completionCandidates = Forms.class,
            description =
                    "dl or c5 for a page as large as the envelope, or window for a page of A4 folded"
                            + " in three; otherwise dl.")
    private String form;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "Where they go; otherwise envelopes.pdf here.")
    private Path out = Path.of("envelopes.pdf");

    EnvelopesCommand(Main.World world) {
        this.world = world;
    }

    /** The forms that there are. */
    static final class Forms extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        Forms() {
            super(LabelDesk.envelopeForms());
        }
    }

    @Override
    public Integer call() throws Exception {
        if (!LabelDesk.envelopeForms().contains(form)) {
            throw new ParameterException(
                    command.commandLine(),
                    "There is no form \""
                            + form
                            + "\". Name one of "
                            + String.join(", ", LabelDesk.envelopeForms())
                            + ".");
        }
        Office office = OfficeArgument.of(world, folder, command);
        LabelDesk desk = new LabelDesk(office, world.today(office.tables()), Version.text());
        return MadePages.write(world, desk.envelopes(jobs, form), out);
    }
}
