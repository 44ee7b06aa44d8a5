package paperbark.office;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.disk.FolderChanges;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.Lodging;
import paperbark.output.calendar.CalendarDay;
import paperbark.output.index.PapersPage;

/**
 * Keeps what an office shows beside its batches. Its calendar, the page of its week and the list of
 * its papers are made anew from ledger, tables and batches whenever the ledger or a file of the
 * firm's changed or a day is over, so that they never tell other days than the newest batch; the
 * drafts of what leaves the house with them. What cannot be made costs nothing else.
 */
public final class OfficePapers {
    private final Office office;
    private final PhotoDesk photos;
    private final KnownDays days;
    private Object shown = "";
    private List<String> looks = List.of();

    OfficePapers(Office office) {
        this.office = office;
        this.photos = new PhotoDesk(office);
        this.days = new KnownDays(office);
    }

    /** What somebody should look at, because something could not be made. */
    List<String> looks() {
        return looks;
    }

    /**
     * Brings up to date what is not.
     *
     * @return how the assignments stand, where something was made anew and it could be asked
     */
    Optional<LodgingThen> refresh(LocalDate today, Instant now, String version) {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            String seal = ledger.records().lastSeal();
            Object firms = firmsFiles();
            Object state = List.of(today, seal, photos.print(now), firms);
            if (state.equals(shown)) {
                return Optional.empty();
            }
            shown = state;
            photos.readAnewAfter(firms);
            LedgerFacts facts = new LedgerFacts(ledger, today);
            List<String> trouble = new ArrayList<>();
            List<Photos.Result> seen = new ArrayList<>();
            make(
                    "What is to be said of photos/",
                    () -> photos.look(facts, now).ifPresent(seen::add),
                    trouble);
            OfficePages pages =
                    new OfficePages(office, facts, days, seen, photos.filed(), now, version);
            make(
                    "calendar.ics and week.html",
                    () -> {
                        Optional<FirmTables> tables = pages.tables();
                        List<CalendarDay> known = pages.days(tables);
                        make("calendar.ics", () -> pages.writeCalendar(tables, known), trouble);
                        make("week.html", () -> pages.writeWeek(tables, known), trouble);
                    },
                    trouble);
            make(PapersPage.FILE, pages::writePapers, trouble);
            seen.forEach(result -> trouble.addAll(PhotoDesk.lines(result)));
            SendDesk.Making making = new SendDesk.Making(now, version, false, doubtful(seen));
            make(
                    "send/",
                    () -> drafts(office, facts, making).ifPresent(d -> trouble.addAll(d.trouble())),
                    trouble);
            looks = List.copyOf(trouble);
            return lodging(facts, seal);
        } catch (LedgerException untrusted) {
            // Whoever works with the ledger is told; what was made last stays.
            return Optional.empty();
        }
    }

    /** Whoever shows it and is not told asks the ledger, and fails of the same. */
    private static Optional<LodgingThen> lodging(LedgerFacts facts, String seal) {
        try {
            return Optional.of(new LodgingThen(facts.today(), seal, facts.lodging()));
        } catch (RuntimeException unanswered) {
            return Optional.empty();
        }
    }

    /**
     * How the assignments stood on a day, with a ledger that ended so.
     *
     * @param lodging empty where no papers are scanned
     */
    record LodgingThen(LocalDate today, String seal, Optional<Lodging> lodging) {}

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
                            + Failed.because(e)
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
            LedgerFacts facts = new LedgerFacts(ledger, today);
            PhotoDesk photos = new PhotoDesk(office);
            List<Photos.Result> seen = photos.look(facts, now).stream().toList();
            OfficePages pages =
                    new OfficePages(
                            office,
                            facts,
                            new KnownDays(office),
                            seen,
                            photos.filed(),
                            now,
                            version);
            Optional<FirmTables> tables = pages.tables();
            List<CalendarDay> days = pages.days(tables);
            pages.writeCalendar(tables, days);
            pages.writeWeek(tables, days);
            pages.writePapers();
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
            LedgerFacts facts = new LedgerFacts(ledger, today);
            List<Photos.Result> seen = new PhotoDesk(office).look(facts, now).stream().toList();
            return drafts(office, facts, new SendDesk.Making(now, version, all, doubtful(seen)));
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
    private static Optional<Drafts> drafts(Office office, LedgerFacts facts, SendDesk.Making making)
            throws IOException {
        Optional<FirmTables> tables = FirmTablesReader.read(office.tables()).result();
        return tables.isEmpty()
                ? Optional.empty()
                : Optional.of(SendDesk.renew(office, facts, tables.get(), making));
    }
}
