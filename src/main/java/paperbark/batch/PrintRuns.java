package paperbark.batch;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.disk.Staging;
import paperbark.output.BatchView;
import paperbark.output.PrintRunFiles;
import paperbark.output.RunFile;
import paperbark.output.paper.PrintRun;
import paperbark.output.paper.RunPack;
import paperbark.output.paper.RunSheet;

/** The print run of a batch and, on request, one for each crew and day. */
final class PrintRuns {
    private final BatchView view;
    private final Request request;
    private final Staging staging;
    private final Optional<String> seal;
    private final List<Begun> all = new ArrayList<>();

    /**
     * One file.
     *
     * @param wanted whether it is listed where it could not be made too
     */
    private record Begun(RunFile file, boolean wanted, Early<Path> writing) {}

    private PrintRuns(BatchView view, Request request, Staging staging, Optional<String> seal) {
        this.view = view;
        this.request = request;
        this.staging = staging;
        this.seal = seal;
    }

    /**
     * Begins to write them.
     *
     * @param order of the packs
     * @param seal of the ledger before the batch
     */
    static PrintRuns begin(
            RunOrder order,
            BatchView view,
            Request request,
            Staging staging,
            Optional<String> seal,
            Workers workers) {
        PrintRuns runs = new PrintRuns(view, request, staging, seal);
        List<RunPack> packs = order.all();
        List<RunFile> files = PrintRunFiles.of(packs.size());
        for (int i = 0; i < files.size(); i++) {
            RunFile file = files.get(i);
            List<RunPack> part = PrintRunFiles.part(packs, i);
            runs.all.add(
                    new Begun(
                            file,
                            true,
                            workers.begin(() -> runs.write(file, part, Optional.empty()))));
        }
        if (request.extras().byCrew()) {
            for (RunOrder.Part part : order.byCrewAndDay()) {
                runs.all.add(new Begun(part.file(), false, workers.begin(() -> runs.write(part))));
            }
        }
        return runs;
    }

    /** What there is to print unless one cannot be made. */
    List<RunFile> likely() {
        return all.stream().map(Begun::file).toList();
    }

    /** What there is to print, once all are written. */
    List<RunFile> end(SideProducts beside) throws IOException {
        List<RunFile> files = new ArrayList<>();
        for (Begun run : all) {
            Optional<Path> written = beside.make(run.file().file(), run.writing()::get);
            if (run.wanted() || written.isPresent()) {
                files.add(run.file());
            }
        }
        return files;
    }

    private Path write(RunOrder.Part part) throws IOException {
        Optional<byte[]> front =
                part.held()
                        ? Optional.empty()
                        : Optional.of(
                                RunSheet.of(request.firm().templates(), part.title(), part.jobs()));
        return write(part.file(), part.packs(), front);
    }

    private Path write(RunFile file, List<RunPack> packs, Optional<byte[]> front)
            throws IOException {
        return staging.write(
                file.file(), out -> PrintRun.write(packs, front, seal, view.info(), out));
    }
}
