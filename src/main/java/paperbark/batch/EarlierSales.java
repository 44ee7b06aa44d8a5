package paperbark.batch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import paperbark.ledger.Income;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.output.journal.Booked;
import paperbark.output.journal.TakenBack;

/**
 * The sales that journals have booked and no later journal has taken back: those of jobs that come
 * again, whose place another job takes, or that are called off. They are taken back as they were
 * booked.
 */
final class EarlierSales {
    private static final String PACKS = "packs";

    private final Income income;
    private final List<Path> packs;
    private final List<Path> advices;
    private final Map<Path, Map<String, Booked>> journals = new HashMap<>();

    private EarlierSales(Ledger ledger, List<Path> packs, List<Path> advices) {
        this.income = ledger.income();
        this.packs = packs.stream().distinct().toList();
        this.advices = advices.stream().distinct().toList();
    }

    /** Looks where a request publishes, where the firm's batches are, and beside the ledger. */
    static EarlierSales of(Ledger ledger, Request request) {
        Path tables = request.firm().tables();
        LedgerPlace place = request.ledger().place().orElseThrow();
        return new EarlierSales(
                ledger,
                List.of(request.out(), tables.resolveSibling(PACKS)),
                List.of(AdviceFiles.beside(place), tables.resolveSibling(AdviceFiles.FOLDER)));
    }

    /** Looks beside the ledger. */
    static EarlierSales of(Ledger ledger, LedgerPlace place) {
        return new EarlierSales(
                ledger, List.of(place.beside(PACKS)), List.of(AdviceFiles.beside(place)));
    }

    /**
     * What is to be taken back.
     *
     * @param job number of the job that comes now
     * @param corrected numbers of other jobs whose place it takes
     * @throws IOException when a journal cannot be read
     */
    List<TakenBack> of(String job, Set<String> corrected) throws IOException {
        List<TakenBack> all = new ArrayList<>();
        last(job, income.entriesOfSale(job)).ifPresent(all::add);
        for (String other : corrected) {
            // An earlier version of this job may have taken it back already.
            last(other, income.entriesOfSale(job, other)).ifPresent(all::add);
        }
        return all;
    }

    /** The entry of a job that stands in its journals, where they are here. */
    Function<String, Optional<Booked>> booked() {
        return job -> {
            try {
                return of(job).flatMap(TakenBack::entry);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        };
    }

    /** What is to be taken back of a job, where its journal is here. */
    Optional<TakenBack> of(String job) throws IOException {
        return last(job, income.entriesOfSale(job)).filter(then -> then.entry().isPresent());
    }

    private Map<String, Booked> booked(Path journal) throws IOException {
        Map<String, Booked> all = journals.get(journal);
        if (all == null) {
            Map<String, Booked> byKey = new HashMap<>();
            Booked.lastOfEach(Files.readAllBytes(journal))
                    .forEach((job, entry) -> byKey.put(Keys.job(job), entry));
            journals.put(journal, byKey);
            all = byKey;
        }
        return all;
    }

    private Optional<TakenBack> last(String job, List<String> newestFirst) throws IOException {
        for (String entry : newestFirst) {
            if (!isHere(entry)) {
                // It may have taken back what an older journal booked, and booked it anew.
                return Optional.of(new TakenBack(entry, Optional.empty()));
            }
            Optional<Path> journal =
                    Stream.concat(
                                    packs.stream()
                                            .map(p -> p.resolve(entry).resolve("journal.csv")),
                                    advices.stream().map(a -> WithdrawnSales.journal(a, entry)))
                            .filter(Files::isRegularFile)
                            .findFirst();
            if (journal.isPresent()) {
                Booked booked = booked(journal.get()).get(Keys.job(job));
                if (booked != null) {
                    return booked.reversal()
                            ? Optional.empty()
                            : Optional.of(new TakenBack(entry, Optional.of(booked)));
                }
            }
        }
        return Optional.empty();
    }

    /** Whether there is the folder of a batch, or the file of a withdrawal. */
    private boolean isHere(String entry) {
        return packs.stream().anyMatch(p -> Files.isDirectory(p.resolve(entry)))
                || advices.stream().anyMatch(a -> Files.exists(AdviceFiles.file(a, entry)));
    }
}
