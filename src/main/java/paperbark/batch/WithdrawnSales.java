package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.disk.Disk;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.output.journal.CalledOff;
import paperbark.output.journal.TakenBack;

/**
 * The journals of withdrawals, beside the files of their entries: a job that is called off has no
 * batch in whose journal its sale could be taken back. Like those files they are written after the
 * commit, and what a cut kept from being written comes with the next start.
 */
public final class WithdrawnSales {
    private WithdrawnSales() {}

    /** The journal of a withdrawal, whether there is one or not. */
    static Path journal(Path advices, String entry) {
        return advices.resolve(entry + "-journal.csv");
    }

    /** Writes the journals that are still missing where a batch had booked what is called off. */
    public static void complete(Ledger ledger, LedgerPlace place) throws IOException {
        complete(ledger, place, EarlierSales.of(ledger, place));
    }

    static void complete(Ledger ledger, LedgerPlace place, EarlierSales sales) throws IOException {
        Path folder = AdviceFiles.beside(place);
        for (Map.Entry<String, List<String>> off : ledger.income().calledOff().entrySet()) {
            Path file = journal(folder, off.getKey());
            if (!Files.exists(file)) {
                List<TakenBack> taken = new ArrayList<>();
                for (String job : off.getValue()) {
                    sales.of(job).ifPresent(taken::add);
                }
                if (!taken.isEmpty()) {
                    CalledOff journal = new CalledOff(off.getKey(), taken);
                    Disk.replace(
                            folder.resolve(off.getKey() + "-accounts.journal"),
                            journal.plainText());
                    // Last, since it tells that both are there.
                    Disk.replace(file, journal.csv());
                }
            }
        }
    }

    /** The journal that takes the sale of a job back that was called off just now. */
    public static Optional<Path> of(Ledger ledger, LedgerPlace place, String job) {
        return ledger.income().entriesOfSale(job).stream()
                .findFirst()
                .map(entry -> journal(AdviceFiles.beside(place), entry))
                .filter(Files::isRegularFile);
    }
}
