package paperbark.cli;

import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import paperbark.batch.Ending;
import paperbark.office.FirmOffice;
import paperbark.office.ManualCopy;
import paperbark.office.OfficeFolder;
import paperbark.office.Platform;
import paperbark.office.Starters;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code setup}: an office folder with all that a firm begins with. */
@Command(
        name = "setup",
        description = {
            "Makes an office folder, or what is missing of one.",
            "Intake, packs, returned, filed, templates, tables, a register to begin with, a ledger and a printed",
            "guide. What is there already stays as it is. At a console it asks who the firm is, unless an option",
            "says so; without a console, and with --sample, the tables are those of a made-up firm."
        },
        footer = {"", "Example:", "  paperbark setup office --state VIC"},
        mixinStandardHelpOptions = true)
final class SetupCommand implements Callable<Integer> {
    // More names scroll the message off the screen.
    private static final int NAMED = 6;

    private final Main.World world;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "FOLDER", description = "The office folder; it may exist.")
    private Path folder;

    @Option(names = "--sample", description = "Ask nothing and make the sample firm's office.")
    private boolean sample;

    @Mixin private FirmOptions options;

    SetupCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path office = world.directory().resolve(folder).normalize();
        Optional<FirmOffice> firm = firm(office);
        OfficeFolder.Result result =
                OfficeFolder.setUp(
                        office,
                        firm,
                        new OfficeFolder.Making(
                                world.clock().instant(), world.clock().getZone(), Version.text()));
        tell("Made:       ", result.made());
        tell("Kept as is: ", result.kept());
        if (!result.leftOut().isEmpty()) {
            tell("Left out:   ", result.leftOut());
            world.out()
                    .println("            Tables of the sample firm do not belong beside yours.");
        }
        if (result.made().isEmpty()) {
            world.out().println("Nothing was missing.");
        } else if (result.made().contains("tables/firm.csv")) {
            world.out()
                    .println(
                            "The tables are a sample firm's. Put yours in their place before the first real week: tables"
                                    + "/SAMPLE-TABLES.txt says how.");
            Path register = office.resolve("sample-register.xlsx");
            world.out().println("Try it:     " + Started.with("prepare", register.toString()));
        } else if (firm.isPresent()) {
            world.out()
                    .println(
                            "Next:       complete tables/tables.xlsx, from its first sheet on; then "
                                    + Started.with("doctor", office.toString()));
        }
        if (ManualCopy.renew(office)) {
            world.out().println("Manual:     manual/index.html");
        }
        starters(office);
        if (StartArchiveCommand.complete()) {
            world.out().println("From now on the program starts faster on this computer.");
        }
        world.out().println("Result:     " + office);
        return Ending.DONE.exitCode();
    }

    private void starters(Path office) throws IOException {
        if (Started.fromAnywhere().isPresent()) {
            Platform platform = Platform.of(System.getProperty("os.name"));
            tell(
                    "Starters:   ",
                    new Starters(office, platform, Started.fromAnywhere().get()).complete());
        }
    }

    /** Who the office is for; a person is asked only where one sits there and it is new. */
    private Optional<FirmOffice> firm(Path office) {
        if (sample && options.isGiven()) {
            throw new ParameterException(
                    spec.commandLine(), "--sample makes a made-up firm's office; leave it out.");
        }
        if (options.isGiven()) {
            return Optional.of(options.firm(world));
        }
        if (sample || !world.terminal() || Files.isDirectory(office.resolve("tables"))) {
            return Optional.empty();
        }
        Console console = System.console();
        return new FirmQuestions(
                        question -> console.readLine("%s", question),
                        world.out()::println,
                        world.directory())
                .asked();
    }

    private void tell(String what, List<String> names) {
        if (!names.isEmpty()) {
            world.out().println(what + (names.size() <= NAMED ? named(names) : counted(names)));
        }
    }

    private static String named(List<String> names) {
        return String.join(", ", names);
    }

    private static String counted(List<String> names) {
        Map<String, Integer> byFolder = new TreeMap<>();
        for (String name : names) {
            byFolder.merge(
                    name.contains("/") ? name.substring(0, name.indexOf('/') + 1) : name,
                    name.endsWith("/") ? 0 : 1,
                    Integer::sum);
        }
        return byFolder.entrySet().stream()
                .map(
                        e ->
                                e.getKey().endsWith("/") && e.getValue() > 0
                                        ? e.getKey() + " (" + e.getValue() + " files)"
                                        : e.getKey())
                .collect(Collectors.joining(", "));
    }
}
