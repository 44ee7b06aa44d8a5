package paperbark.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.answer.Json;
import paperbark.answer.RulesInForce;
import paperbark.batch.Ending;
import paperbark.office.Office;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code rules}: what is in force, what lapses soon, what needs another look at its source. */
@Command(
        name = "rules",
        description =
                "Lists the rule rows in force on a day with source and confidence, what lapses soon, and what was not confirmed for a year.",
        footer = {"", "Example:", "  paperbark rules --table stc/zones"},
        mixinStandardHelpOptions = true)
final class RulesCommand implements Callable<Integer> {
    private final Main.World world;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description = "The day, e.g. 2026-11-23; otherwise today.")
    private Optional<LocalDate> asOf = Optional.empty();

    @Option(
            names = "--within",
            paramLabel = "DAYS",
            defaultValue = "90",
            description = "How far to look ahead for rows that lapse; otherwise 90 days.")
    private int withinDays;

    @Option(
            names = "--tables",
            paramLabel = "PATH",
            description =
                    "Folder or workbook of the firm's tables; otherwise the shipped rules alone.")
    private Optional<Path> tables = Optional.empty();

    @Option(
            names = "--table",
            paramLabel = "NAME",
            description = "One table alone, with all its rows, e.g. stc/zones.")
    private Optional<String> table = Optional.empty();

    @Option(names = "--json", description = "Print the rows as JSON.")
    private boolean json;

    RulesCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() {
        Optional<Path> firm = tables.map(world.directory()::resolve);
        if (firm.filter(path -> !Files.exists(path)).isPresent()) {
            return wrong("Not found: " + firm.get(), "Name the folder or workbook of your tables.");
        }
        if (withinDays < 0) {
            return wrong("--within " + withinDays + " is less than nothing.", "Type whole days.");
        }
        RulesInForce all =
                RulesInForce.on(
                        firm.flatMap(ReadingOptions::rules),
                        asOf.orElseGet(() -> world.today(firm.orElseGet(this::officesOwn))),
                        withinDays);
        Optional<RulesInForce> wanted = table.isEmpty() ? Optional.of(all) : all.of(table.get());
        if (wanted.isEmpty()) {
            return wrong(
                    "There is no rule table \"" + table.get() + "\".",
                    "The tables are " + String.join(", ", all.tables()) + ".");
        }
        if (json) {
            world.out().println(Json.of(wanted.get()));
        } else {
            new RuleText(world.out(), table.isPresent()).print(wanted.get());
        }
        return Ending.DONE.exitCode();
    }

    /** Whoever asks from within an office folder means its day, though not its rules. */
    private Path officesOwn() {
        return new Office(world.directory()).tables();
    }

    private int wrong(String fact, String remedy) {
        world.err().println(fact);
        world.err().println(remedy);
        return Ending.USAGE.exitCode();
    }
}
