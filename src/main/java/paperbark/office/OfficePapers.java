package paperbark.office;

import java.io.IOException;
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
import paperbark.output.calendar.CalendarDay;
import paperbark.output.calendar.CalendarFile;
import paperbark.rules.Rulebook;

/**
 * Keeps what an office shows beside its batches: its calendar. It is made anew from ledger, tables
 * and batches whenever one of the first changed or a day is over. What cannot be made costs nothing
 * else.
 */
public final class OfficePapers {
    private final Office office;
    private String shown = "";
    private List<String> looks = List.of();

    OfficePapers(Office office) {
        this.office = office;
    }

    /** What somebody should look at, because something could not be made. */
    List<String> looks() {
        return looks;
    }

    /** Brings up to date what is not. */
    void refresh(LocalDate today) {
        List<String> trouble = new ArrayList<>();
        try (Ledger ledger = Ledger.open(office.ledger())) {
            String now = today + " " + ledger.records().lastSeal();
            if (now.equals(shown)) {
                return;
            }
            shown = now;
            make("calendar.ics", () -> writeCalendar(office, ledger, today), trouble);
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
     * @return the files
     * @throws IOException when one cannot be written
     * @throws LedgerException when the ledger cannot be trusted
     */
    public static List<Path> makeAll(Office office, LocalDate today) throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            writeCalendar(office, ledger, today);
            return List.of(office.calendar());
        }
    }

    private static void writeCalendar(Office office, Ledger ledger, LocalDate today)
            throws IOException {
        Optional<FirmTables> tables = FirmTablesReader.read(office.tables()).result();
        List<CalendarDay> days =
                CalendarDays.of(office, ledger, tables, Rulebook.load(office.rules()), today);
        CalendarFile.State state =
                new CalendarFile.State(
                        ledger.id().id(),
                        (int) ledger.records().newestNumber(),
                        Instant.parse(ledger.records().newestAt().orElse(ledger.id().madeAt())));
        String title = tables.map(FirmTables::firm).map(Firm::name).orElse("Office") + ", papers";
        replace(office.calendar(), CalendarFile.of(title, days, state));
    }

    /** Rewritten only when something changed: every look would else wake a sync client. */
    private static void replace(Path file, byte[] content) throws IOException {
        if (!Files.exists(file) || !Arrays.equals(Files.readAllBytes(file), content)) {
            Disk.replace(file, content);
        }
    }
}
