package paperbark.batch;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.disk.Disk;
import paperbark.disk.FileNames;
import paperbark.disk.Staging;
import paperbark.entitlement.Entitlements;
import paperbark.entitlement.KeepUntil;
import paperbark.entitlement.RulesInUse;
import paperbark.fault.FaultPoint;
import paperbark.finding.Finding;
import paperbark.finding.RuleRef;
import paperbark.ledger.Proof;
import paperbark.output.BatchInfo;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.Receivable;
import paperbark.output.paper.FiledPack;
import paperbark.sheet.Reading;

/** The order of work: one register in, one published folder out. */
public final class Batch {
    /** More than any office's computer has use for; each takes memory for the pack it makes. */
    public static final int MOST_THREADS = 64;

    private static final String CHECKED = "-checked.xlsx";

    // With fewer the start of the program is most of it, and a further thread costs more than it
    // gains.
    private static final int MANY_PACKS = 200;

    private static final int PROCESSORS =
            Math.min(Runtime.getRuntime().availableProcessors(), MOST_THREADS - 1);

    private final Progress progress;
    private final Proof proof;
    private final Optional<Integer> threads;

    /** A batch that reports how far it has come. */
    public Batch(Progress progress) {
        this(progress, new Proof());
    }

    /**
     * One of several batches on the same ledger.
     *
     * @param proof what is proved of the ledger already
     */
    public Batch(Progress progress, Proof proof) {
        this(progress, proof, Optional.empty());
    }

    /**
     * The same on so many processors.
     *
     * @param threads how many packs are made at a time, from 1 to {@link #MOST_THREADS}; otherwise
     *     one for each processor, and one more where there are many
     */
    public Batch(Progress progress, Proof proof, Optional<Integer> threads) {
        this.progress = progress;
        this.proof = proof;
        this.threads = threads;
    }

    /**
     * How many of so many packs are made at a time. With one more than there are processors none is
     * idle while a pack is handed to the thread that its template runs on, and back.
     */
    private int atATime(int packs) {
        boolean oneMore = PROCESSORS > 1 && packs >= MANY_PACKS;
        return threads.orElse(oneMore ? PROCESSORS + 1 : PROCESSORS);
    }

    /**
     * Reads a register and publishes its batch folder, whole or not at all.
     *
     * @throws IOException when a file or folder cannot be read or written; nothing is published
     *     then
     */
    public Outcome prepare(Request request) throws IOException {
        try (Ahead ahead = Ahead.begin(request.firm().templates(), atATime(1));
                Books books = Books.open(request, proof)) {
            books.recover();
            return prepare(request, books, ahead);
        }
    }

    private Outcome prepare(Request request, Books books, Ahead ahead) throws IOException {
        Reading<Inputs> reading = Inputs.read(request);
        if (reading.result().isEmpty()) {
            return Outcome.refused(request, reading.findings());
        }
        Manifest.Sources sources = Manifest.Sources.of(request, reading.result().get().rulebook());
        Inputs read = books.numbered(reading.result().get());
        EarlierBatches earlier = books.earlierBatches(read);
        BatchFolder folder = BatchFolder.choose(request, sources, earlier);
        Optional<Path> before =
                folder.isPublishedAlready()
                        ? Optional.of(folder.path())
                        : earlier.repeated(sources);
        if (before.isPresent()) {
            return Outcome.already(before.get());
        }
        FaultPoint.READ.reach();
        Remaining remaining = books.remaining(read);
        books.withdraw(remaining);
        Inputs inputs = remaining.inputs();
        if (inputs.jobs().isEmpty()) {
            return Outcome.nothingLeft(inputs.findings());
        }
        Cases cases = new Cases(remaining, folder.id(), request);
        try (Staging staging = Staging.of(folder.path())) {
            Packing packing =
                    new Packing(
                            ahead.packs().get(),
                            request.firm().templates(),
                            FillableSheets.wanted(request, inputs.tables()),
                            progress,
                            atATime(inputs.jobs().size()));
            List<FiledPack> packs = packing.make(cases.all(), staging);
            List<CaseFile> packed = packs.stream().map(FiledPack::caseFile).toList();
            BatchView papers = view(inputs, cases.info(), packed, packing.findings(), books);
            BatchView view =
                    new SharedPapers(papers, inputs, request, staging)
                            .write(packs, books, atATime(1));
            books.rehearse(view, sources, staging);
            Manifest.of(sources, view, packing.templates(), staging.written()).write(staging);
            FaultPoint.MANIFEST.reach();
            staging.settle();
            FaultPoint.STAGED.reach();
            books.enter(staging);
            staging.publish();
            books.published(folder.id());
            return Outcome.of(view, packs.size(), Optional.of(folder.path()));
        }
    }

    /**
     * Reads and checks a register, and writes only the marked-up copy.
     *
     * @throws IOException when a file or folder cannot be read or written
     */
    public Outcome check(Request request) throws IOException {
        try (Books books = Books.open(request, proof)) {
            return check(request, books);
        }
    }

    private static Outcome check(Request request, Books books) throws IOException {
        Looked looked = looked(request, books);
        if (looked.copied().isEmpty()) {
            return checkedRefused(request, looked.outcome());
        }
        SideProducts beside = new SideProducts(request.register().name());
        Optional<Path> marked =
                beside.make(
                        "The marked-up copy",
                        () -> {
                            MarkedCopy copy =
                                    MarkedCopy.of(
                                            looked.copied().get(), looked.outcome().findings());
                            beside.note(copy.noticed());
                            return keep(request, copy.content(), CHECKED);
                        });
        if (looked.lacking().isPresent()) {
            beside.make(
                    NamesToAdd.NAME,
                    () -> keep(request, looked.lacking().get().workbook(), "-" + NamesToAdd.NAME));
        }
        return looked.outcome().with(marked, beside.findings());
    }

    /** What was found, what a copy is made of where the register was read, and what tables lack. */
    private record Looked(
            Outcome outcome, Optional<CopySource> copied, Optional<NamesToAdd> lacking) {}

    /** Rows, jobs and cases are gone when it returns: the copy needs the memory. */
    private static Looked looked(Request request, Books books) {
        Reading<Inputs> reading = Inputs.read(request);
        if (reading.result().isEmpty()) {
            return new Looked(
                    Outcome.refused(request, reading.findings()),
                    Optional.empty(),
                    Optional.empty());
        }
        Remaining remaining = books.remaining(books.numbered(reading.result().get()));
        Inputs inputs = remaining.inputs();
        String name = FileNames.slug(FileNames.stem(request.register().file()));
        Cases cases = new Cases(remaining, name, request);
        return new Looked(
                CheckedCases.of(inputs, cases), Optional.of(inputs.copied()), inputs.namesToAdd());
    }

    /** Of a register that is refused there is a copy wherever one can be made. */
    private static Outcome checkedRefused(Request request, Outcome refused) throws IOException {
        Optional<byte[]> copy =
                MarkedCopy.ofRefused(
                        request.register().file(), request.firm().tables(), refused.findings());
        return copy.isEmpty()
                ? refused
                : refused.with(Optional.of(keep(request, copy.get(), CHECKED)), List.of());
    }

    /** Somebody may have worked in an earlier copy. */
    private static Path keep(Request request, byte[] copy, String ending) throws IOException {
        String name = FileNames.slug(FileNames.stem(request.register().file()));
        Path marked = FileNames.freeFor(copy, request.out(), name + ending);
        Disk.replace(marked, copy);
        return marked;
    }

    private static BatchView view(
            Inputs inputs,
            BatchInfo info,
            List<CaseFile> cases,
            List<Finding> templates,
            Books books) {
        List<Finding> findings =
                new ArrayList<>(inputs.findings().stream().filter(f -> f.job().isEmpty()).toList());
        findings.addAll(templates);
        cases.forEach(file -> findings.addAll(file.findings()));
        List<Entitlements> entitlements = cases.stream().map(CaseFile::entitlements).toList();
        findings.addAll(KeepUntil.of(info.register(), entitlements, inputs.rulebook()));
        List<RuleRef> rules = RulesInUse.of(entitlements);
        findings.addAll(RulesInUse.old(rules, inputs.rulebook(), info.preparedOn()));
        List<Receivable> receivables = books.receivables(cases);
        return new BatchView(
                info, inputs.tables().firm(), cases, Finding.inOrder(findings), rules, receivables);
    }
}
