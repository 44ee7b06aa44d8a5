package paperbark.office;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import paperbark.batch.EntryFile;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.Proof;

/** Proves that an office's ledger is the one that its batches were entered into. */
final class LedgerProof {
    private LedgerProof() {}

    /**
     * What is wrong with the ledger; empty when it can be trusted.
     *
     * @throws paperbark.ledger.LedgerBusyException when another program writes in it, which says
     *     nothing about the ledger
     */
    static Optional<String> trouble(Office office) throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            prove(office, ledger, new Proof());
            return Optional.empty();
        } catch (LedgerException e) {
            return Optional.of(e.getMessage());
        }
    }

    /**
     * Proves rows and seals, and that no batch is published that the ledger does not know: then an
     * older copy was put in its place, and would let everything since be claimed again.
     *
     * @param proof what is proved already
     * @throws LedgerException naming what is not
     */
    static void prove(Office office, Ledger ledger, Proof proof) throws IOException {
        proof.of(ledger);
        for (Path batch : Office.list(office.packs())) {
            String name = batch.getFileName().toString();
            if (!Office.isHidden(batch)
                    && !ledger.knows(name)
                    && EntryFile.ofBatch(batch).isPresent()) {
                throw new LedgerException(
                        "The ledger does not know packs/" + name + ": it is an older copy.",
                        ledger.remedy());
            }
        }
    }
}
