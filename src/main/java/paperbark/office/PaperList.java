package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Lodging;
import paperbark.ledger.PaperState;
import paperbark.ledger.ScanBook;
import paperbark.output.PaperKind;
import paperbark.output.index.PapersView;
import paperbark.output.table.SafeCsv;
import paperbark.value.Days;

/**
 * Every paper of an office that people sign and that still counts, with how it stands: the one list
 * that the page and the table of papers are made of.
 */
final class PaperList {
    /** Name of the table in an office folder. */
    static final String TABLE = "papers.csv";

    // A page for the screen; all lines are in the table.
    private static final int SHOWN = 300;
    private static final int PILES_SHOWN = 12;
    private static final List<String> HEADINGS =
            List.of(
                    "Job",
                    "Paper",
                    "Version",
                    "Batch",
                    "Printed on",
                    "How it stands",
                    "Pages back",
                    "Last page on",
                    "Claim",
                    "Lodge by",
                    "Claim stands",
                    "Ready to lodge",
                    "File");

    // Common practice, no source: what was signed long before is in binders.
    private static final int BEFORE_DAYS = 60;

    // Common practice, no source: what is older than the time that a claim may be lodged in is
    // looked for in the job's own folder.
    private static final int LISTED_YEARS = 1;

    private final Office office;
    private final boolean used;
    private final List<Line> lines;

    /** What is to be done with a paper, in the order of the page. */
    private enum Part {
        AWAITED(
                "awaited",
                "Not back",
                "Papers that are to come back signed, or to come again: the earliest last day first."),
        READY(
                "ready",
                "Claims ready to lodge",
                "Their assignment is back with all its pages, and still counts."),
        TOO_LATE("too-late", "Past their last day", Lodging.WHEN_TOO_LATE),
        DONE(
                "done",
                "Nothing to do",
                "Papers that are back, those whose claim is lodged, and those printed more than "
                        + BEFORE_DAYS
                        + " days before papers were first scanned here.");

        private final String anchor;
        private final String title;
        private final String note;

        Part(String anchor, String title, String note) {
            this.anchor = anchor;
            this.title = title;
            this.note = note;
        }
    }

    /**
     * A paper and its claim.
     *
     * @param claim the claim that it assigns; empty for another paper, and before there is one
     */
    private record Line(PaperState paper, PaperKind kind, Optional<ClaimState> claim, Part part) {
        /** What is done is told with the newest first, whenever its claim was to be lodged. */
        private LocalDate lastDay() {
            return part == Part.DONE
                    ? LocalDate.MAX
                    : claim.flatMap(ClaimState::lodgeBy).orElse(LocalDate.MAX);
        }
    }

    private PaperList(Office office, boolean used, List<Line> lines) {
        this.office = office;
        this.used = used;
        this.lines = lines;
    }

    /** The list as things stand; empty where no papers are scanned. */
    static PaperList of(Office office, LedgerFacts facts) {
        ScanBook book = new ScanBook(facts.ledger());
        Optional<Lodging> lodging = facts.lodging();
        if (lodging.isEmpty()) {
            return new PaperList(office, false, List.of());
        }
        Map<String, PaperKind> kinds = new HashMap<>();
        PaperKind.values().stream()
                .filter(PaperKind::isSigned)
                .forEach(kind -> kinds.put(kind.folder(), kind));
        Map<String, ClaimState> byPaper = new HashMap<>();
        facts.claims().stream()
                .filter(ClaimState::active)
                .forEach(c -> byPaper.put(c.job() + " " + c.scheme().key(), c));
        Set<Long> ready = new HashSet<>();
        lodging.get().ready().forEach(a -> ready.add(a.claim().id()));
        Set<Long> tooLate = new HashSet<>();
        lodging.get().tooLate().forEach(c -> tooLate.add(c.id()));
        LocalDate since = book.firstDay().orElse(facts.today()).minusDays(BEFORE_DAYS);
        List<Line> lines = new ArrayList<>();
        for (PaperState paper : papers(book, kinds.keySet(), facts)) {
            Optional<ClaimState> claim =
                    Optional.ofNullable(byPaper.get(paper.job() + " " + paper.kind()));
            Part part =
                    claim.filter(c -> ready.contains(c.id())).isPresent()
                            ? Part.READY
                            : claim.filter(c -> tooLate.contains(c.id())).isPresent()
                                    ? Part.TOO_LATE
                                    : isDone(paper, claim, since) ? Part.DONE : Part.AWAITED;
            lines.add(new Line(paper, kinds.get(paper.kind()), claim, part));
        }
        lines.sort(
                Comparator.comparing(Line::part)
                        .thenComparing(Line::lastDay)
                        .thenComparing(
                                line -> line.paper().printedOn(), Comparator.reverseOrder()));
        return new PaperList(office, true, lines);
    }

    /** Those of the last year, and older ones whose claim is still to be lodged. */
    private static List<PaperState> papers(ScanBook book, Set<String> kinds, LedgerFacts facts) {
        LocalDate since = facts.today().minusYears(LISTED_YEARS);
        List<PaperState> papers = new ArrayList<>(book.newest(kinds, since));
        Set<String> toLodge = new HashSet<>();
        Set<String> jobs = new HashSet<>();
        for (ClaimState claim : facts.claims()) {
            if (claim.isUnlodged() && claim.claimedOn().isBefore(since)) {
                toLodge.add(claim.job() + " " + claim.scheme().key());
                jobs.add(claim.job());
            }
        }
        book.newestOf(jobs, kinds).stream()
                .filter(p -> p.printedOn().isBefore(since))
                .filter(p -> toLodge.contains(p.job() + " " + p.kind()))
                .forEach(papers::add);
        return papers;
    }

    private static boolean isDone(
            PaperState paper, Optional<ClaimState> claim, LocalDate scannedSince) {
        if (claim.isPresent()) {
            return !claim.get().isUnlodged();
        }
        boolean before = paper.back().isEmpty() && paper.printedOn().isBefore(scannedSince);
        return before || paper.isReady() && paper.step() == PaperState.Step.BACK;
    }

    PapersView view(LocalDate today, String version) throws IOException {
        List<PapersView.Part> parts = new ArrayList<>();
        for (Part part : Part.values()) {
            List<Line> of = lines.stream().filter(l -> l.part() == part).toList();
            if (part == Part.TOO_LATE && of.isEmpty()) {
                continue;
            }
            parts.add(
                    new PapersView.Part(
                            part.anchor,
                            part.title,
                            part.note,
                            of.size(),
                            of.stream().limit(SHOWN).map(this::shown).toList()));
        }
        return new PapersView(Days.show(today), version, used, TABLE, piles(), parts);
    }

    /** Their names begin with the day on which the pile was taken in. */
    private List<String> piles() throws IOException {
        return Office.list(office.signed()).stream()
                .filter(f -> f.getFileName().toString().endsWith(".html"))
                .map(this::relative)
                .sorted(Comparator.reverseOrder())
                .limit(PILES_SHOWN)
                .toList();
    }

    /** The table; empty where no papers are scanned. */
    Optional<byte[]> table() {
        return used
                ? Optional.of(SafeCsv.of(HEADINGS, lines.stream().map(this::row).toList()))
                : Optional.empty();
    }

    private PapersView.Line shown(Line line) {
        PaperState paper = line.paper();
        Path page = office.packs().resolve(paper.batch()).resolve("index.html");
        return new PapersView.Line(
                paper.job(),
                line.kind().title(),
                file(line),
                paper.awaited(),
                paper.lastCame().map(Days::show).orElse(""),
                claim(line),
                paper.batch(),
                Files.exists(page) ? relative(page) : "");
    }

    private List<String> row(Line line) {
        PaperState paper = line.paper();
        Optional<ClaimState> claim = line.claim();
        return SafeCsv.cells(
                List.of(
                        paper.job(),
                        line.kind().title(),
                        String.valueOf(paper.version()),
                        paper.batch(),
                        paper.printedOn().toString(),
                        paper.awaited(),
                        String.valueOf(paper.back().size()),
                        paper.lastCame().map(LocalDate::toString).orElse(""),
                        claim.map(ClaimState::reference).orElse(""),
                        claim.flatMap(ClaimState::lodgeBy).map(LocalDate::toString).orElse(""),
                        claim(line),
                        claim.isEmpty() ? "" : line.part() == Part.READY ? "yes" : "no",
                        file(line)));
    }

    private String file(Line line) {
        PaperState paper = line.paper();
        if (paper.back().isEmpty()) {
            return "";
        }
        Path file = SignedFile.of(office, paper.job(), line.kind().title(), paper.version());
        return Files.exists(file) ? relative(file) : "";
    }

    private String relative(Path file) {
        return office.root().relativize(file).toString().replace('\\', '/');
    }

    /** What becomes of the claim; of an assignment without one it can only be said that. */
    private static String claim(Line line) {
        if (line.kind().scheme().isEmpty()) {
            return "";
        }
        if (line.claim().isEmpty()) {
            return "none yet";
        }
        ClaimState claim = line.claim().get();
        if (line.part() == Part.TOO_LATE) {
            return claim.failed().map(why -> "failed, ").orElse("")
                    + "past its last day, "
                    + claim.lodgeBy().map(Days::show).orElse("");
        }
        String by = claim.lodgeBy().map(day -> " by " + Days.show(day)).orElse("");
        if (claim.failed().isPresent()) {
            return "failed, to be lodged again" + by;
        }
        if (claim.isUnlodged()) {
            return "to be lodged" + by + (line.part() == Part.READY ? ", ready" : ", not ready");
        }
        if (claim.received().isZero()) {
            return "lodged";
        }
        return claim.isOpen() ? "lodged, paid in part" : "lodged and paid";
    }
}
