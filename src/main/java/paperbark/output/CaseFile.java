package paperbark.output;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Entitlements;
import paperbark.entitlement.Schemes;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.firm.Buyer;
import paperbark.firm.Firm;
import paperbark.firm.StatePaper;
import paperbark.job.BenefitForm;
import paperbark.job.Job;
import paperbark.offer.Benefit;
import paperbark.offer.Comparison;
import paperbark.offer.Expected;
import paperbark.offer.FirmGst;
import paperbark.offer.OwnerPrice;
import paperbark.offer.Standing;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * All that a template, workbook or page may know of a job.
 *
 * @param batch what all papers of the batch share
 * @param firm the installing firm
 * @param job the job
 * @param entitlements certificates with their working
 * @param expected money expected, one entry a scheme at most
 * @param comparisons the offers for each claim side by side
 * @param price what the owner pays, where the price is known; claims that fall away do not come off
 *     it
 * @param statePapers compliance certificates that the site's state asks for
 * @param deadlines closing dates, earliest first
 * @param toDo what is still missing
 * @param findings what was noticed about the job
 * @param papers the papers of the pack, in order
 * @param packFile file name of the pack
 * @param withBuyer schemes whose earlier claim the buyer has, and has not failed: it stands as it
 *     was made, also where a stop holds its new paper
 * @param dropped papers of earlier batches that the job has no more, and those of other jobs whose
 *     place it takes
 */
@RecordBuilder
public record CaseFile(
        BatchInfo batch,
        Firm firm,
        Job job,
        Entitlements entitlements,
        List<Expected> expected,
        List<Comparison> comparisons,
        Optional<OwnerPrice> price,
        List<StatePaper> statePapers,
        List<Deadline> deadlines,
        List<ToDo> toDo,
        List<Finding> findings,
        List<Paper> papers,
        String packFile,
        Set<SchemeName> withBuyer,
        List<Dropped> dropped) {

    /**
     * Keeps the lists from being changed, takes only claims that count off the price, which a row
     * has none of whose number is another's too, and holds the owner's papers where they would tell
     * what is not so.
     */
    public CaseFile {
        expected = List.copyOf(expected);
        comparisons = List.copyOf(comparisons);
        statePapers = List.copyOf(statePapers);
        deadlines = List.copyOf(deadlines);
        toDo = List.copyOf(toDo);
        findings = List.copyOf(findings);
        withBuyer = Set.copyOf(withBuyer);
        dropped = List.copyOf(dropped);
        Claiming claiming =
                new Claiming(job, entitlements, findings, withBuyer, batch.preparedOn());
        price =
                price.filter(p -> !claiming.isTwice())
                        .map(p -> p.keeping(scheme -> !claiming.standing(scheme).fallsAway()));
        papers = claiming.hold(papers);
    }

    /**
     * The same case after its pack was made.
     *
     * @param more what was noticed
     * @param held the stops that hold a paper, by paper; papers that are absent go out
     */
    public CaseFile packed(List<Finding> more, Map<PaperKind, List<Finding>> held) {
        List<Finding> all =
                Stream.concat(findings.stream(), more.stream().map(f -> f.forJob(job.reference())))
                        .toList();
        return CaseFileBuilder.builder(this)
                .findings(Finding.inOrder(all))
                .papers(
                        papers.stream()
                                .map(p -> p.heldBy(held.getOrDefault(p.kind(), List.of())))
                                .toList())
                .build();
    }

    /** The same case with other papers. */
    public CaseFile withPapers(List<Paper> others) {
        return CaseFileBuilder.builder(this).papers(others).build();
    }

    /** The same case without some papers of earlier batches. */
    public CaseFile dropping(List<Dropped> others) {
        return CaseFileBuilder.builder(this).dropped(others).build();
    }

    /**
     * The day since which the heater is in, as known on the day of the batch: only with it a job is
     * a sale, in journal, sheets and ledger, or a claim, and its years begin.
     */
    public Optional<LocalDate> doneOn() {
        return job.doneOn(batch.preparedOn());
    }

    /** The day that the job is counted on: of the installation, or planned while it is booked. */
    public Optional<LocalDate> countedOn() {
        return job.countedOn(batch.preparedOn());
    }

    /** Money expected under a scheme. */
    public Optional<Expected> expected(SchemeName scheme) {
        return expected.stream().filter(e -> e.scheme() == scheme).findFirst();
    }

    /** Who takes a scheme's certificates: by the offer taken, otherwise as the register chose. */
    public Optional<Buyer> buyer(SchemeName scheme) {
        return expected(scheme).map(Expected::buyer).or(() -> job.claim(scheme).buyer());
    }

    /** What the certificates of each scheme are called in full. */
    public Map<SchemeName, String> certificateNames() {
        Map<SchemeName, String> names = new EnumMap<>(SchemeName.class);
        for (SchemeName scheme : SchemeName.values()) {
            names.put(scheme, scheme.fullName() + "s");
        }
        return names;
    }

    /**
     * Until when the heater must be in for the number shown, for claims on planned work whose
     * number hangs on the year.
     */
    public Map<SchemeName, LocalDate> onlyUntil() {
        Map<SchemeName, LocalDate> days = new EnumMap<>(SchemeName.class);
        for (Entitlement claim : entitlements.all()) {
            job.ruleDay()
                    .filter(day -> isOnPlannedDay(claim))
                    .flatMap(Schemes.KNOWN.of(claim.scheme())::sameUntil)
                    .ifPresent(day -> days.put(claim.scheme(), day));
        }
        return days;
    }

    /**
     * Whether what a claim earns is only that of a planned day. Of a heater that is in, the day may
     * be unknown, and is planned no longer.
     */
    public boolean isOnPlannedDay(Entitlement claim) {
        return claim.provisional() && job.isBooked();
    }

    /** How a claim stands: the one place that papers, sheets, forms and the ledger ask. */
    public Standing standing(SchemeName scheme) {
        return claiming().standing(scheme);
    }

    /** How the claim under each scheme stands, e.g. {@code held}. */
    public Map<SchemeName, Standing> standings() {
        Map<SchemeName, Standing> all = new EnumMap<>(SchemeName.class);
        for (SchemeName scheme : SchemeName.values()) {
            all.put(scheme, standing(scheme));
        }
        return all;
    }

    /** What becomes of the assignment under each scheme, for decisions of templates. */
    public Map<SchemeName, Assignment> assignments() {
        Map<SchemeName, Assignment> all = new EnumMap<>(SchemeName.class);
        standings().forEach((scheme, standing) -> all.put(scheme, Assignment.of(standing)));
        return all;
    }

    /** What the owner has of each assignment that counts. */
    public List<Benefit> benefits() {
        return Benefit.of(job, entitlements, expected, price).stream()
                .filter(b -> standing(b.scheme()).counts())
                .toList();
    }

    /** Money expected for the claims that count. */
    public List<Expected> coming() {
        return expected.stream().filter(e -> standing(e.scheme()).counts()).toList();
    }

    /**
     * Whether a claim counts of which nobody said what it takes off the price: how the benefit is
     * given, or how much a discount is. Nothing of its money is told or booked before.
     */
    public boolean isOpen(SchemeName scheme) {
        boolean known =
                job.payment()
                        .form()
                        .filter(
                                form ->
                                        form == BenefitForm.PAYMENT
                                                || job.claim(scheme).benefit().isPresent())
                        .isPresent();
        return standing(scheme).counts() && !known;
    }

    /**
     * What the owner pays: full price less the discounts of claims that stand. Where that is not
     * known, the register's own amount, or nothing.
     */
    public Optional<Money> ownerPays() {
        boolean unsaid = job.payment().form().isEmpty() && !entitlements.all().isEmpty();
        boolean open = Arrays.stream(SchemeName.values()).anyMatch(this::isOpen);
        return unsaid || open
                ? price.flatMap(p -> job.payment().coPayment())
                : price.map(OwnerPrice::payable);
    }

    /** What the job means for the firm's own GST, where the price is known. */
    public Optional<FirmGst> firmGst() {
        return price.map(p -> FirmGst.of(p, benefits(), coming(), firm));
    }

    /** What can be claimed: the entitlements of claims that count. */
    public List<Entitlement> claimable() {
        return entitlements.all().stream().filter(e -> standing(e.scheme()).counts()).toList();
    }

    /**
     * Whether another row has its number, so that nobody knows which is the job: neither is sold,
     * and what the ledger has of the number stays as it was.
     */
    public boolean isTwice() {
        return claiming().isTwice();
    }

    private Claiming claiming() {
        return new Claiming(job, entitlements, findings, withBuyer, batch.preparedOn());
    }

    /** Whether a paper of the pack is held by a stop. */
    public boolean isHeld() {
        return papers.stream().anyMatch(Paper::isBlocked);
    }

    /** Whether the assignment under a scheme is held by a stop, whatever becomes of its claim. */
    public boolean isPaperHeld(SchemeName scheme) {
        PaperKind kind = PaperKind.of(scheme);
        return papers.stream().anyMatch(p -> p.kind().equals(kind) && p.isBlocked());
    }

    /** The gravest severity among the findings; empty where there are none. */
    public Optional<Severity> worst() {
        return findings.stream().map(Finding::severity).max(Severity::compareTo);
    }
}
