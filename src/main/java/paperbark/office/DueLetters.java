package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.batch.OutputFolder;
import paperbark.batch.PageMap;
import paperbark.batch.Recipients;
import paperbark.disk.FileNames;
import paperbark.firm.Buyer;
import paperbark.firm.FirmTables;
import paperbark.firm.Maker;
import paperbark.ledger.Batches;
import paperbark.ledger.ClaimState;
import paperbark.ledger.CurrentJob;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;
import paperbark.ledger.Lodging;
import paperbark.ledger.PaperState;
import paperbark.ledger.ScanBook;
import paperbark.output.LetterView;
import paperbark.output.PaperKind;
import paperbark.value.Days;
import paperbark.value.Email;
import paperbark.value.SchemeName;

/**
 * Finds the letters that are due: of the newest batches and of claims that are still to be lodged.
 * A paper counts while no later one took its place and its job was not booked out; a claim while it
 * stands, nobody said that it was lodged and its last day is not over. Of jobs that are only booked
 * nothing is due.
 */
final class DueLetters {
    /** Letters to owners and makers of older batches are no longer news. */
    private static final int BATCHES = 20;

    /** Said in the place of the money while no offer was taken. */
    private static final String NO_PRICE = "no price known yet";

    private static final String OWNER = "owner";

    private static final Set<String> OWNERS =
            Set.of(PaperKind.HANDOVER.folder(), PaperKind.BENEFIT.folder());

    private final FirmTables tables;
    private final Ledger ledger;
    private final ScanBook scans;
    private final PrintedPages printed;
    private final PaperFiles papers;
    private final JobFiles files;
    private final Map<String, String> doubtful;
    private final Map<String, ClaimState> claims = new LinkedHashMap<>();
    private final List<Outgoing> due = new ArrayList<>();
    private final Set<String> withoutBuyer = new TreeSet<>();

    private DueLetters(
            Office office, LedgerFacts facts, FirmTables tables, Map<String, String> doubtful)
            throws IOException {
        this.doubtful = doubtful;
        this.tables = tables;
        this.ledger = facts.ledger();
        this.scans = new ScanBook(ledger);
        this.printed = new PrintedPages(ledger, office);
        this.papers = new PaperFiles(office);
        this.files =
                JobFiles.in(
                        office, facts.currentJobs().stream().map(CurrentJob::reference).toList());
        facts.claims().stream()
                .filter(c -> c.isToLodge(facts.today()))
                .forEach(c -> claims.put(key(c.job(), c.scheme().key()), c));
    }

    private static String key(String job, String scheme) {
        return Keys.job(job) + " " + scheme;
    }

    /**
     * What is due.
     *
     * @param letters the newest batch's first
     * @param tooLate claims that were not lodged and can be no longer; nothing is due of them
     * @param withoutBuyer claims that were entered without a buyer, so that nobody gets their
     *     papers
     */
    record Due(List<Outgoing> letters, Set<String> tooLate, Set<String> withoutBuyer) {}

    /**
     * Finds them.
     *
     * @param facts what the ledger says on the day, which decides what is due
     * @param doubtful pictures that contradict day or site, in words by their names
     * @throws IOException when a batch folder cannot be read
     */
    static Due of(Office office, LedgerFacts facts, FirmTables tables, Map<String, String> doubtful)
            throws IOException {
        DueLetters letters = new DueLetters(office, facts, tables, doubtful);
        for (String batch : letters.batches(OutputFolder.known(office.packs()).orElse(""))) {
            Optional<Path> folder = letters.printed.folder(batch);
            if (folder.isPresent()) {
                letters.ofBatch(batch, folder.get());
            }
        }
        Set<String> tooLate =
                Lodging.tooLate(facts.claims(), facts.today()).stream()
                        .map(ClaimState::reference)
                        .collect(Collectors.toCollection(TreeSet::new));
        return new Due(List.copyOf(letters.due), tooLate, letters.withoutBuyer);
    }

    private Set<String> batches(String place) {
        Set<String> names = new LinkedHashSet<>();
        ledger.batches().newest(BATCHES, place).stream()
                .map(Batches.BatchState::name)
                .forEach(names::add);
        List<ClaimState> older =
                claims.values().stream().filter(c -> !names.contains(c.batch())).toList();
        // A later batch may have printed its assignment anew.
        Map<Long, PaperState> assignments = scans.assignments(older);
        for (ClaimState claim : older) {
            Optional.ofNullable(assignments.get(claim.id()))
                    .map(PaperState::batch)
                    .ifPresent(names::add);
        }
        return names;
    }

    private void ofBatch(String batch, Path folder) throws IOException {
        Optional<Recipients> recipients = Recipients.in(folder);
        Optional<PageMap> map = PageMap.in(folder);
        if (recipients.isEmpty() || map.isEmpty()) {
            return;
        }
        Map<String, List<PaperState>> states = current(batch);
        Map<String, List<PrintedJob>> byMaker = new TreeMap<>();
        for (Recipients.OfJob job : recipients.get().jobs()) {
            List<PaperState> own = states.getOrDefault(Keys.job(job.job()), List.of());
            Optional<PageMap.PackPages> pack = map.get().of(job.job());
            Path file = folder.resolve(job.pack());
            if (!own.isEmpty() && pack.isPresent() && Files.isRegularFile(file)) {
                PrintedJob of = new PrintedJob(job, file, pack.get(), own);
                owner(batch, of);
                if (of.has(PaperKind.WARRANTY.folder()) && !job.maker().isEmpty()) {
                    byMaker.computeIfAbsent(job.maker(), m -> new ArrayList<>()).add(of);
                }
                for (SchemeName scheme : SchemeName.values()) {
                    buyer(batch, of, scheme);
                }
            }
        }
        makers(batch, byMaker);
    }

    /** The papers of a batch that count, by job. */
    private Map<String, List<PaperState>> current(String batch) {
        return scans.ofBatch(batch).stream()
                .filter(PaperState::counts)
                .collect(Collectors.groupingBy(p -> Keys.job(p.job())));
    }

    private void owner(String batch, PrintedJob of) throws IOException {
        List<Enclosure> enclosed = new ArrayList<>();
        List<LetterView.Apart> apart = new ArrayList<>();
        for (PageMap.PaperSpan paper : of.pack().papers()) {
            Optional<PaperState> state = of.state(paper.kind());
            if (state.isPresent() && OWNERS.contains(paper.kind())) {
                enclosed.add(papers.printed(of, paper, false));
            } else if (state.isPresent() && paper.copy() && of.job().account()) {
                apart.add(new LetterView.Apart(paper.title(), SendDesk.ACCOUNT_STAYS));
            } else if (state.isPresent() && paper.copy()) {
                enclosed.add(papers.printed(of, paper, true));
            }
        }
        if (!enclosed.isEmpty()) {
            Optional<Email> to = Email.parse(of.job().email()).toOptional();
            due.add(
                    new Outgoing(
                            batch,
                            Outgoing.Kind.OWNER,
                            stem(of, OWNER),
                            to,
                            of.job().owner(),
                            List.of(of.told()),
                            Optional.empty(),
                            enclosed,
                            apart));
        }
    }

    /** The names that letters about a job alone can have, without ending. */
    static List<String> stems(String job) {
        return Stream.concat(
                        Stream.of(OWNER), Arrays.stream(SchemeName.values()).map(SchemeName::word))
                .map(kind -> stem(job, kind))
                .toList();
    }

    private static String stem(String job, String kind) {
        return Office.signedFolder(job) + "-" + kind;
    }

    private static String stem(PrintedJob of, String kind) {
        return stem(of.job().job(), kind);
    }

    private void makers(String batch, Map<String, List<PrintedJob>> byMaker) throws IOException {
        Set<String> taken = new LinkedHashSet<>();
        for (Map.Entry<String, List<PrintedJob>> maker : byMaker.entrySet()) {
            List<Enclosure> enclosed = new ArrayList<>();
            for (PrintedJob of : maker.getValue()) {
                enclosed.add(papers.signed(of, PaperKind.WARRANTY.folder()));
            }
            String slug = FileNames.slug(maker.getKey().toLowerCase(Locale.ROOT));
            String stem = SendDesk.MAKER + slug;
            while (!taken.add(stem)) {
                stem += "-2";
            }
            due.add(
                    new Outgoing(
                            batch,
                            Outgoing.Kind.MAKER,
                            stem,
                            tables.maker(maker.getKey()).flatMap(Maker::email),
                            maker.getKey(),
                            maker.getValue().stream().map(PrintedJob::told).toList(),
                            Optional.empty(),
                            enclosed,
                            List.of()));
        }
    }

    private void buyer(String batch, PrintedJob of, SchemeName scheme) throws IOException {
        ClaimState claim = claims.get(key(of.job().job(), scheme.key()));
        if (claim == null || !of.has(scheme.key())) {
            return;
        }
        if (claim.buyer().isEmpty()) {
            withoutBuyer.add(claim.reference());
            return;
        }
        List<Enclosure> enclosed = new ArrayList<>(List.of(papers.signed(of, scheme.key())));
        List<LetterView.Apart> apart = new ArrayList<>();
        papers.put(of, files.of(of.job().job()), doubtful, enclosed, apart);
        Optional<Buyer> buyer = tables.buyer(claim.buyer());
        Optional<Email> own =
                buyer.filter(Buyer::own).isPresent() ? tables.firm().email() : Optional.empty();
        due.add(
                new Outgoing(
                        batch,
                        Outgoing.Kind.BUYER,
                        stem(of, scheme.word()),
                        buyer.flatMap(Buyer::email).or(() -> own),
                        claim.buyer(),
                        List.of(of.told()),
                        Optional.of(told(claim)),
                        enclosed,
                        apart));
    }

    private static LetterView.OfClaim told(ClaimState claim) {
        return new LetterView.OfClaim(
                claim.reference(),
                claim.scheme().word(),
                claim.certificates(),
                claim.due().map(day -> claim.expected().toString()).orElse(NO_PRICE),
                claim.due().map(day -> claim.toOwner().toString()).orElse(""),
                claim.lodgeBy().map(Days::show).orElse(""),
                claim.due().map(Days::show).orElse(""));
    }
}
