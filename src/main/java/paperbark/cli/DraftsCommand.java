package paperbark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.office.Office;
import paperbark.office.OfficePapers;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code drafts}: what leaves the house, as drafts of e-mail. */
@Command(
        name = "drafts",
        description = {
            "Makes the drafts of e-mail to owners, makers and buyers anew, in the office's folder send.",
            "Nothing is sent: a person opens a draft in a mail program and sends it. watch makes the"
                    + " drafts by itself when signed papers or photographs come."
        },
        footer = {"", "Example:", "  paperbark drafts office", "  paperbark drafts office --all"},
        mixinStandardHelpOptions = true)
final class DraftsCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "FOLDER", description = "The office folder, as setup makes it.")
    private Path folder;

    @Option(names = "--all", description = "Also those that were taken away and are as they were.")
    private boolean all;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description = "The day, e.g. 2026-11-23; otherwise today.")
    private Optional<LocalDate> asOf = Optional.empty();

    DraftsCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        LocalDate today = asOf.orElseGet(() -> world.today(office.tables()));
        Optional<OfficePapers.Drafts> made =
                OfficePapers.makeDrafts(
                        office, today, world.clock().instant(), Version.text(), all);
        if (made.isEmpty()) {
            world.err().println("The firm's tables cannot be read; doctor says why.");
            return Ending.SETUP.exitCode();
        }
        world.out().println("Drafts:       " + made.get().files().size());
        world.out().println("Result:       " + office.send());
        made.get().trouble().forEach(line -> world.out().println("Look:         " + line));
        return made.get().trouble().isEmpty() ? Ending.DONE.exitCode() : Ending.HELD.exitCode();
    }
}
