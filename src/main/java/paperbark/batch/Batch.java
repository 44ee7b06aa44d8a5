package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import paperbark.entitlement.Entitlements;
import paperbark.entitlement.KeepUntil;
import paperbark.entitlement.RulesInUse;
import paperbark.fault.FaultPoint;
import paperbark.fault.Weakened;
import paperbark.finding.Finding;
import paperbark.finding.RuleRef;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.Visit;
import paperbark.ledger.Proof;
import paperbark.output.BatchInfo;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.PrintRunFiles;
import paperbark.output.Receivable;
import paperbark.output.index.IndexPage;
import paperbark.output.journal.Journal;
import paperbark.output.paper.FiledPack;
import paperbark.output.paper.PrintRun;
import paperbark.output.workbook.CsvSheets;
import paperbark.output.workbook.SummaryWorkbook;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Reading;

/** The order of work: one register in, one published folder out. */
public final class Batch {
    private final Progress progress;
    private final Proof proof;

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
        this.progress = progress;
        this.proof = proof;
    }

    /**
     * Reads a register and publishes its batch folder, whole or not at all.
     *
     * @throws IOException when a file or folder cannot be read or written; nothing is published
     *     then
     */
    public Outcome prepare(Request request) throws IOException {
        try (Books books = Books.open(request, proof)) {
            books.recover();
            return prepare(request, books);
        }
    }

    private Outcome prepare(Request request, Books books) throws IOException {
        Reading<Inputs> reading = Inputs.read(request);
        if (reading.result().isEmpty()) {
            return refused(request, reading.findings());
        }
        Inputs all = reading.result().get();
        Manifest.Sources sources = Manifest.Sources.of(request, all.rulebook());
        BatchFolder folder = BatchFolder.choose(request, sources, books::knows);
        if (folder.isPublishedAlready()) {
            return new Outcome(Ending.ALREADY, Optional.of(folder.path()), Counts.NONE, List.of());
        }
        Optional<Path> repeated = books.repeated(sources);
        if (repeated.isPresent()) {
            return new Outcome(Ending.ALREADY, repeated, Counts.NONE, List.of());
        }
        FaultPoint.READ.reach();
        Inputs inputs = books.remaining(all);
        if (inputs.jobs().isEmpty()) {
            boolean stopped = inputs.findings().stream().anyMatch(Finding::stops);
            return new Outcome(
                    stopped ? Ending.REFUSED : Ending.ALREADY,
                    Optional.empty(),
                    Counts.NONE,
                    inputs.findings());
        }
        BatchInfo info =
                new BatchInfo(
                        folder.id(), inputs.sheet().file(), request.today(), request.version());
        List<CaseFile> cases = cases(inputs, info, request);
        try (Staging staging = Staging.of(folder.path())) {
            Packing packing = new Packing(request.templates(), progress, cores());
            List<FiledPack> packs = packing.make(cases, staging);
            cases = packs.stream().map(FiledPack::caseFile).toList();
            BatchView view = view(inputs, info, cases, packing.findings(), books.receivables());
            writePrintRun(inRouteOrder(packs), staging);
            staging.write("index.html", IndexPage.of(view).getBytes(StandardCharsets.UTF_8));
            staging.write("summary.xlsx", SummaryWorkbook.of(view));
            if (!inputs.tables().accounts().isEmpty()) {
                Journal journal = new Journal(view, inputs.tables().accounts());
                staging.write("journal.csv", journal.csv());
                staging.write("accounts.journal", journal.plainText());
            }
            if (request.csv()) {
                CsvSheets.write(
                        view, (name, content) -> staging.write("summary-csv/" + name, content));
            }
            staging.write(
                    "register-checked.xlsx",
                    MarkedCopy.of(request.register(), inputs.names()::knows, view.findings()));
            Counts counts = Counts.of(cases, packs.size());
            books.rehearse(view, sources, staging);
            staging.write(
                    "manifest.json",
                    Manifest.of(sources, view, packing.templates(), staging.written()).toJson());
            FaultPoint.MANIFEST.reach();
            staging.settle();
            FaultPoint.STAGED.reach();
            if (Weakened.PUBLISH_FIRST.isOn()) {
                staging.publish();
                books.enter(staging);
            } else {
                books.enter(staging);
                staging.publish();
            }
            books.published(info.id());
            return new Outcome(
                    ending(counts, view), Optional.of(folder.path()), counts, view.findings());
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
        Reading<Inputs> reading = Inputs.read(request);
        if (reading.result().isEmpty()) {
            return refused(request, reading.findings());
        }
        Inputs inputs = books.remaining(reading.result().get());
        String name = PackNames.slug(FileNames.stem(request.register()));
        BatchInfo info =
                new BatchInfo(name, inputs.sheet().file(), request.today(), request.version());
        List<CaseFile> cases = cases(inputs, info, request);
        BatchView view = view(inputs, info, cases, List.of(), books.receivables());
        byte[] copy = MarkedCopy.of(request.register(), inputs.names()::knows, view.findings());
        // Somebody may have worked in an earlier copy.
        Path marked = FileNames.freeFor(copy, request.out(), name + "-checked.xlsx");
        Disk.replace(marked, copy);
        Counts counts = Counts.of(cases, 0);
        return new Outcome(ending(counts, view), Optional.of(marked), counts, view.findings());
    }

    /** SHA-256 of a file in hexadecimal. */
    public static String sha256(Path file) throws IOException {
        return Hashes.sha256(file);
    }

    /**
     * The marked-up copy of a register that was refused.
     *
     * @return empty where the file is none that a copy can be made of
     */
    public static Optional<byte[]> marked(Path register, Path tables, List<Finding> findings) {
        try {
            ColumnNames<Field> names =
                    HeadingTable.of(Field.class, "columns", tables, new ArrayList<>());
            return Optional.of(MarkedCopy.of(register, names::knows, findings));
        } catch (RuntimeException unreadable) {
            // What refused the register often keeps a copy from being made; the note tells all.
            return Optional.empty();
        }
    }

    private static void writePrintRun(List<FiledPack> packs, Staging staging) throws IOException {
        List<String> names = PrintRunFiles.names(packs.size());
        for (int i = 0; i < names.size(); i++) {
            List<FiledPack> part = PrintRunFiles.part(packs, i);
            staging.write(names.get(i), out -> PrintRun.write(part, out));
        }
    }

    /** A row that yields no job at all, such as one without a number, is held too. */
    private static Ending ending(Counts counts, BatchView view) {
        boolean lost = view.findings().stream().anyMatch(f -> f.stops() && f.job().isEmpty());
        return counts.heldJobs() > 0 || lost ? Ending.HELD : Ending.DONE;
    }

    private static int cores() {
        return Runtime.getRuntime().availableProcessors();
    }

    /** What the firm's tables cause is not the register's fault. */
    static Outcome refused(Request request, List<Finding> findings) {
        String register = request.register().getFileName().toString();
        boolean tables =
                findings.stream().anyMatch(f -> f.stops() && !f.place().file().equals(register));
        return new Outcome(
                tables ? Ending.SETUP : Ending.REFUSED,
                Optional.empty(),
                Counts.NONE,
                Finding.inOrder(findings));
    }

    private static List<CaseFile> cases(Inputs inputs, BatchInfo info, Request request) {
        Cases cases = new Cases(info, inputs.tables(), inputs.rulebook(), request.siteSheets());
        List<String> packNames = PackNames.of(inputs.jobs());
        List<CaseFile> files = new ArrayList<>();
        for (int i = 0; i < inputs.jobs().size(); i++) {
            Job job = inputs.jobs().get(i);
            files.add(cases.of(job, inputs.findingsOf(job), packNames.get(i)));
        }
        return files;
    }

    private static BatchView view(
            Inputs inputs,
            BatchInfo info,
            List<CaseFile> cases,
            List<Finding> templates,
            List<Receivable> receivables) {
        List<Finding> findings =
                new ArrayList<>(inputs.findings().stream().filter(f -> f.job().isEmpty()).toList());
        findings.addAll(templates);
        cases.forEach(file -> findings.addAll(file.findings()));
        List<Entitlements> entitlements = cases.stream().map(CaseFile::entitlements).toList();
        findings.addAll(KeepUntil.of(info.register(), entitlements, inputs.rulebook()));
        List<RuleRef> rules = RulesInUse.of(entitlements);
        findings.addAll(RulesInUse.old(rules, inputs.rulebook(), info.preparedOn()));
        return new BatchView(
                info, inputs.tables().firm(), cases, Finding.inOrder(findings), rules, receivables);
    }

    /**
     * Crew, then day, then place in the day's route, then job; packs without a crew or place come
     * last.
     */
    private static List<FiledPack> inRouteOrder(List<FiledPack> packs) {
        Comparator<Visit> route =
                Comparator.comparing((Visit v) -> v.crew().orElse("\uffff"))
                        .thenComparing(v -> v.on().orElse(LocalDate.MAX))
                        .thenComparing(v -> v.order().orElse(Integer.MAX_VALUE));
        return packs.stream()
                .sorted(
                        Comparator.comparing((FiledPack p) -> p.caseFile().job().visit(), route)
                                .thenComparing(p -> p.caseFile().job().reference()))
                .toList();
    }
}
