package paperbark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.ledger.ClaimState;
import paperbark.ledger.JobVersion;
import paperbark.ledger.WithdrawnCheck;
import paperbark.settle.Withdrawal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code withdraw}: a job that was claimed and should not have been is booked out. */
@Command(
        name = "withdraw",
        description = {
            "Books a job out of the ledger: nothing is owed for it, and its serials and site are free again.",
            "What was claimed stays in the ledger as withdrawn. The job can be claimed again by a later list."
        },
        footer = {
            "",
            "Example:",
            "  paperbark withdraw SB-1101 --because \"returned to the maker\""
        },
        mixinStandardHelpOptions = true)
final class WithdrawCommand implements Callable<Integer> {
    private static final int LONGEST = 200;

    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "JOB", description = "The job number.")
    private String job;

    @Option(
            names = "--because",
            paramLabel = "REASON",
            required = true,
            description =
                    "Why, in a few words. They stay in the ledger for good, so name no person.")
    private String reason;

    @Mixin private LedgerOptions options;

    WithdrawCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        String because = reason.replaceAll("\\s+", " ").strip();
        if (because.isEmpty() || because.length() > LONGEST) {
            throw new ParameterException(
                    command.commandLine(),
                    "Say with --because why, in 1 to " + LONGEST + " letters.");
        }
        return tell(Withdrawal.run(
                        new Withdrawal.Order(
                                job,
                                because,
                                options.ledger(world),
                                options.day(world),
                                world.clock().instant(),
                                Version.text())))
                .exitCode();
    }

    private Ending tell(Withdrawal.Result result) {
        if (result.versions().isEmpty()) {
            world.err().println("The ledger knows no job " + job + ". Look at its number again.");
            return Ending.USAGE;
        }
        if (!result.done()) {
            world.out().println("Job " + job + " was withdrawn before; nothing is new.");
            return Ending.ALREADY;
        }
        for (ClaimState claim : result.claims()) {
            world.out()
                    .println(
                            "Withdrawn:    "
                                    + claim.reference()
                                    + ", "
                                    + claim.certificates()
                                    + " certificates"
                                    + (claim.buyer().isEmpty() ? "" : " to " + claim.buyer())
                                    + ", "
                                    + claim.balance());
        }
        JobVersion newest = result.versions().get(result.versions().size() - 1);
        world.out()
                .println(
                        "To do:        Take back its papers, the newest in "
                                + newest.pack()
                                + " of batch "
                                + newest.batchInWords()
                                + WithdrawnCheck.buyers(result.claims())
                                + ", and mark the row as cancelled or take it out."
                                + inTheBooks(result, newest.batchInWords()));
        return Ending.DONE;
    }

    private static String inTheBooks(Withdrawal.Result result, String batch) {
        if (result.journal().isPresent()) {
            Path file = result.journal().get();
            return " Book "
                    + file.getParent().getFileName()
                    + "/"
                    + file.getFileName()
                    + " too: it takes back the sale that a journal had booked.";
        }
        return result.sold()
                ? " Where the journal of batch "
                        + batch
                        + " books its sale, take that back in your books."
                : "";
    }
}
