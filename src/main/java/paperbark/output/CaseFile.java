package paperbark.output;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Entitlements;
import paperbark.entitlement.Schemes;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.firm.Firm;
import paperbark.firm.StatePaper;
import paperbark.job.Job;
import paperbark.offer.Benefit;
import paperbark.offer.Comparison;
import paperbark.offer.Expected;
import paperbark.offer.OwnerPrice;
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
 * @param price what the owner pays, where the price is known
 * @param statePapers compliance certificates that the site's state asks for
 * @param deadlines closing dates, earliest first
 * @param toDo what is still missing
 * @param findings what was noticed about the job
 * @param papers the papers of the pack, in order
 * @param packFile file name of the pack
 */
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
        String packFile) {

    /** Keeps the lists from being changed. */
    public CaseFile {
        expected = List.copyOf(expected);
        comparisons = List.copyOf(comparisons);
        statePapers = List.copyOf(statePapers);
        deadlines = List.copyOf(deadlines);
        toDo = List.copyOf(toDo);
        findings = List.copyOf(findings);
        papers = List.copyOf(papers);
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
        return with(
                Finding.inOrder(all),
                papers.stream()
                        .map(p -> p.heldBy(held.getOrDefault(p.kind(), List.of())))
                        .toList());
    }

    /** The same case with other papers. */
    public CaseFile withPapers(List<Paper> others) {
        return with(findings, others);
    }

    private CaseFile with(List<Finding> noticed, List<Paper> pack) {
        return new CaseFile(
                batch,
                firm,
                job,
                entitlements,
                expected,
                comparisons,
                price,
                statePapers,
                deadlines,
                toDo,
                noticed,
                pack,
                packFile);
    }

    /** Money expected under a scheme. */
    public Optional<Expected> expected(SchemeName scheme) {
        return expected.stream().filter(e -> e.scheme() == scheme).findFirst();
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
                    .filter(day -> claim.provisional())
                    .flatMap(Schemes.KNOWN.of(claim.scheme())::sameUntil)
                    .ifPresent(day -> days.put(claim.scheme(), day));
        }
        return days;
    }

    /** What the owner has of each assignment. */
    public List<Benefit> benefits() {
        return Benefit.of(job, entitlements, expected, price);
    }

    /** What can be claimed now: entitlements whose assignment paper is not held. */
    public List<Entitlement> claimable() {
        return entitlements.all().stream()
                .filter(
                        e ->
                                papers.stream()
                                        .anyMatch(
                                                p ->
                                                        p.kind() == PaperKind.of(e.scheme())
                                                                && !p.isBlocked()))
                .toList();
    }

    /** Whether a paper of the pack is held by a stop. */
    public boolean isHeld() {
        return papers.stream().anyMatch(Paper::isBlocked);
    }

    /** The gravest severity among the findings; empty where there are none. */
    public Optional<Severity> worst() {
        return findings.stream().map(Finding::severity).max(Severity::compareTo);
    }
}
