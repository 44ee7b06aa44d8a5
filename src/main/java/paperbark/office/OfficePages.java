package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import paperbark.disk.Disk;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.ledger.Ledger;
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
 * The pages of an office beside its batches, made of what the ledger says on a day.
 *
 * @param facts what the ledger says on the day
 * @param known the last days that published batches knew
 * @param seen what lies in {@code photos/}; empty where that folder is not used
 * @param filed what the office's registers say
 */
record OfficePages(
        Office office,
        LedgerFacts facts,
        KnownDays known,
        List<Photos.Result> seen,
        FiledJobs filed,
        Instant now,
        String version) {

    Optional<FirmTables> tables() {
        return FirmTablesReader.read(office.tables()).result();
    }

    List<CalendarDay> days(Optional<FirmTables> tables) throws IOException {
        return CalendarDays.of(facts, known, tables, Rulebook.load(office.rules()));
    }

    void writeCalendar(Optional<FirmTables> tables, List<CalendarDay> days) throws IOException {
        Ledger ledger = facts.ledger();
        CalendarFile.State state =
                new CalendarFile.State(
                        ledger.id().id(),
                        (int) ledger.records().newestNumber(),
                        Instant.parse(ledger.records().newestAt().orElse(ledger.id().madeAt())));
        String title = tables.map(FirmTables::firm).map(Firm::name).orElse("Office") + ", papers";
        replace(
                office.calendar(),
                CalendarFile.of(title, NearestDays.of(days, facts.today()), state));
    }

    /** The page comes last: it tells that the others are there. */
    void writeWeek(Optional<FirmTables> tables, List<CalendarDay> days) throws IOException {
        WeekFacts.Jobs jobs = new WeekFacts.Jobs(days, filed, seen.stream().findFirst());
        WeekView view = WeekFacts.of(office, facts, tables, jobs, version);
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
                                        "week.pdf", "application/pdf", same ? sheet : sheet(sent))),
                        now);
        replace(office.week(".pdf"), sheet);
        replace(office.week(".eml"), DraftFile.of(draft));
        replace(office.week(".html"), page.getBytes(StandardCharsets.UTF_8));
    }

    /** The page comes last: it leads to the table. */
    void writePapers() throws IOException {
        PaperList papers = PaperList.of(office, facts);
        Optional<byte[]> table = papers.table();
        if (table.isPresent()) {
            replace(office.root().resolve(PaperList.TABLE), table.get());
        }
        String page = PapersPage.of(papers.view(facts.today(), version));
        replace(office.papersPage(), page.getBytes(StandardCharsets.UTF_8));
    }

    private byte[] sheet(WeekView view) {
        return WeekSheet.of(office.templates(), view, facts.today());
    }

    /** Rewritten only when something changed: every look would else wake a sync client. */
    private static void replace(Path file, byte[] content) throws IOException {
        if (!Files.exists(file) || !Arrays.equals(Files.readAllBytes(file), content)) {
            Disk.replace(file, content);
        }
    }
}
