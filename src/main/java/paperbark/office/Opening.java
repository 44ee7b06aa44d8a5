package paperbark.office;

import java.io.IOException;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.batch.AdviceFiles;
import paperbark.batch.OutputFolder;
import paperbark.batch.WithdrawnSales;
import paperbark.ledger.Ledger;
import paperbark.ledger.Proof;

/**
 * Opens an office for the day: proves its ledger and copies it, then makes whole what lies around
 * it.
 */
final class Opening {
    private final Office office;
    private final Attendant.World world;
    private final Proof proof;
    private LocalDate day = LocalDate.MIN;
    private List<String> looks = List.of();
    private Set<String> batches = Set.of();
    private final Set<String> told = new HashSet<>();

    /** An opening of the office; what is proved of the ledger is noted in the proof. */
    Opening(Office office, Attendant.World world, Proof proof) {
        this.office = office;
        this.world = world;
        this.proof = proof;
    }

    /** Whether it was not yet opened on that day, or has lost a batch since. */
    boolean isDue(LocalDate today) throws IOException {
        return !today.equals(day) || !batchNames().containsAll(batches);
    }

    /** What people should look at, as it was seen at the last opening. */
    List<String> looks() {
        return looks;
    }

    /**
     * Opens it. A ledger that is not as it was written stops everything, before a copy of it pushes
     * out one that is.
     */
    void open(LocalDate today) throws IOException {
        if (!today.equals(day)) {
            proof.forget();
        }
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ProvedFiles proved = ProvedFiles.none();
            looks = LedgerProof.prove(office, ledger, proof, proved);
            proved.write(office);
            OutputFolder.id(office.packs());
            OutputFolder.bind(office.packs());
            Backups.daily(office, ledger, today, world.copyDays());
            AdviceFiles.complete(ledger, AdviceFiles.beside(office.ledger()));
            WithdrawnSales.complete(ledger, office.ledger());
            clearOlder(ledger);
            new HalfMade(office, ledger).clear(world.now().get());
            Witnesses witnesses = Witnesses.of(office, proved);
            new BatchStates(office, ledger, witnesses).note();
            new LostBatches(office, ledger, witnesses).restore(world).forEach(world.tell());
            for (String job : Forget.complete(office, ledger, today)) {
                world.tell().accept("Job " + job + " was forgotten; so are its papers here now.");
            }
        }
        looks.stream().filter(told::add).forEach(line -> world.tell().accept("Look: " + line));
        batches = batchNames();
        day = today;
    }

    /** Takes out what earlier versions left that this one would not. */
    private void clearOlder(Ledger ledger) throws IOException {
        int emptied = OldPrints.empty(office, ledger);
        if (emptied > 0) {
            world.tell()
                    .accept(
                            "What an earlier version noted of bank details and contacts was taken"
                                    + " out of the entries beside "
                                    + emptied
                                    + " batches.");
        }
        // After the copies were lifted too, which leaves how they were beside them.
        int older = OlderLedgers.clear(office, ledger);
        if (older > 0) {
            world.tell()
                    .accept(
                            "What lay here of the ledger as an earlier version wrote it is deleted; "
                                    + "the newest copy in backups holds all of it.");
        }
    }

    private Set<String> batchNames() throws IOException {
        return Office.list(office.packs()).stream()
                .filter(f -> !Office.isHidden(f))
                .map(f -> f.getFileName().toString())
                .collect(Collectors.toSet());
    }
}
