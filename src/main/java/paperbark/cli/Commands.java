package paperbark.cli;

import static java.util.Map.entry;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;

/** The program's commands, in the order of its help. */
final class Commands {
    private static final List<Map.Entry<String, Function<Main.World, Object>>> ALL =
            List.of(
                    entry("setup", SetupCommand::new),
                    entry("tables", TablesCommand::new),
                    entry("new-register", NewRegisterCommand::new),
                    entry("match-headings", MatchHeadingsCommand::new),
                    entry("listed-models", ListedModelsCommand::new),
                    entry("prepare", PrepareCommand::new),
                    entry("print", PrintCommand::new),
                    entry("check", CheckCommand::new),
                    entry("explain", ExplainCommand::new),
                    entry("explain-finding", ExplainFindingCommand::new),
                    entry("rules", RulesCommand::new),
                    entry("preview", PreviewCommand::new),
                    entry("form-fields", FormFieldsCommand::new),
                    entry("form-grid", FormGridCommand::new),
                    entry("ledger-new", LedgerNewCommand::new),
                    entry("ledger-rebuild", LedgerRebuildCommand::new),
                    entry("doctor", DoctorCommand::new),
                    entry("watch", WatchCommand::new),
                    entry("stop", StopCommand::new),
                    entry("forget", ForgetCommand::new),
                    entry("scans", ScansCommand::new),
                    entry("file-page", FilePageCommand::new),
                    entry("photos", PhotosCommand::new),
                    entry("labels", LabelsCommand::new),
                    entry("envelopes", EnvelopesCommand::new),
                    entry("settle", SettleCommand::new),
                    entry("lodged", LodgedCommand::new),
                    entry("paid", PaidCommand::new),
                    entry("unsay", UnsayCommand::new),
                    entry("withdraw", WithdrawCommand::new),
                    entry("owed", OwedCommand::new),
                    entry("week", WeekCommand::new),
                    entry("drafts", DraftsCommand::new),
                    entry("quarters", QuartersCommand::new),
                    entry("export", ExportCommand::new),
                    entry("start-archive", StartArchiveCommand::new),
                    entry("completion", CompletionCommand::new));

    private Commands() {}

    /** Whether the words ask for no more than what commands there are. */
    static boolean areListed(String... words) {
        return words.length == 1 && words[0].matches("-h|--help");
    }

    /** What the list of commands tells of each; to read their options too takes twice as long. */
    static List<CommandSpec> listed(Main.World world) {
        return ALL.stream()
                .map(
                        entry -> {
                            Class<?> command = entry.getValue().apply(world).getClass();
                            CommandSpec spec = CommandSpec.create().name(entry.getKey());
                            spec.usageMessage()
                                    .description(
                                            command.getAnnotation(Command.class).description());
                            return spec;
                        })
                .toList();
    }

    /** The command that the first word names; all of them where it names none. */
    static Collection<Function<Main.World, Object>> asked(String... words) {
        Optional<Function<Main.World, Object>> one =
                ALL.stream()
                        .filter(command -> words.length > 0 && command.getKey().equals(words[0]))
                        .map(Map.Entry::getValue)
                        .findFirst();
        return one.map(List::of).orElseGet(() -> ALL.stream().map(Map.Entry::getValue).toList());
    }
}
