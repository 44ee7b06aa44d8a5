package paperbark.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.batch.HeadingProposal;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.office.ProposalDesk;
import paperbark.office.TableDesk;
import paperbark.sheet.Reading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code match-headings}: which column of a list is probably which. */
@Command(
        name = "match-headings",
        description = {
            "Proposes which column of an existing list is which, by its headings and by what stands below them,",
            "and what the list's own words mean. It changes nothing unless --write is given."
        },
        footer = {
            "",
            "Example:",
            "  paperbark match-headings jobs-2026.xlsx --tables office/tables --write"
        },
        mixinStandardHelpOptions = true)
final class MatchHeadingsCommand implements Callable<Integer> {
    private static final Columns LINES = new Columns(6, 26, 28, 7, 40);

    private final Main.World world;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "REGISTER", description = "The list: .xlsx, .xls, .ods or .csv.")
    private Path register;

    @Mixin private ListOptions list;

    @Option(
            names = "--write",
            description =
                    "Write what is sure or likely into the firm's tables \"columns\" and \"words\".")
    private boolean write;

    @Option(
            names = "--replace",
            description =
                    "With --write: also where the firm has a table \"columns\"; the earlier one is kept aside.")
    private boolean replace;

    MatchHeadingsCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path file = world.directory().resolve(register).normalize();
        Path named = list.tables(world, ReadingOptions.beside(file));
        Reading<HeadingProposal> read = HeadingProposal.of(file, list.sheet(), named);
        if (read.result().isEmpty()) {
            Refusal.told(world, read.findings());
            return isOfTables(read.findings())
                    ? Ending.SETUP.exitCode()
                    : Ending.REFUSED.exitCode();
        }
        HeadingProposal proposal = read.result().get();
        tell(proposal);
        if (write) {
            if (!replace && ProposalDesk.hasColumns(named)) {
                throw new ParameterException(
                        spec.commandLine(),
                        "The firm has a table \"columns\" already; --replace takes its place and keeps it aside.");
            }
            TableDesk.Result result = ProposalDesk.write(named, proposal);
            if (Refusal.told(world, result.findings())) {
                return Ending.SETUP.exitCode();
            }
            TablesCommand.tell(world, result);
            told("Written to the table \"columns\"", proposal.written());
            told("Left out, look at it yourself", proposal.leftOut());
        }
        return Ending.DONE.exitCode();
    }

    private static boolean isOfTables(List<Finding> findings) {
        return findings.stream()
                .anyMatch(
                        f ->
                                f.code() == FindingCode.TABLE_MISSING
                                        || f.code() == FindingCode.TABLE_TWICE
                                        || f.code() == FindingCode.TABLE_ROW_WRONG);
    }

    private void tell(HeadingProposal proposal) {
        PrintWriter out = world.out();
        line("column", "heading", "field", "sure", "because");
        proposal.columnLines().forEach(c -> line(c.toArray(String[]::new)));
        if (!proposal.wordLines().isEmpty()) {
            out.println();
            line("", "word", "field", "rows", "stands for");
        }
        for (List<String> word : proposal.wordLines()) {
            String ours = word.get(3).isEmpty() ? "? add it to the words table" : word.get(3);
            line("", word.get(0), word.get(1), word.get(2), ours);
        }
        if (proposal.shortYears()) {
            out.println(
                    "Years have two digits; the line \"two-digit-years,,yes\" says which century.");
        }
        if (!proposal.missing().isEmpty()) {
            out.println();
            out.println(
                    "No column was found for: "
                            + String.join(", ", proposal.missing())
                            + ". Name it in the columns table, or say there under \"always\" what holds for every row.");
        }
    }

    private void told(String what, List<String> lines) {
        if (!lines.isEmpty()) {
            world.out().println(what + ": " + String.join("; ", lines) + ".");
        }
    }

    private void line(String... cells) {
        LINES.row(cells).forEach(world.out()::println);
    }
}
