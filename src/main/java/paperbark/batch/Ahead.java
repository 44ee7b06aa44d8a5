package paperbark.batch;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import paperbark.output.paper.CommonTemplates;
import paperbark.output.paper.Packs;
import paperbark.output.workbook.SummaryWorkbook;

/**
 * What every batch needs whatever its register holds. It is made ready while the register is read,
 * which keeps but one processor busy.
 */
final class Ahead implements AutoCloseable {
    private static final AtomicBoolean IS_AWAKE = new AtomicBoolean();

    private final Workers worker;
    private final Early<Packs> packs;

    private Ahead(Workers worker, Early<Packs> packs) {
        this.worker = worker;
        this.packs = packs;
    }

    /**
     * Begins with it where a processor has nothing to do.
     *
     * @param templates the firm's own
     * @param threads how much is done at a time, at least 1
     */
    static Ahead begin(Optional<Path> templates, int threads) {
        Workers worker = Workers.beside(threads);
        if (!IS_AWAKE.getAndSet(true)) {
            // The register waits for the same library; what keeps it from a start is told later.
            worker.begin(SummaryWorkbook::wake);
        }
        return new Ahead(
                worker,
                new Early<>(
                        () -> new Packs(templates), worker.begin(() -> read(templates)).begun()));
    }

    private static Packs read(Optional<Path> templates) {
        Packs packs = new Packs(templates);
        CommonTemplates.readAhead(packs.engine());
        return packs;
    }

    /** Packs, most of whose templates are read where there was time to. */
    Early<Packs> packs() {
        return packs;
    }

    @Override
    public void close() {
        worker.close();
    }
}
