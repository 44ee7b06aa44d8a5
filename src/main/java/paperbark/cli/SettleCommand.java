package paperbark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.finding.Told;
import paperbark.ledger.LedgerPlace;
import paperbark.settle.Advice;
import paperbark.settle.SettleDesk;
import paperbark.settle.SettledLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code settle}: a buyer's payment advice is matched to what is expected. */
@Command(
        name = "settle",
        description =
                "Matches a buyer's payment advice to the claims in the ledger: by reference, serial, job, then by amount and day.",
        footer = {"", "Example:", "  paperbark settle advice.csv --buyer \"Kestrel Certificates\""},
        mixinStandardHelpOptions = true)
final class SettleCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(paramLabel = "ADVICE", description = "The advice: .xlsx, .xls, .ods or .csv.")
    private Path advice;

    @Mixin private LedgerOptions options;

    @Option(names = "--sheet", paramLabel = "NAME", description = "The sheet to read.")
    private Optional<String> sheet = Optional.empty();

    @Option(
            names = "--tables",
            paramLabel = "PATH",
            description =
                    "Folder or workbook of the firm's tables, for the headings; otherwise \"tables\" beside the ledger.")
    private Optional<Path> tables = Optional.empty();

    @Option(
            names = "--paid-on",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description = "The day of lines that name none.")
    private Optional<LocalDate> paidOn = Optional.empty();

    @Option(
            names = "--buyer",
            paramLabel = "NAME",
            description = "The buyer of lines that name none.")
    private Optional<String> buyer = Optional.empty();

    @Option(
            names = "--out",
            paramLabel = "FOLDER",
            description = "Where the marked copy and the list appear; otherwise beside the advice.")
    private Optional<Path> out = Optional.empty();

    @Option(names = "--explain", description = "Say why each finding matters.")
    private boolean explain;

    SettleCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path file = world.directory().resolve(advice).normalize();
        LedgerPlace ledger = options.ledger(world);
        Path firm = tables.map(world.directory()::resolve).orElse(ledger.beside("tables"));
        SettleDesk.Result result =
                SettleDesk.settle(
                        new SettleDesk.Order(
                                file,
                                sheet,
                                firm,
                                ReadingOptions.rules(firm),
                                ledger,
                                new Advice.Defaults(paidOn, buyer),
                                out.map(world.directory()::resolve).orElse(file.resolveSibling("")),
                                options.day(world, firm),
                                world.clock().instant(),
                                Version.text()));
        FindingText text = new FindingText(world.out(), explain);
        Told.of(result.findings()).forEach(text::print);
        tell(result);
        return result.ending().exitCode();
    }

    private static String sentence(SettleDesk.Result result) {
        return switch (result.ending()) {
            case ALREADY -> "Every line was taken in before; nothing is new.";
            case HELD ->
                    result.lines().isEmpty()
                            ? "Nothing was taken in; see the findings."
                            : "Done, but some lines need a person; see the findings.";
            case REFUSED -> "The advice was refused; nothing was taken in.";
            default -> result.ending().sentence();
        };
    }

    private void tell(SettleDesk.Result result) {
        world.out().println(sentence(result));
        Map<SettledLine.Ending, Integer> counts = new EnumMap<>(SettledLine.Ending.class);
        result.lines().forEach(l -> counts.merge(l.ending(), 1, Integer::sum));
        counts.forEach((ending, n) -> world.out().printf("%-13s %d%n", ending.word() + ":", n));
        result.written().forEach(path -> world.out().println("Result:       " + path));
    }
}
