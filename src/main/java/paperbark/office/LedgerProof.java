package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
    private final List<String> noticed = new ArrayList<>();

    private LedgerProof(Office office, Ledger ledger) {
        this.office = office;
        this.ledger = ledger;
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
            List<String> noticed = new ArrayList<>(prove(office, ledger, proof));
            noticed.addAll(new LostBatches(office, ledger).noticed());
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
            noticed.addAll(prove(office, ledger, new Proof()));
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
     * @return what somebody should look at, in a sentence each
     * @throws LedgerException naming what is not
     */
    static List<String> prove(Office office, Ledger ledger, Proof proof) throws IOException {
        proof.of(ledger);
        if (office.ledger() instanceof LedgerPlace.OnServer) {
            ownPlace(office);
        }
        LedgerProof asked = new LedgerProof(office, ledger);
        Witnesses witnesses = Witnesses.of(office);
        asked.noticed.addAll(witnesses.batches().noticed());
        for (BatchFolders.Found batch : witnesses.batches().all()) {
            asked.entry(batch.entry(), "packs/" + batch.folder().getFileName());
        }
        for (Path advice : witnesses.advices()) {
            asked.advice(advice);
        }
        for (Path filed : witnesses.filed()) {
            asked.filed(filed);
        }
        asked.copies();
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

    private void advice(Path file) throws IOException {
        String where = AdviceFiles.FOLDER + "/" + file.getFileName();
        Optional<EntryFile> entry = EntryFile.read(file);
        if (entry.isPresent()) {
            entry(entry.get(), where);
        } else {
            noticed.add(where + " cannot be read. Bring it back from a backup, or delete it.");
        }
    }

    private void entry(EntryFile told, String where) {
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
            default -> {}
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
