package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import paperbark.batch.OutputFolder;
import paperbark.disk.Disk;
import paperbark.ledger.Batches;
import paperbark.ledger.Ledger;
import paperbark.ledger.PaperState;
import paperbark.ledger.ScanBook;
import paperbark.output.index.OfficePage;
import paperbark.output.index.OfficeView;
import paperbark.value.Days;
import paperbark.value.SchemeName;

/** Writes the page in the office folder that shows how things stand. */
final class StatusPage {
    private static final int LISTED = 20;

    private StatusPage() {}

    /**
     * What is going on.
     *
     * @param waiting files in the intake with the reason why they wait
     * @param working the register being worked on
     * @param troubles what keeps work from being done, and what to do
     * @param looks what somebody should look at
     * @param asksLedger whether the ledger can be asked for the batches
     */
    record State(
            Map<Path, String> waiting,
            Optional<Path> working,
            List<String> troubles,
            List<String> looks,
            boolean asksLedger) {}

    /** Writes the page anew. */
    static void write(Office office, Attendant.World world, State state) throws IOException {
        OfficeView view =
                new OfficeView(
                        Days.show(world.today().get()),
                        world.version(),
                        state.troubles(),
                        state.looks(),
                        state.asksLedger() ? Optional.of(seal(office)) : Optional.empty(),
                        state.working().map(Path::toString),
                        state.waiting().entrySet().stream()
                                .sorted(Map.Entry.comparingByKey())
                                .map(
                                        e ->
                                                new OfficeView.Waiting(
                                                        e.getKey().getFileName().toString(),
                                                        e.getValue()))
                                .toList(),
                        returned(office),
                        state.asksLedger() ? batches(office) : List.of(),
                        state.asksLedger() ? lodging(office) : Optional.empty());
        byte[] page = OfficePage.of(view).getBytes(StandardCharsets.UTF_8);
        // Rewritten only when something changed: every look would else wake a sync client.
        if (!Files.exists(office.status())
                || !Arrays.equals(Files.readAllBytes(office.status()), page)) {
            Disk.replace(office.status(), page);
        }
    }

    private static List<String> returned(Office office) throws IOException {
        return Office.list(office.returned()).stream()
                .filter(f -> Files.isDirectory(f) && !Office.isHidden(f))
                .map(f -> f.getFileName().toString())
                .sorted(Comparator.reverseOrder())
                .limit(LISTED)
                .toList();
    }

    private static String seal(Office office) throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            return ledger.records().lastSeal();
        }
    }

    private static List<OfficeView.Line> batches(Office office) throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            return ledger
                    .batches()
                    .newest(LISTED, OutputFolder.known(office.packs()).orElse(""))
                    .stream()
                    .map(batch -> line(office, batch))
                    .toList();
        }
    }

    /** What says of a claim that it is ready to lodge; {@code owed} asks the ledger the same. */
    private static Optional<OfficeView.Lodging> lodging(Office office) throws IOException {
        List<PaperState> open = new ArrayList<>();
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ScanBook book = new ScanBook(ledger);
            if (!book.isUsed()) {
                return Optional.empty();
            }
            for (SchemeName scheme : SchemeName.values()) {
                open.addAll(book.ofOpenClaims(scheme));
            }
        }
        List<PaperState> awaited = open.stream().filter(p -> !p.step().isBack()).toList();
        return Optional.of(
                new OfficeView.Lodging(
                        open.size() - awaited.size(),
                        awaited.size(),
                        awaited.stream()
                                .limit(LISTED)
                                .map(
                                        p ->
                                                new OfficeView.Awaited(
                                                        p.job(),
                                                        p.kind().toUpperCase(Locale.ROOT)
                                                                + " assignment",
                                                        p.step().awaited(),
                                                        p.batch()))
                                .toList(),
                        Office.list(office.toPlace()).size()));
    }

    /** The page of a batch goes when one of its jobs is forgotten. */
    private static OfficeView.Line line(Office office, Batches.BatchState batch) {
        String page = "index.html";
        boolean there = Files.exists(office.packs().resolve(batch.name()).resolve(page));
        return new OfficeView.Line(
                batch.name(),
                there ? page : "",
                batch.register(),
                Days.show(batch.day()),
                batch.jobs(),
                batch.held());
    }
}
