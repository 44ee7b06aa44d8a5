package paperbark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Future;
import java.util.function.Function;
import paperbark.disk.OtherThread;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Proof;
import paperbark.office.LedgerProof;
import paperbark.office.Office;
import picocli.CommandLine.Option;

/** The words that say which ledger is meant, and on which day. */
final class LedgerOptions {

    @Option(
            names = "--ledger",
            paramLabel = "LEDGER",
            description =
                    "The ledger, a file or jdbc:postgresql://HOST/DATABASE; otherwise the one that ledger.txt in the working directory names, or paperbark.db there.")
    private Optional<String> ledger = Optional.empty();

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description = "The day, e.g. 2026-11-23; otherwise today.")
    private Optional<LocalDate> asOf = Optional.empty();

    /**
     * The ledger, which an office's folders agree with.
     *
     * @throws paperbark.ledger.LedgerException when they do not
     */
    LedgerPlace ledger(Main.World world) throws IOException {
        LedgerPlace place = place(ledger, world);
        look(world, LedgerProof.before(place, new Proof()));
        return place;
    }

    /**
     * What is read in the ledger while another thread proves it. Nobody is told of it before the
     * proof is done.
     *
     * @throws paperbark.ledger.LedgerException when the ledger is not as it was written, whatever
     *     became of the reading
     */
    <T> T read(Main.World world, Function<LedgerPlace, T> reading) throws IOException {
        LedgerPlace place = place(ledger, world);
        if (!place.isExpected()) {
            return reading.apply(ledger(world));
        }
        // One of an older schema is brought to this program's before two look into it.
        Ledger.open(place).close();
        Future<List<String>> proof =
                OtherThread.begin(
                        "proof of the ledger", () -> LedgerProof.before(place, new Proof()));
        try {
            return reading.apply(place);
        } finally {
            look(world, OtherThread.result(proof));
        }
    }

    /** Says what somebody should look at, beside what the command says. */
    static void look(Main.World world, List<String> noticed) {
        noticed.forEach(line -> world.err().println("Look: " + line));
    }

    /** The ledger of that name, or else the one of the working directory. */
    static LedgerPlace place(Optional<String> name, Main.World world) {
        return name.map(n -> LedgerPlace.named(n, world.directory()))
                .orElseGet(() -> LedgerPlace.in(world.directory()));
    }

    /** The day asked for, or today where the office of the ledger is. */
    LocalDate day(Main.World world) {
        return day(world, new Office(place(ledger, world).beside("")).tables());
    }

    /** The day asked for, or today where the firm is whose tables these are. */
    LocalDate day(Main.World world, Path tables) {
        return asOf.orElseGet(() -> world.today(tables));
    }
}
