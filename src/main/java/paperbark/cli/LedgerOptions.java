package paperbark.cli;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.ledger.LedgerPlace;
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

    LedgerPlace ledger(Main.World world) {
        return place(ledger, world);
    }

    /** The ledger of that name, or else the one of the working directory. */
    static LedgerPlace place(Optional<String> name, Main.World world) {
        return name.map(n -> LedgerPlace.named(n, world.directory()))
                .orElseGet(() -> LedgerPlace.in(world.directory()));
    }

    LocalDate day(Main.World world) {
        return asOf.orElseGet(() -> LocalDate.now(world.clock()));
    }
}
