package paperbark.batch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import paperbark.disk.OtherThread;
import paperbark.disk.Staging;
import paperbark.finding.Finding;
import paperbark.output.CaseFile;
import paperbark.output.form.Forms;
import paperbark.output.paper.FiledPack;
import paperbark.output.paper.Pack;
import paperbark.output.paper.Packs;

/** Makes the packs of a batch on all cores, and lets each be written as it is done. */
final class Packing {
    private final Packs packs;
    private final Forms forms;
    private final Optional<FillableSheets> sheets;
    private final Progress progress;
    private final int workers;

    /**
     * Packs of a batch.
     *
     * @param packs makes them
     * @param templates the folder that it takes templates from
     */
    Packing(
            Packs packs,
            Optional<Path> templates,
            Optional<FillableSheets> sheets,
            Progress progress,
            int workers) {
        this.sheets = sheets;
        this.packs = packs;
        this.forms = new Forms(templates, packs.engine());
        this.progress = progress;
        this.workers = workers;
    }

    /** The packs in the order of the cases. Each goes to its file as soon as it is made. */
    List<FiledPack> make(List<CaseFile> cases, Staging staging) throws IOException {
        ExecutorService pool = Executors.newFixedThreadPool(workers);
        try {
            List<Future<FiledPack>> running =
                    cases.stream().map(file -> pool.submit(() -> pack(file, staging))).toList();
            List<FiledPack> done = new ArrayList<>();
            for (Future<FiledPack> pack : running) {
                done.add(made(pack));
                progress.at("packs", done.size(), cases.size());
            }
            staging.endWriting();
            return done;
        } finally {
            pool.shutdownNow();
        }
    }

    private static FiledPack made(Future<FiledPack> pack) throws IOException {
        try {
            return OtherThread.result(pack);
        } catch (UncheckedIOException disk) {
            throw disk.getCause();
        } catch (RuntimeException | Error e) {
            throw new IllegalStateException("A pack could not be made.", e);
        }
    }

    /** The buyers' forms go first, so that the cover can list what was noticed about them. */
    private FiledPack pack(CaseFile file, Staging staging) throws IOException {
        Forms.Filled filled = forms.fill(file);
        Pack pack = packs.make(filled.caseFile(), filled.papers());
        if (sheets.isPresent()) {
            sheets.get().write(pack, staging);
        }
        return pack.filed(staging.beginToWrite("packs/" + file.packFile(), pack.pdf()));
    }

    /** What was noticed about the template folder as a whole, and sheets that are missing. */
    List<Finding> findings() {
        return Stream.concat(
                        packs.findings().stream(),
                        sheets.stream().flatMap(s -> s.findings().stream()))
                .toList();
    }

    /** SHA-256 of every template and form used so far, by name. */
    Map<String, String> templates() {
        Map<String, String> used = new TreeMap<>(packs.templates());
        used.putAll(forms.used());
        return used;
    }
}
