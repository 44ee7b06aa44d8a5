package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import paperbark.output.journal.Booked;
import paperbark.output.journal.TakenBack;

/**
 * The sales in the journals of earlier batches that a batch books anew: of a job that comes again,
 * and of the job whose place it takes. They are taken back as they were booked.
 */
final class EarlierSales {
    private final Function<String, List<String>> batches;
    private final List<Path> folders;
    private final Map<Path, Map<String, Booked>> journals = new HashMap<>();

    /**
     * Looks for journals where a request publishes, and where the firm's batches are.
     *
     * @param batches the batches that had a job, the newest first
     */
    EarlierSales(Request request, Function<String, List<String>> batches) {
        this.batches = batches;
        this.folders =
                Stream.of(request.out(), request.firm().tables().resolveSibling("packs"))
                        .distinct()
                        .toList();
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
        List<String> own = batches.apply(job);
        last(job, own).ifPresent(all::add);
        for (String other : corrected) {
            // An earlier version of this job may have taken it back already.
            Set<String> both = new LinkedHashSet<>(own);
            both.addAll(batches.apply(other));
            last(other, List.copyOf(both)).ifPresent(all::add);
        }
        return all;
    }

    private Map<String, Booked> booked(Path journal) throws IOException {
        Map<String, Booked> all = journals.get(journal);
        if (all == null) {
            all = Booked.lastOfEach(Files.readAllBytes(journal));
            journals.put(journal, all);
        }
        return all;
    }

    private Optional<TakenBack> last(String job, List<String> newestFirst) throws IOException {
        for (String batch : newestFirst) {
            for (Path folder : folders) {
                Path journal = folder.resolve(batch).resolve("journal.csv");
                if (Files.isRegularFile(journal)) {
                    Booked entry = booked(journal).get(job);
                    if (entry != null) {
                        return entry.reversal()
                                ? Optional.empty()
                                : Optional.of(new TakenBack(batch, entry));
                    }
                    break;
                }
            }
        }
        return Optional.empty();
    }
}
