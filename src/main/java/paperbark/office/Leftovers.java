package paperbark.office;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import paperbark.batch.OutputFolder;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerBusyException;
import paperbark.ledger.LedgerException;

/** Looks for what runs that were cut short left behind, while no program is at work. */
final class Leftovers {
    private final Office office;

    Leftovers(Office office) {
        this.office = office;
    }

    /** What was found; one line that all is tidy otherwise. */
    List<Check> look() throws IOException {
        List<Check> checks = new ArrayList<>();
        for (Path item : Office.list(office.work())) {
            if (!Office.isHidden(item)) {
                checks.add(
                        Check.well(
                                "left over",
                                "work/" + item.getFileName() + ": the next watch finishes it"));
            }
        }
        if (halfForgotten()) {
            checks.add(
                    Check.well(
                            "left over",
                            "papers of a job that is forgotten: the next watch finishes it"));
        }
        Set<String> waiting = waiting();
        for (Path hidden : Office.list(office.packs())) {
            String name = hidden.getFileName().toString();
            if (Office.isHidden(hidden) && Files.isDirectory(hidden)) {
                checks.add(
                        Check.well(
                                "left over",
                                waiting.contains(name)
                                        ? "packs/" + name + ": the next run publishes it"
                                        : "packs/"
                                                + name
                                                + ": half-made and in no ledger; delete it to have the room"));
            }
        }
        return checks.isEmpty() ? List.of(Check.well("left over", "nothing")) : checks;
    }

    private boolean halfForgotten() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            return Forget.isUnfinished(office, ledger);
        } catch (LedgerException | LedgerBusyException | UncheckedIOException told) {
            // The ledger's own line says so.
            return false;
        }
    }

    private Set<String> waiting() throws IOException {
        Set<String> names = new HashSet<>();
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.unpublished(OutputFolder.known(office.packs()).orElse(""))
                    .forEach(b -> names.add(b.staged()));
        } catch (LedgerException | LedgerBusyException | UncheckedIOException told) {
            // The ledger's own line says so.
        }
        return names;
    }
}
