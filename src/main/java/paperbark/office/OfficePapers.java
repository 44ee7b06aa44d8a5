package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.disk.Disk;
import paperbark.disk.FolderChanges;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.output.WeekView;
import paperbark.output.calendar.CalendarDay;
import paperbark.output.calendar.CalendarFile;
import paperbark.output.index.PapersPage;
import paperbark.output.index.WeekPage;
import paperbark.output.mail.Draft;
import paperbark.output.mail.DraftFile;
import paperbark.output.paper.WeekSheet;
import paperbark.rules.Rulebook;
import paperbark.value.Email;

/**
 * Keeps what an office shows beside its batches. Its calendar, the page of its week and the list of
 * its papers are made anew from ledger, tables and batches whenever the ledger or a file of the
 * firm's changed or a day is over, so that they never tell other days than the newest batch; the
 * drafts of what leaves the house with them. What cannot be made costs nothing else.
 */
public final class OfficePapers {
    private final Office office;
    private final PhotoDesk photos;
    private Object shown = "";
    private List<String> looks = List.of();

    OfficePapers(Office office) {
        this.office = office;
        this.photos = new PhotoDesk(office);
    }

    /** What somebody should look at, because something could not be made. */
    List<String> looks() {
        return looks;
    }

    /** Brings up to date what is not. */
    void refresh(LocalDate today, Instant now, String version) {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            Object state =
                    List.of(today, ledger.records().lastSeal(), photos.print(now), firmsFiles());
            if (state.equals(shown)) {
                return;
            }
            shown = state;
            List<String> trouble = new ArrayList<>();
            List<Photos.Result> seen = new ArrayList<>();
            make(
                    "What is to be said of photos/",
                    () -> photos.look(ledger, today, now).ifPresent(seen::add),
                    trouble);
            Facts facts =
                    new Facts(office, ledger, seen, photos.filed(ledger), today, now, version);
            make("calendar.ics", facts::writeCalendar, trouble);
            make("week.html", facts::writeWeek, trouble);
            make(PapersPage.FILE, facts::writePapers, trouble);
            seen.forEach(result -> trouble.addAll(PhotoDesk.lines(result)));
            SendDesk.Making making =
                    new SendDesk.Making(today, now, version, false, doubtful(seen));
            make(
                    "send/",
                    () ->
                            drafts(office, ledger, making)
                                    .ifPresent(d -> trouble.addAll(d.trouble())),
                    trouble);
            looks = List.copyOf(trouble);
        } catch (LedgerException untrusted) {
            // Whoever works with the ledger is told; what was made last stays.
            return;
        }
    }

    /** Whether files are other ones is told by size and time, as at each look into the intake. */
    private List<Object> firmsFiles() {
        List<Object> all = new ArrayList<>();
        Stream.of(Optional.of(office.tables()), office.rules(), office.templates())
                .flatMap(Optional::stream)
                .forEach(
                        place -> {
                            try {
                                all.add(FolderChanges.stamps(place));
                            } catch (IOException gone) {
                                // Whoever reads them is told; once they are back they changed.
                                all.add(place);
                            }
                        });
        return all;
    }

    /** A piece of work. */
    private interface Making {
        void make() throws IOException;
    }

    private static void make(String file, Making making, List<String> trouble) {
        try {
            making.make();
        } catch (IOException | RuntimeException e) {
            trouble.add(
                    file
                            + " could not be made ("
                            + Optional.ofNullable(e.getMessage()).orElse(e.getClass().getName())
                            + "). What was there before stays; nothing else is touched.");
        }
    }

    /**
     * Makes everything anew, for a person who asks for it.
     *
     * @param now the moment, for people only
     * @return the files
     * @throws IOException when one cannot be written
     * @throws LedgerException when the ledger cannot be trusted
     */
    public static List<Path> makeAll(Office office, LocalDate today, Instant now, String version)
            throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            PhotoDesk photos = new PhotoDesk(office);
            List<Photos.Result> seen = photos.look(ledger, today, now).stream().toList();
            Facts facts =
                    new Facts(office, ledger, seen, photos.filed(ledger), today, now, version);
            facts.writeCalendar();
            facts.writeWeek();
            facts.writePapers();
            return List.of(
                    office.calendar(),
                    office.papersPage(),
                    office.week(".html"),
                    office.week(".pdf"),
                    office.week(".eml"));
        }
    }

    /**
     * Makes the drafts of what leaves the house anew, for a person who asks for it.
     *
     * @param now the moment, for the drafts' own dates
     * @param all whether drafts that a person took away are made again too
     * @return what came of it; empty where the firm's tables cannot be read
     * @throws IOException when the folder or a batch cannot be read or written
     * @throws LedgerException when the ledger cannot be trusted
     */
    public static Optional<Drafts> makeDrafts(
            Office office, LocalDate today, Instant now, String version, boolean all)
            throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            List<Photos.Result> seen =
                    new PhotoDesk(office).look(ledger, today, now).stream().toList();
            return drafts(
                    office, ledger, new SendDesk.Making(today, now, version, all, doubtful(seen)));
        }
    }

    private static Map<String, String> doubtful(List<Photos.Result> seen) {
        return seen.stream().findFirst().map(Photos.Result::doubtful).orElse(Map.of());
    }

    /**
     * What came of the drafts.
     *
     * @param files drafts that lie there now
     * @param trouble what could not be made, a sentence each
     */
    public record Drafts(List<Path> files, List<String> trouble) {
        /** Keeps the lists from being changed. */
        public Drafts {
            files = List.copyOf(files);
            trouble = List.copyOf(trouble);
        }
    }

    /** Nothing where the tables cannot be read: a register that waits for them tells why. */
    private static Optional<Drafts> drafts(Office office, Ledger ledger, SendDesk.Making making)
            throws IOException {
        Optional<FirmTables> tables = FirmTablesReader.read(office.tables()).result();
        return tables.isEmpty()
                ? Optional.empty()
                : Optional.of(SendDesk.renew(office, ledger, tables.get(), making));
    }

    /**
     * What the files are made of.
     *
     * @param seen what lies in {@code photos/}; empty where that folder is not used
     * @param filed what the office's registers say
     */
    private record Facts(
            Office office,
            Ledger ledger,
            List<Photos.Result> seen,
            FiledJobs filed,
            LocalDate today,
            Instant now,
            String version) {

        private Optional<FirmTables> tables() {
            return FirmTablesReader.read(office.tables()).result();
        }

        private List<CalendarDay> days(Optional<FirmTables> tables) throws IOException {
            return CalendarDays.of(office, ledger, tables, Rulebook.load(office.rules()), today);
        }

        void writeCalendar() throws IOException {
            Optional<FirmTables> tables = tables();
            CalendarFile.State state =
                    new CalendarFile.State(
                            ledger.id().id(),
                            (int) ledger.records().newestNumber(),
                            Instant.parse(
                                    ledger.records().newestAt().orElse(ledger.id().madeAt())));
            String title =
                    tables.map(FirmTables::firm).map(Firm::name).orElse("Office") + ", papers";
            replace(office.calendar(), CalendarFile.of(title, days(tables), state));
        }

        /** The page comes last: it tells that the others are there. */
        void writeWeek() throws IOException {
            Optional<FirmTables> tables = tables();
            WeekFacts.Jobs jobs =
                    new WeekFacts.Jobs(days(tables), filed, seen.stream().findFirst());
            WeekView view = WeekFacts.of(office, ledger, tables, jobs, today, version);
            byte[] sheet = sheet(view);
            String page = WeekPage.of(view);
            // A letter that went out cannot be made to forget.
            WeekView sent = view.withoutOwnersNumbers();
            boolean same = sent.equals(view);
            Optional<Email> firm = tables.map(FirmTables::firm).flatMap(Firm::email);
            Draft draft =
                    new Draft(
                            firm,
                            firm,
                            "The week of " + view.week() + ": " + view.inShort(),
                            same ? page : WeekPage.of(sent),
                            List.of(
                                    new Draft.Attachment(
                                            "week.pdf",
                                            "application/pdf",
                                            same ? sheet : sheet(sent))),
                            now);
            replace(office.week(".pdf"), sheet);
            replace(office.week(".eml"), DraftFile.of(draft));
            replace(office.week(".html"), page.getBytes(StandardCharsets.UTF_8));
        }

        /** The page comes last: it leads to the table. */
        void writePapers() throws IOException {
            PaperList papers = PaperList.of(office, ledger, today);
            Optional<byte[]> table = papers.table();
            if (table.isPresent()) {
                replace(office.root().resolve(PaperList.TABLE), table.get());
            }
            String page = PapersPage.of(papers.view(today, version));
            replace(office.papersPage(), page.getBytes(StandardCharsets.UTF_8));
        }

        private byte[] sheet(WeekView view) {
            return WeekSheet.of(office.templates(), view, today);
        }
    }

    /** Rewritten only when something changed: every look would else wake a sync client. */
    private static void replace(Path file, byte[] content) throws IOException {
        if (!Files.exists(file) || !Arrays.equals(Files.readAllBytes(file), content)) {
            Disk.replace(file, content);
        }
    }
}
