package paperbark.batch;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.entitlement.Entitlement;
import paperbark.firm.Buyer;
import paperbark.firm.Product;
import paperbark.job.Job;
import paperbark.ledger.ClaimEntry;
import paperbark.ledger.JobEntry;
import paperbark.ledger.JobOutcome;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;
import paperbark.ledger.PaperEntry;
import paperbark.ledger.Promise;
import paperbark.ledger.Sale;
import paperbark.offer.Expected;
import paperbark.output.CaseFile;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.paper.Diary;
import paperbark.value.SchemeName;

/** What of a case goes into the ledger. */
final class LedgerLines {
    private LedgerLines() {}

    static JobEntry of(CaseFile file, Ledger ledger) {
        return file.isTwice() ? asItWas(file, ledger) : whole(file, ledger);
    }

    /** Two rows have the number, so that it is held, and what was sold and claimed before stays. */
    private static JobEntry asItWas(CaseFile file, Ledger ledger) {
        Job job = file.job();
        return new JobEntry(
                job.reference(),
                job.origin().row(),
                Optional.empty(),
                JobOutcome.HELD,
                "packs/" + file.packFile(),
                file.doneOn(),
                warrantyUntil(file),
                Keys.site(job.site()).orElse(""),
                ledger.prints(job),
                ledger.income().sale(job.reference()),
                List.of(),
                held(file),
                List.of(),
                true);
    }

    private static JobEntry whole(CaseFile file, Ledger ledger) {
        Job job = file.job();
        return new JobEntry(
                job.reference(),
                job.origin().row(),
                job.corrects(),
                outcome(file),
                "packs/" + file.packFile(),
                file.doneOn(),
                warrantyUntil(file),
                Keys.site(job.site()).orElse(""),
                ledger.prints(job),
                sale(file),
                claims(file),
                held(file),
                papers(file));
    }

    private static Set<SchemeName> held(CaseFile file) {
        return Arrays.stream(SchemeName.values())
                .filter(s -> file.job().isInstalled() && file.job().claim(s).claimed())
                .filter(file::isPaperHeld)
                .collect(Collectors.toSet());
    }

    /** The cover tells of its batch alone. */
    private static List<PaperEntry> papers(CaseFile file) {
        return Stream.concat(
                        file.papers().stream()
                                .filter(p -> p.kind() != PaperKind.COVER && !p.kind().isCopy())
                                .flatMap(p -> paper(p, file)),
                        file.dropped().stream()
                                .filter(d -> d.otherJob().isEmpty())
                                .map(d -> PaperEntry.dropped(d.kind().folder())))
                .toList();
    }

    private static Stream<PaperEntry> paper(Paper paper, CaseFile file) {
        String kind = paper.kind().folder();
        if (paper.takesBack()) {
            return Stream.of(PaperEntry.takenBack(kind));
        }
        return paper.isBlocked() || paper.stands().isPresent()
                ? Stream.empty()
                : Stream.of(new PaperEntry(kind, paper.says(file)));
    }

    /** Nothing where the maker's warranty is not known: it is mostly the longest. */
    private static Optional<LocalDate> warrantyUntil(CaseFile file) {
        boolean makersKnown =
                file.job().heater().product().flatMap(Product::tankWarrantyYears).isPresent();
        return makersKnown
                ? Diary.of(
                                file.job(),
                                file.doneOn(),
                                file.firm().name(),
                                file.firm().workmanshipYears())
                        .warranties()
                        .stream()
                        .flatMap(cover -> cover.ends().stream())
                        .max(Comparator.naturalOrder())
                : Optional.empty();
    }

    private static JobOutcome outcome(CaseFile file) {
        if (file.isHeld()) {
            return JobOutcome.HELD;
        }
        return file.job().isBooked() ? JobOutcome.BOOKED : JobOutcome.ISSUED;
    }

    private static Optional<Sale> sale(CaseFile file) {
        return file.price()
                .flatMap(
                        price ->
                                file.doneOn()
                                        .map(day -> new Sale(day, price.fullPrice(), price.gst())));
    }

    /** Only what is installed is claimed, and only where the paper went out. */
    static List<ClaimEntry> claims(CaseFile file) {
        return file.doneOn().stream()
                .flatMap(
                        day ->
                                file.claimable().stream()
                                        .filter(e -> !file.isPaperHeld(e.scheme()))
                                        .flatMap(e -> claim(file, e, day)))
                .toList();
    }

    private static Stream<ClaimEntry> claim(CaseFile file, Entitlement earned, LocalDate day) {
        Optional<Expected> expected = file.expected(earned.scheme());
        return earned
                .certificates()
                .filter(count -> count > 0 && !earned.provisional())
                .map(
                        count ->
                                new ClaimEntry(
                                        earned.scheme(),
                                        file.buyer(earned.scheme()).map(Buyer::name).orElse(""),
                                        count,
                                        day,
                                        earned.lastDay(),
                                        file.job().heater().serials(),
                                        expected.map(LedgerLines::promise).orElse(Promise.NONE)))
                .stream();
    }

    private static Promise promise(Expected expected) {
        return new Promise(
                expected.split().toFirm().orNothing(),
                expected.split().toOwner(),
                expected.split().firmGst(),
                Optional.of(expected.due()));
    }
}
