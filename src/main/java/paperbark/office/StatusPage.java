package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.batch.OutputFolder;
import paperbark.disk.Disk;
import paperbark.ledger.Batches;
import paperbark.ledger.Ledger;
import paperbark.ledger.Lodging;
import paperbark.output.index.OfficePage;
import paperbark.output.index.OfficeView;
import paperbark.value.Days;

/** Writes the page in the office folder that shows how things stand. */
final class StatusPage {
    private static final int LISTED = 20;
    // A page that changes oftener than that wakes sync clients and readers for nothing.
    private static final Duration OFTENEST = Duration.ofSeconds(3);

    private final Office office;
    private final Attendant.World world;
    private Optional<OfficeView> shown = Optional.empty();
    private Instant progressed = Instant.MIN;
    private String lodgingOf = "";
    private Optional<OfficeView.Lodging> lodging = Optional.empty();

    StatusPage(Office office, Attendant.World world) {
        this.office = office;
        this.world = world;
    }

    /**
     * What is going on.
     *
     * @param waiting files in the intake with the reason why they wait
     * @param working the register being worked on
     * @param troubles what keeps work from being done, and what to do
     * @param looks what somebody should look at
     * @param asksLedger whether the ledger can be asked for the batches
     * @param attended whether somebody goes on attending the folder
     */
    record State(
            Map<Path, String> waiting,
            Optional<Path> working,
            List<String> troubles,
            List<String> looks,
            boolean asksLedger,
            boolean attended) {}

    /** Takes how the assignments stand from whoever just asked, so that it is not asked again. */
    synchronized void knows(OfficePapers.LodgingThen then) {
        lodging = then.lodging().map(StatusPage::shown);
        lodgingOf = asked(then.today(), then.seal());
    }

    private static String asked(LocalDate today, String seal) {
        return today + " " + seal;
    }

    /** Writes the page anew. */
    synchronized void write(State state) throws IOException {
        OfficeView view =
                new OfficeView(
                        Days.show(world.today().get()),
                        world.version(),
                        state.attended(),
                        beside(),
                        state.troubles(),
                        state.looks(),
                        state.asksLedger() ? Optional.of(seal()) : Optional.empty(),
                        state.working().map(Path::toString),
                        Optional.empty(),
                        state.waiting().entrySet().stream()
                                .sorted(Map.Entry.comparingByKey())
                                .map(
                                        e ->
                                                new OfficeView.Waiting(
                                                        e.getKey().getFileName().toString(),
                                                        e.getValue()))
                                .toList(),
                        new OpenReturns(office)
                                .names(state.asksLedger()).stream().limit(LISTED).toList(),
                        state.asksLedger() ? batches() : List.of(),
                        state.asksLedger() ? lodging() : Optional.empty());
        shown = Optional.of(view);
        progressed = Instant.MIN;
        put(view);
    }

    /**
     * Tells how far the register is that is being worked on. A page that cannot be written then
     * does not matter: the next one is written soon.
     *
     * @param what in words, e.g. {@code packs}
     */
    synchronized void progress(String what, int done, int of) {
        Instant now = world.now().get();
        if (shown.flatMap(OfficeView::working).isEmpty()
                || now.isBefore(progressed.equals(Instant.MIN) ? now : progressed.plus(OFTENEST))) {
            return;
        }
        progressed = now;
        try {
            put(shown.get().at(done + " of " + of + " " + what));
        } catch (IOException | RuntimeException again) {
            return;
        }
    }

    private void put(OfficeView view) throws IOException {
        byte[] page = OfficePage.of(view).getBytes(StandardCharsets.UTF_8);
        // Rewritten only when something changed: every look would else wake a sync client.
        if (!Files.exists(office.status())
                || !Arrays.equals(Files.readAllBytes(office.status()), page)) {
            Disk.replace(office.status(), page);
        }
    }

    private OfficeView.Beside beside() {
        return new OfficeView.Beside(
                Files.isRegularFile(office.week(".html")),
                Files.isRegularFile(office.send().resolve(SendDesk.PAGE)),
                Files.isRegularFile(office.calendar()),
                Files.isRegularFile(office.papersPage()),
                Files.isRegularFile(office.root().resolve(OfficeView.MANUAL)));
    }

    private String seal() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            return ledger.records().lastSeal();
        }
    }

    private List<OfficeView.Line> batches() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            return ledger
                    .batches()
                    .newest(LISTED, OutputFolder.known(office.packs()).orElse(""))
                    .stream()
                    .map(this::line)
                    .toList();
        }
    }

    private Optional<OfficeView.Lodging> lodging() throws IOException {
        int toPlace = Office.list(office.toPlace()).size();
        try (Ledger ledger = Ledger.open(office.ledger())) {
            LocalDate today = world.today().get();
            String asked = asked(today, ledger.records().lastSeal());
            // All claims are read for it: once an entry and a day, and not at every look.
            if (!asked.equals(lodgingOf)) {
                lodging = Lodging.of(ledger, ledger.claims(today), today).map(StatusPage::shown);
                lodgingOf = asked;
            }
        }
        return lodging.map(l -> l.with(toPlace));
    }

    private static OfficeView.Lodging shown(Lodging lodging) {
        return new OfficeView.Lodging(
                lodging.ready().size(),
                lodging.awaited().size(),
                lodging.awaited().stream().limit(LISTED).map(StatusPage::awaited).toList(),
                lodging.tooLate().size(),
                0);
    }

    private static OfficeView.Awaited awaited(Lodging.Assigned assigned) {
        return new OfficeView.Awaited(
                assigned.paper().job(),
                assigned.name(),
                assigned.paper().awaited(),
                assigned.paper().batch());
    }

    /** The page of a batch goes when one of its jobs is forgotten. */
    private OfficeView.Line line(Batches.BatchState batch) {
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
