package paperbark.batch;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import paperbark.output.CaseFile;
import paperbark.output.paper.Pack;
import paperbark.output.paper.Packs;

/** Makes the packs of a batch on all cores, and writes each as it is done. */
final class Packing {
    private final Packs packs;
    private final Progress progress;
    private final int workers;

    Packing(Optional<Path> templates, Progress progress, int workers) {
        this.packs = new Packs(templates);
        this.progress = progress;
        this.workers = workers;
    }

    /** The packs in the order of the cases. */
    List<Pack> make(List<CaseFile> cases, Staging staging) throws IOException {
        ExecutorService pool = Executors.newFixedThreadPool(workers);
        try {
            List<Future<Pack>> running =
                    cases.stream().map(file -> pool.submit(() -> packs.make(file))).toList();
            List<Pack> done = new ArrayList<>();
            for (int i = 0; i < running.size(); i++) {
                Pack pack = running.get(i).get();
                staging.write("packs/" + cases.get(i).packFile(), pack.pdf());
                done.add(pack);
                progress.at("packs", done.size(), cases.size());
            }
            return done;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("The run was interrupted.", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("A pack could not be made.", e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    /** SHA-256 of every template used so far, by name. */
    Map<String, String> templates() {
        return packs.templates();
    }
}
