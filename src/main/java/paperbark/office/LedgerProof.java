package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.batch.AdviceFiles;
import paperbark.batch.EntryFile;
import paperbark.batch.OutputFolder;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Proof;
import paperbark.ledger.Records;

/**
 * Proves that an office's ledger is the one that its folders tell of. Whatever takes something in
 * or tells of money asks it first: an older copy would let everything since be claimed or paid
 * again, and the seals alone cannot tell an older ledger, or one that was sealed anew.
 */
public final class LedgerProof {
    // The newest by its name may be of a day that a wrong clock said.
    private static final int ENOUGH_COPIES = 3;

    private final Office office;
    private final Ledger ledger;
    private final ProvedFiles proved;
    private final Map<Long, String> seals;
    private final List<String> noticed = new ArrayList<>();

    private LedgerProof(Office office, Ledger ledger, ProvedFiles proved) {
        this.office = office;
        this.ledger = ledger;
        this.proved = proved;
        this.seals = ledger.records().seals();
    }

    /**
     * Proves the ledger of an office before something is done with it. A ledger that belongs to no
     * office folder is left to whoever opens it.
     *
     * @param proof what is proved already; takes what is proved now
     * @return what somebody should look at, in a sentence each
     * @throws LedgerException naming what is in one place and not in another
     */
    public static List<String> before(LedgerPlace place, Proof proof) throws IOException {
        Path folder = place.beside("");
        boolean isOffices =
                !(place instanceof LedgerPlace.InFile file)
                        || file.path().getFileName().toString().equals(LedgerPlace.FILE);
        if (!isOffices || !Files.isDirectory(folder) || !Office.isOffice(folder)) {
            return List.of();
        }
        Office office = new Office(folder.toRealPath());
        if (!place.isExpected()) {
            Optional<Path> witness = Witnesses.of(office).any();
            if (witness.isPresent()) {
                throw new LedgerException(
                        "There is no ledger "
                                + place
                                + ", and "
                                + office.root().relativize(witness.get())
                                + " tells of one.",
                        place.remedy());
            }
            return List.of();
        }
        try (Ledger ledger = Ledger.open(place)) {
            ProvedFiles proved = ProvedFiles.of(office);
            List<String> noticed = proveAll(office, ledger, proof, proved);
            proved.write(office);
            return noticed;
        }
    }

    /**
     * What is wrong with the ledger; empty when it can be trusted.
     *
     * @param noticed takes what somebody should look at
     * @throws paperbark.ledger.LedgerBusyException when another program writes in it, which says
     *     nothing about the ledger
     */
    static Optional<String> trouble(Office office, List<String> noticed) throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            noticed.addAll(proveAll(office, ledger, new Proof(), ProvedFiles.none()));
            return Optional.empty();
        } catch (LedgerException e) {
            return Optional.of(e.getMessage());
        }
    }

    /**
     * Proves rows, seals and tables, and holds them against batches, advices, copies and filed
     * registers.
     *
     * @param proof what is proved already
     * @param proved what is known of files that are as they were; takes what is proved now
     * @return what somebody should look at, in a sentence each
     * @throws LedgerException naming what is not
     */
    static List<String> prove(Office office, Ledger ledger, Proof proof, ProvedFiles proved)
            throws IOException {
        return prove(office, ledger, proof, Witnesses.of(office, proved), proved);
    }

    /** The same, with what is told of papers that are not there any more. */
    private static List<String> proveAll(
            Office office, Ledger ledger, Proof proof, ProvedFiles proved) throws IOException {
        Witnesses witnesses = Witnesses.of(office, proved);
        List<String> noticed = new ArrayList<>(prove(office, ledger, proof, witnesses, proved));
        noticed.addAll(new LostBatches(office, ledger, witnesses).noticed());
        return noticed;
    }

    private static List<String> prove(
            Office office, Ledger ledger, Proof proof, Witnesses witnesses, ProvedFiles proved)
            throws IOException {
        proof.of(ledger);
        if (office.ledger() instanceof LedgerPlace.OnServer) {
            ownPlace(office);
        }
        LedgerProof asked = new LedgerProof(office, ledger, proved);
        asked.noticed.addAll(witnesses.batches().noticed());
        for (BatchFolders.Found batch : witnesses.batches().all()) {
            asked.batch(batch);
        }
        for (Path advice : witnesses.advices()) {
            asked.advice(advice);
        }
        for (Path filed : witnesses.filed()) {
            asked.filed(filed);
        }
        asked.copies();
        asked.noticed.addAll(new BatchStates(office, ledger, witnesses).noticed());
        return asked.noticed;
    }

    /** Of two folders with one id, each would take the other's batches for its own. */
    private static void ownPlace(Office office) throws IOException {
        Optional<String> elsewhere = OutputFolder.elsewhere(office.packs());
        if (elsewhere.isPresent()) {
            throw new LedgerException(
                    "This office folder was "
                            + Path.of(elsewhere.get()).getParent()
                            + " when it began to use the ledger that offices share.",
                    "Start watch once with --moved where it was moved or has a second name, or with"
                            + " --copied where the other one goes on.");
        }
    }

    private void batch(BatchFolders.Found batch) throws IOException {
        Optional<EntryFile> entry =
                isAsBefore(batch.folder(), batch.known()) ? Optional.empty() : batch.entry();
        if (entry.isPresent()) {
            entry(entry.get(), batch.folder(), "packs/" + batch.folder().getFileName());
        }
    }

    private void advice(Path file) throws IOException {
        if (isAsBefore(file, proved.known(file))) {
            return;
        }
        String where = AdviceFiles.FOLDER + "/" + file.getFileName();
        Optional<EntryFile> entry = EntryFile.read(file);
        if (entry.isPresent()) {
            entry(entry.get(), file, where);
        } else {
            noticed.add(where + " cannot be read. Bring it back from a backup, or delete it.");
        }
    }

    /** Whether the ledger still seals the entry as it did when an unchanged file told it. */
    private boolean isAsBefore(Path path, Optional<ProvedFiles.Told> known) {
        boolean same = known.filter(k -> k.seal().equals(seals.get(k.seq()))).isPresent();
        if (same) {
            proved.remember(path, known.get());
        }
        return same;
    }

    private void entry(EntryFile told, Path path, String where) {
        if (!told.ledger().equals(ledger.id())) {
            throw new LedgerException(
                    "The ledger does not know "
                            + where
                            + ", which went into another one: it is an older copy or another ledger.",
                    ledger.remedy());
        }
        switch (ledger.records().knows(told.entry())) {
            case NOTHING ->
                    throw new LedgerException(
                            "The ledger does not know " + where + ": it is an older copy.",
                            ledger.remedy());
            case OTHERWISE ->
                    throw new LedgerException(
                            "The ledger is not as it was written: "
                                    + where
                                    + " tells entry "
                                    + told.entry().seq()
                                    + " otherwise.",
                            ledger.remedy());
            default ->
                    proved.remember(
                            path,
                            new ProvedFiles.Told(
                                    told.entry().seq(),
                                    told.entry().name(),
                                    seals.get(told.entry().seq())));
        }
    }

    /** A register that was taken in stays proof of it where ledger and papers are gone. */
    private void filed(Path folder) {
        String batch = folder.getFileName().toString();
        if (!ledger.batches().isKnown(batch)) {
            throw new LedgerException(
                    "The ledger does not know batch "
                            + batch
                            + ", whose register lies in "
                            + office.root().relativize(folder)
                            + ": it is an older copy.",
                    ledger.remedy()
                            + " Where nothing has the batch any more, move the register into intake:"
                            + " it is taken in anew.");
        }
    }

    private void copies() throws IOException {
        int sound = 0;
        for (Path copy : Backups.newestFirst(office)) {
            String where = "backups/" + copy.getFileName();
            if (sound == ENOUGH_COPIES) {
                return;
            }
            try (Ledger old = Ledger.open(copy)) {
                Records.Knows knows = ledger.records().knows(old.records());
                if (knows != Records.Knows.SAME) {
                    old.verify();
                    throw new Disagreement(where, knows, ledger.remedy());
                }
                sound++;
            } catch (Disagreement disagreement) {
                throw disagreement.said();
            } catch (LedgerException unusable) {
                // An older copy tells too, if less.
                noticed.add(where + " is no sound copy of the ledger. Delete it.");
            }
        }
    }

    /** Told apart from what is wrong with the copy itself. */
    private static final class Disagreement extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final transient LedgerException said;

        Disagreement(String where, Records.Knows knows, String remedy) {
            said =
                    new LedgerException(
                            knows == Records.Knows.NOTHING
                                    ? "The ledger ends before "
                                            + where
                                            + ", a copy of it: it is an older copy."
                                    : "The ledger is not as it was written: "
                                            + where
                                            + " ends otherwise.",
                            remedy);
        }

        LedgerException said() {
            return said;
        }
    }
}
