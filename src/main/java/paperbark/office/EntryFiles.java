package paperbark.office;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import paperbark.batch.EntryFile;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerId;

/** Entries of one ledger, gathered from several places. */
final class EntryFiles {
    private final TreeMap<Long, Found> entries = new TreeMap<>();
    private Optional<LedgerId> id = Optional.empty();

    private record Found(EntryRecord entry, String where) {}

    /**
     * Adds an entry.
     *
     * @param where it was found, in words
     * @throws LedgerException when another place says otherwise
     */
    void add(EntryFile file, String where) {
        add(file.ledger(), file.entry(), where);
    }

    private void add(LedgerId ledger, EntryRecord entry, String where) {
        if (!id.orElse(ledger).equals(ledger)) {
            throw new LedgerException(
                    where + " belongs to another ledger than the others.",
                    "Move it to the office folder that it came from.");
        }
        id = Optional.of(ledger);
        Found before = entries.get(entry.seq());
        Optional<EntryRecord> both =
                before == null ? Optional.of(entry) : before.entry().merged(entry);
        entries.put(
                entry.seq(),
                new Found(
                        both.orElseThrow(() -> differ(entry.seq(), before.where(), where)), where));
    }

    private static LedgerException differ(long seq, String here, String there) {
        return new LedgerException(
                "Entry "
                        + seq
                        + " of the ledger is one thing in "
                        + here
                        + " and another in "
                        + there
                        + ".",
                "Move the one that does not belong here out of the office folder.");
    }

    /** Adds what a copy of the ledger holds; whether it could be used. */
    boolean addCopy(Path copy) {
        Optional<Copy> read = Copy.read(copy);
        read.ifPresent(
                c -> c.records().forEach(r -> add(c.id(), r, "backups/" + copy.getFileName())));
        return read.isPresent();
    }

    /**
     * Adds what the ledger itself holds and nothing else: it is an older copy, perhaps, but seals
     * tell whether its entries fit between the others.
     */
    void fillFrom(Path ledger) {
        Copy.read(ledger)
                .filter(c -> c.id().equals(id.orElse(c.id())))
                .ifPresent(
                        c -> {
                            id = Optional.of(c.id());
                            c.records()
                                    .forEach(
                                            r ->
                                                    entries.putIfAbsent(
                                                            r.seq(), new Found(r, "the ledger")));
                        });
    }

    /** What a sound ledger in a file holds. */
    private record Copy(LedgerId id, List<EntryRecord> records) {

        static Optional<Copy> read(Path file) {
            try (Ledger ledger = Ledger.open(file)) {
                ledger.verify();
                return Optional.of(new Copy(ledger.id(), ledger.records().all()));
            } catch (LedgerException unusable) {
                // An older copy may do.
                return Optional.empty();
            }
        }
    }

    /**
     * Who the ledger is.
     *
     * @throws LedgerException when nothing was found
     */
    LedgerId id() {
        return id.orElseThrow(
                () ->
                        new LedgerException(
                                "There is nothing to make a ledger from.",
                                "Where nothing was ever published, make a first one with ledger-new."));
    }

    /**
     * The entries from the first to the last.
     *
     * @throws LedgerException when one is missing
     */
    List<EntryRecord> inOrder() {
        long expected = 1;
        for (long seq : entries.keySet()) {
            if (seq != expected) {
                throw new LedgerException(
                        "Entry "
                                + expected
                                + " of the ledger is neither in packs, nor in advices, nor in a copy.",
                        "Bring back the batch folder, as it was, that was made just before "
                                + entries.get(seq).entry().name()
                                + ".");
            }
            expected++;
        }
        return entries.values().stream().map(Found::entry).toList();
    }
}
