package paperbark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import paperbark.batch.Ending;
import paperbark.office.OfficeFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code setup}: an office folder with all that a firm begins with. */
@Command(
        name = "setup",
        description = {
            "Makes an office folder, or what is missing of one.",
            "Intake, packs, returned, filed, templates, tables of a sample firm, a sample register, a ledger",
            "and a printed guide. What is there already stays as it is."
        },
        footer = {"", "Example:", "  paperbark setup office"},
        mixinStandardHelpOptions = true)
final class SetupCommand implements Callable<Integer> {
    // More names scroll the message off the screen.
    private static final int NAMED = 6;

    private final Main.World world;

    @Parameters(paramLabel = "FOLDER", description = "The office folder; it may exist.")
    private Path folder;

    SetupCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path office = world.directory().resolve(folder).normalize();
        OfficeFolder.Result result =
                OfficeFolder.setUp(
                        office,
                        LocalDate.now(world.clock()),
                        world.clock().instant(),
                        Version.text());
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
            Path sample = office.resolve("sample-register.xlsx");
            world.out().println("Try it:     " + Started.with("prepare", sample.toString()));
        }
        world.out().println("Result:     " + office);
        return Ending.DONE.exitCode();
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
