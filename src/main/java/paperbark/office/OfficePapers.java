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
import java.util.Optional;
import paperbark.disk.Disk;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.output.WeekView;
import paperbark.output.calendar.CalendarDay;
import paperbark.output.calendar.CalendarFile;
import paperbark.output.index.WeekPage;
import paperbark.output.mail.Draft;
import paperbark.output.mail.DraftFile;
import paperbark.output.paper.WeekSheet;
import paperbark.rules.Rulebook;
import paperbark.value.Email;

/**
 * Keeps what an office shows beside its batches. Its calendar and the page of its week are made
 * anew from ledger, tables and batches whenever the ledger changed or a day is over, so that they
 * never tell other days than the newest batch. What cannot be made costs nothing else.
 */
public final class OfficePapers {
    private final Office office;
    private final PhotoDesk photos;
    private String shown = "";
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
        List<String> trouble = new ArrayList<>();
        try (Ledger ledger = Ledger.open(office.ledger())) {
            String state = today + " " + ledger.records().lastSeal() + " " + photos.print(now);
            if (state.equals(shown)) {
                return;
            }
            shown = state;
            List<Photos.Result> seen = new ArrayList<>();
            make(
                    "What is to be said of photos/",
                    () -> photos.look(ledger, today, now).ifPresent(seen::add),
                    trouble);
            Facts facts =
                    new Facts(office, ledger, seen, photos.filed(ledger), today, now, version);
            make("calendar.ics", facts::writeCalendar, trouble);
            make("week.html", facts::writeWeek, trouble);
            seen.forEach(result -> trouble.addAll(PhotoDesk.lines(result)));
        } catch (LedgerException untrusted) {
            // Whoever works with the ledger is told; the last calendar stays.
            return;
        }
        looks = List.copyOf(trouble);
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
            return List.of(
                    office.calendar(),
                    office.week(".html"),
                    office.week(".pdf"),
                    office.week(".eml"));
        }
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
