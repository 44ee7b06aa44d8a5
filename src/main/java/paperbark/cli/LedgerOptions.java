package paperbark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The words that say which ledger is meant, and on which day. */
final class LedgerOptions {

    @Option(
            names = "--ledger",
            paramLabel = "FILE",
            description = "The ledger; otherwise paperbark.db in the working directory.")
    private Path ledger = Path.of("paperbark.db");

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description = "The day, e.g. 2026-11-23; otherwise today.")
    private Optional<LocalDate> asOf = Optional.empty();

    Path ledger(Main.World world) {
        return world.directory().resolve(ledger).normalize();
    }

    LocalDate day(Main.World world) {
        return asOf.orElseGet(() -> LocalDate.now(world.clock()));
    }
}
