package paperbark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.entitlement.Retention;
import paperbark.ledger.JobVersion;
import paperbark.office.Forget;
import paperbark.office.Office;
import paperbark.office.OfficeLock;
import paperbark.value.Days;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code forget}: what is known of a job's owner goes, once it need not be kept. */
@Command(
        name = "forget",
        description = {
            "Takes what is known of a job's owner out of an office folder, once the law no longer wants it kept.",
            "Out of ledger, packs, summary, filed and returned registers, and older copies of the ledger.",
            "What stays, and why, is told. It cannot be undone."
        },
        footer = {"", "Example:", "  paperbark forget SB-1101 --office office --only-show"},
        mixinStandardHelpOptions = true)
final class ForgetCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "JOB", description = "The job number.")
    private String job;

    @Option(
            names = "--office",
            paramLabel = "FOLDER",
            description = "The office folder; otherwise the working directory.")
    private Path folder = Path.of("");

    @Option(
            names = "--warranty-ended",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description =
                    "The day on which the last warranty ended; a later one that the ledger knows counts.")
    private Optional<LocalDate> warrantyEnded = Optional.empty();

    @Option(
            names = "--only-show",
            description = "Says whether and why it may be forgotten, and changes nothing.")
    private boolean onlyShow;

    ForgetCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        LocalDate today = world.today(office.tables());
        Forget.Order order =
                new Forget.Order(
                        job,
                        today,
                        world.clock().instant(),
                        Version.text(),
                        warrantyEnded,
                        onlyShow);
        try (OfficeLock lock = OfficeLock.take(office, world.clock().instant())) {
            return tell(Forget.run(lock, order), today).exitCode();
        } catch (OfficeLock.Busy busy) {
            world.err().println(Ending.BUSY.sentence());
            world.err().println(busy.getMessage());
            return Ending.BUSY.exitCode();
        }
    }

    private Ending tell(Forget.Result result, LocalDate today) {
        if (result.versions().isEmpty()) {
            world.err().println("The ledger knows no job " + job + ". Look at its number again.");
            return Ending.USAGE;
        }
        tellPeriods(result);
        if (!result.mayGo(today)) {
            world.err().println(Ending.KEPT.sentence());
            tellFirstDay(result);
            return Ending.KEPT;
        }
        if (result.versions().stream().allMatch(JobVersion::forgotten)) {
            world.out()
                    .println("It is forgotten in the ledger already; its files are looked over.");
        }
        if (onlyShow) {
            world.out().println("It may be forgotten. Nothing was changed.");
            return Ending.DONE;
        }
        result.done().forEach(line -> world.out().println("Done:   " + line));
        result.unread().forEach(line -> world.out().println("Look:   " + line));
        kept();
        return Ending.DONE;
    }

    private void tellPeriods(Forget.Result result) {
        for (Retention.Period period : result.periods()) {
            world.out()
                    .printf(
                            "%-36s until %s%s%n",
                            period.what(),
                            Days.show(period.until()),
                            period.rule().map(rule -> "  " + rule.inWords()).orElse(""));
        }
        if (!result.warrantyKnown()) {
            world.err()
                    .println(
                            "The ledger does not know when the last warranty of this job ends."
                                    + " Say it with --warranty-ended.");
        }
    }

    private void tellFirstDay(Forget.Result result) {
        result.periods().stream()
                .filter(p -> result.warrantyKnown())
                .findFirst()
                .map(longest -> Days.show(longest.until().plusDays(1)))
                .ifPresent(day -> world.err().println("It may be forgotten from " + day + " on."));
    }

    private void kept() {
        world.out()
                .println(
                        "Kept:   job number, serials, certificates, buyers, amounts and days, in the ledger:"
                                + " they tell of no person, no certificate may be claimed twice, and the"
                                + " accounts must still add up.");
        world.out()
                .println(
                        "Kept:   buyers' payment lines as they were written, since they belong to the buyer's"
                                + " accounts as well.");
        world.out()
                .println(
                        "Beyond: mail, signed paper, copies made elsewhere, and what the buyers and makers"
                                + " were sent.");
    }
}
