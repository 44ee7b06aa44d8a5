package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import paperbark.disk.Disk;
import paperbark.ledger.Batches;
import paperbark.ledger.Ledger;
import paperbark.value.Days;

/**
 * Batches of a day to come: the clock is wrong now, or was when they were made. Only a person can
 * tell, and says so once a batch.
 */
final class FutureBatches {
    private final Office office;
    private final Ledger ledger;

    FutureBatches(Office office, Ledger ledger) {
        this.office = office;
        this.ledger = ledger;
    }

    /**
     * Looks for them.
     *
     * @param clockRight whether a person says that the clock is right now
     */
    CheckResult check(LocalDate today, boolean clockRight) throws IOException {
        Set<String> settled = settled();
        List<Batches.BatchState> future =
                ledger.batches().after(today).stream()
                        .filter(b -> !settled.contains(b.name()))
                        .toList();
        if (future.isEmpty()) {
            return CheckResult.well("clock", "says " + Days.show(today));
        }
        if (clockRight) {
            future.forEach(b -> settled.add(b.name()));
            Disk.replace(
                    file(),
                    (String.join("\n", settled.stream().sorted().toList()) + "\n")
                            .getBytes(StandardCharsets.UTF_8));
            return CheckResult.well(
                    "clock", "says " + Days.show(today) + ", and is right as you say");
        }
        Batches.BatchState newest = future.get(0);
        return CheckResult.setup(
                "clock",
                "says "
                        + Days.show(today)
                        + ", but batch "
                        + newest.name()
                        + " is of "
                        + Days.show(newest.day())
                        + ". Set the computer's clock, or say with --clock-right that it is right"
                        + " now.");
    }

    private Path file() {
        return office.packs().resolve(".paperbark-future");
    }

    private Set<String> settled() throws IOException {
        return Files.exists(file()) ? new HashSet<>(Files.readAllLines(file())) : new HashSet<>();
    }
}
