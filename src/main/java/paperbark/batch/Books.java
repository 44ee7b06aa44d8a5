package paperbark.batch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import paperbark.disk.FolderLock;
import paperbark.disk.Hashes;
import paperbark.disk.Staging;
import paperbark.fault.FaultPoint;
import paperbark.finding.Finding;
import paperbark.job.Job;
import paperbark.job.JobNumbers;
import paperbark.ledger.BatchEntry;
import paperbark.ledger.CommitUnknown;
import paperbark.ledger.Conflict;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.JobHistory;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerBusyException;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Lodging;
import paperbark.ledger.Proof;
import paperbark.ledger.WithdrawalEntry;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.Receivable;
import paperbark.output.journal.TakenBack;

/**
 * The ledger as a batch sees it. Where the firm keeps none, nothing is known and nothing written.
 */
final class Books implements AutoCloseable {
    private final Request request;
    private final Optional<Ledger> ledger;
    private final Proof proof;
    private final List<Finding> findings = new ArrayList<>();
    private Map<String, JobHistory> histories = Map.of();
    private Optional<Set<String>> late = Optional.empty();
    private Optional<FolderLock> lock = Optional.empty();
    private Optional<Rehearsed> rehearsed = Optional.empty();

    private Books(Request request, Optional<Ledger> ledger, Proof proof) {
        this.request = request;
        this.ledger = ledger;
        this.proof = proof;
    }

    /**
     * Opens the ledger and proves it.
     *
     * @param proof what is proved of it already
     * @throws paperbark.ledger.LedgerException when it cannot be trusted
     */
    static Books open(Request request, Proof proof) {
        Optional<Ledger> ledger = request.ledger().place().map(Ledger::open);
        Books books = new Books(request, ledger, proof);
        if (ledger.isPresent()) {
            try {
                proof.of(ledger.get());
                FaultPoint.VERIFIED.reach();
            } catch (RuntimeException e) {
                ledger.get().close();
                throw e;
            }
        }
        return books;
    }

    /**
     * Publishes what an earlier run that was cut short had taken in, and keeps other runs from
     * publishing into the same folder until this one has ended.
     *
     * @throws FolderLock.BusyException when another run publishes there
     */
    void recover() throws IOException {
        if (ledger.isPresent()) {
            lock = Optional.of(FolderLock.take(request.out()));
            findings.addAll(UnfinishedBatches.publish(ledger.get(), lock.get(), request));
        }
    }

    /** The ledger's last seal; empty where the firm keeps no ledger. */
    Optional<String> seal() {
        return ledger.map(l -> l.records().lastSeal());
    }

    /** The sales of earlier batches that the jobs of this one book anew, by job. */
    Map<String, List<TakenBack>> earlierSales(BatchView view) throws IOException {
        if (ledger.isEmpty()) {
            return Map.of();
        }
        EarlierSales sales = EarlierSales.of(ledger.get(), request);
        Map<String, List<TakenBack>> all = new HashMap<>();
        for (CaseFile file : view.cases()) {
            String job = file.job().reference();
            JobHistory history = histories.getOrDefault(job, JobHistory.NONE);
            Set<String> corrected = corrected(file);
            if (history.earlier().isPresent() || !corrected.isEmpty()) {
                all.put(job, sales.of(job, corrected));
            }
        }
        return all;
    }

    /** The other jobs whose place a job takes. */
    private Set<String> corrected(CaseFile file) {
        String job = file.job().reference();
        return histories.getOrDefault(job, JobHistory.NONE).replacedJobs(job);
    }

    /** The keys of jobs with a claim that falls away when their register comes again. */
    private Set<String> late() {
        if (late.isEmpty()) {
            late =
                    Optional.of(
                            ledger
                                    .map(l -> Lodging.fallingAway(l, request.run().today()))
                                    .orElse(List.of())
                                    .stream()
                                    .map(claim -> Keys.job(claim.job()))
                                    .collect(Collectors.toSet()));
        }
        return late.get();
    }

    /** Which earlier batches a register would only repeat. */
    EarlierBatches earlierBatches(Inputs numbered) {
        return EarlierBatches.of(request, ledger, late(), numbered.jobs());
    }

    /** The inputs without the jobs that are cancelled or done; see {@link Remaining}. */
    Remaining remaining(Inputs numbered) {
        Remaining remaining = Remaining.of(numbered, request, ledger, late(), findings);
        histories = remaining.histories();
        return remaining;
    }

    /**
     * Books out the jobs that the register calls cancelled. That is so whatever becomes of the
     * others, so it is an entry of its own.
     */
    void withdraw(Remaining remaining) throws IOException {
        if (ledger.isPresent() && !remaining.cancelled().isEmpty()) {
            boolean booked =
                    ledger.get()
                            .withdraw(
                                    new WithdrawalEntry(
                                            remaining.cancelled(),
                                            request.register().name(),
                                            Hashes.sha256(request.register().file()),
                                            request.run().today(),
                                            request.run().at(),
                                            request.run().version()));
            if (booked) {
                proof.grew(ledger.get());
                LedgerPlace place = request.ledger().place().orElseThrow();
                AdviceFiles.complete(ledger.get(), AdviceFiles.beside(place));
                WithdrawnSales.complete(
                        ledger.get(), place, EarlierSales.of(ledger.get(), request));
            }
        }
    }

    /**
     * The inputs with the numbers that the ledger has for heaters whose job the program numbered
     * before, so that a corrected address makes no other job of one that was claimed.
     */
    Inputs numbered(Inputs inputs) {
        Optional<JobNumbers> numbers = JobNumbers.asked(inputs.names());
        if (ledger.isEmpty() || numbers.isEmpty()) {
            return inputs;
        }
        Map<String, String> known = new HashMap<>();
        for (Job job : inputs.jobs()) {
            if (numbers.get().isLike(job.reference())) {
                ledger.get().history(job).conflicts().stream()
                        .filter(c -> c.kind() == Conflict.Kind.SERIAL)
                        .map(Conflict::job)
                        .filter(numbers.get()::isLike)
                        .findFirst()
                        .ifPresent(number -> known.put(job.reference(), number));
            }
        }
        return known.isEmpty() ? inputs : inputs.renumbered(known);
    }

    /** What the ledger says of earlier claims, longest due first; nothing where there is none. */
    List<Receivable> receivables(List<CaseFile> cases) {
        if (ledger.isEmpty()) {
            return List.of();
        }
        LocalDate today = request.run().today();
        Set<String> replaced = new HashSet<>();
        cases.forEach(file -> corrected(file).forEach(job -> replaced.add(Keys.job(job))));
        return new EarlierClaims(ledger.get().claims(today), today).beside(cases, replaced);
    }

    /**
     * Writes down beside the papers what the batch will add to the ledger, so that a lost ledger
     * can be made anew.
     *
     * @throws IOException when somebody has written in the register since it was read
     */
    void rehearse(BatchView view, Manifest.Sources sources, Staging staging) throws IOException {
        if (ledger.isPresent()) {
            String register = Hashes.sha256(request.register().file());
            if (!sources.register().containsValue(register)) {
                throw new IOException(
                        "The register "
                                + request.register().name()
                                + " was changed while it was read.");
            }
            BatchEntry batch =
                    new BatchEntry(
                            view.info().id(),
                            view.info().register(),
                            register,
                            request.run().today(),
                            request.run().at(),
                            request.run().version(),
                            "",
                            OutputFolder.id(request.out()),
                            staging.toPublish().getFileName().toString(),
                            UUID.randomUUID().toString(),
                            view.cases().stream()
                                    .map(file -> LedgerLines.of(file, ledger.get()))
                                    .toList());
            EntryRecord adds = ledger.get().rehearse(batch);
            staging.write(EntryFile.NAME, new EntryFile(ledger.get().id(), adds).toJson());
            rehearsed = Optional.of(new Rehearsed(batch, adds));
        }
    }

    private record Rehearsed(BatchEntry batch, EntryRecord adds) {}

    /** Takes in the batch that was rehearsed; from here on it counts as claimed. */
    void enter(Staging staging) throws IOException {
        if (rehearsed.isPresent()) {
            String manifest = staging.written().get("manifest.json").sha256();
            BatchEntry batch = rehearsed.get().batch().withManifest(manifest);
            // Before the commit: a process that is told to end meanwhile must not take the folder
            // along.
            staging.keep();
            try {
                ledger.orElseThrow().enter(batch, rehearsed.get().adds());
            } catch (CommitUnknown maybeTakenIn) {
                throw maybeTakenIn;
            } catch (RuntimeException | Error notTakenIn) {
                staging.keepNot();
                throw notTakenIn;
            }
            proof.grew(ledger.get());
            FaultPoint.COMMITTED.reach();
        }
    }

    /** Notes that the folder is where people see it. */
    void published(String batch) {
        FaultPoint.PUBLISHED.reach();
        try {
            ledger.ifPresent(l -> l.batches().notePublished(batch));
        } catch (LedgerException | LedgerBusyException | UncheckedIOException later) {
            // People see it, so this run is done; the next one notes it.
            rehearsed = Optional.empty();
        }
    }

    @Override
    public void close() throws IOException {
        try {
            ledger.ifPresent(Ledger::close);
        } finally {
            if (lock.isPresent()) {
                lock.get().close();
            }
        }
    }
}
