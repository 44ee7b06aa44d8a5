package paperbark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.batch.OutputFolder;
import paperbark.ledger.LedgerPlace;
import paperbark.office.Attendant;
import paperbark.office.ManualCopy;
import paperbark.office.Office;
import paperbark.office.OfficeDay;
import paperbark.office.OfficeLock;
import paperbark.office.StopRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code watch}: attends an office folder. */
@Command(
        name = "watch",
        description = {
            "Attends an office folder: every register dropped into intake becomes packs, is filed or comes back.",
            "Works on network shares too: it looks again and again and needs no notices of change."
        },
        footer = {
            "",
            "Examples:",
            "  paperbark watch office",
            "  paperbark watch office --open",
            "  paperbark watch office --once"
        },
        mixinStandardHelpOptions = true)
final class WatchCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "FOLDER", description = "The office folder, as setup makes it.")
    private Path folder;

    @Option(
            names = "--once",
            description =
                    "Take what is there and end, for a scheduler; otherwise go on until stopped.")
    private boolean once;

    @Option(
            names = "--poll",
            paramLabel = "SECONDS",
            defaultValue = "10",
            description = "How long between two looks; otherwise 10.")
    private int pollSeconds;

    @Option(
            names = "--quiet-for",
            paramLabel = "SECONDS",
            defaultValue = "10",
            description = "How long a file must stay the same before it is taken; otherwise 10.")
    private int quietSeconds;

    @Option(
            names = "--keep-copies",
            paramLabel = "DAYS",
            defaultValue = "30",
            description = "How long the ledger's copy of a day is kept; otherwise 30.")
    private int copyDays;

    @Option(names = "--open", description = "Open status.html in the browser, or say its address.")
    private boolean open;

    @Option(
            names = "--moved",
            description =
                    "The office folder was moved here, or has a second name; asked where offices share a ledger.")
    private boolean moved;

    @Option(
            names = "--copied",
            description =
                    "The office folder is a copy of one that goes on; asked where offices share a ledger.")
    private boolean copied;

    WatchCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        try (OfficeLock lock = OfficeLock.take(office, world.clock().instant())) {
            StopRequest.clear(office);
            world.temporary().accept(lock.clearedTemporary());
            renewManual(office);
            ZoneId zone = OfficeDay.zone(office.tables(), world.clock().getZone());
            tellPlace(office);
            Attendant attendant =
                    new Attendant(
                            lock,
                            new Attendant.World(
                                    world.clock()::instant,
                                    () -> LocalDate.ofInstant(world.clock().instant(), zone),
                                    Duration.ofSeconds(quietSeconds),
                                    Math.max(0, copyDays),
                                    Version.text(),
                                    this::tell));
            return once ? attendOnce(attendant) : attend(office, attendant);
        } catch (OfficeLock.Busy busy) {
            world.err().println(Ending.BUSY.sentence());
            world.err().println(busy.getMessage());
            if (open) {
                Browser.open(office.status(), world.out());
            }
            return Ending.BUSY.exitCode();
        }
    }

    /** A copy that took a ledger of its own along has in it the batches that came with it. */
    private void tellPlace(Office office) throws IOException {
        boolean isAnother =
                copied
                        && office.ledger() instanceof LedgerPlace.OnServer
                        && OutputFolder.elsewhere(office.packs()).isPresent();
        if (isAnother) {
            OutputFolder.renew(office.packs());
        } else if (moved) {
            OutputFolder.bind(office.packs());
        }
    }

    /** What the office sees of the world when it is asked to do one thing now. */
    static Attendant.World world(Main.World world, Office office) throws Exception {
        ZoneId zone = OfficeDay.zone(office.tables(), world.clock().getZone());
        return new Attendant.World(
                world.clock()::instant,
                () -> LocalDate.ofInstant(world.clock().instant(), zone),
                Duration.ZERO,
                0,
                Version.text(),
                line -> {
                    world.out().println(line);
                    world.out().flush();
                });
    }

    /** The work goes on with an older one too. */
    private static void renewManual(Office office) {
        try {
            ManualCopy.renew(office.root());
        } catch (IOException | RuntimeException older) {
            return;
        }
    }

    private int attendOnce(Attendant attendant) throws Exception {
        int worst = worst(attendant.round(), 0);
        // A file is only known to be steady at the second look.
        pause(quietSeconds);
        Attendant.Round last = attendant.round();
        last.waiting().forEach((file, why) -> tell(file + " waits. " + why));
        int ended = worst(last, worst);
        boolean nothing = ended == 0 || ended == Ending.ALREADY.exitCode();
        return nothing && !last.waiting().isEmpty() ? Ending.BUSY.exitCode() : ended;
    }

    private int attend(Office office, Attendant attendant) throws Exception {
        Watch watch = new Watch(world, attendant);
        watch.look();
        if (open) {
            Browser.open(office.status(), world.out());
        }
        for (int seconds = quietSeconds; ; seconds = Math.max(1, pollSeconds)) {
            for (int waited = 0; waited < seconds && !StopRequest.isMade(office); waited++) {
                pause(1);
            }
            if (StopRequest.isMade(office)) {
                attendant.leave();
                tell("Stopped, as asked.");
                return Ending.DONE.exitCode();
            }
            watch.look();
        }
    }

    private static void pause(int seconds) throws InterruptedException {
        Thread.sleep(Duration.ofSeconds(Math.max(seconds, 0)).toMillis());
    }

    private static int worst(Attendant.Round round, int before) {
        // That a list brought nothing new matters least of all.
        int already = Ending.ALREADY.exitCode();
        return round.endings().stream()
                .mapToInt(Ending::exitCode)
                .reduce(
                        before,
                        (a, b) ->
                                a == already && b != 0
                                        ? b
                                        : b == already && a != 0 ? a : Math.max(a, b));
    }

    private void tell(String line) {
        world.out().println(line);
        world.out().flush();
    }
}
