package paperbark.batch;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Earlier;
import paperbark.ledger.HistoryCheck;
import paperbark.ledger.JobHistory;
import paperbark.ledger.Keys;
import paperbark.ledger.PaperState;
import paperbark.ledger.PrintedPaper;
import paperbark.output.CaseFile;
import paperbark.output.Correction;
import paperbark.output.Dropped;
import paperbark.output.EarlierPaper;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.value.Days;

/**
 * Which papers of earlier batches count still. One stands when nothing on it changed, or when it
 * was signed and what is known now was an empty box then, which is filled in by hand.
 */
final class EarlierPapers {
    private final CaseFile file;
    private final Job job;
    private final JobHistory history;
    private final boolean again;
    private final Set<JobFact> kept;
    private final List<String> takeBack = new ArrayList<>();
    private final List<String> agreed = new ArrayList<>();
    private final List<String> tooNew = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    /**
     * For one job.
     *
     * @param again whether everything is to be printed again
     * @param kept what the row says otherwise and papers tell as it was
     */
    EarlierPapers(CaseFile file, JobHistory history, boolean again, Set<JobFact> kept) {
        this.kept = kept;
        this.file = file;
        this.job = file.job();
        this.history = history;
        this.again = again;
    }

    /** The same case with each paper beside what went out before. */
    CaseFile considered() {
        List<Paper> papers = file.papers().stream().map(this::placed).toList();
        List<Dropped> own = DroppedPapers.own(papers, history);
        own.forEach(d -> takeBack.add(d.title() + ofBatch(d.batch())));
        printedTooLate().ifPresent(findings::add);
        history.earlier()
                .filter(e -> e.withdrawn().isEmpty())
                .flatMap(e -> changed(e, papers))
                .ifPresent(findings::add);
        return file.withPapers(papers)
                .dropping(Stream.concat(own.stream(), DroppedPapers.ofOthers(history)).toList())
                .packed(findings, Map.of());
    }

    private Optional<Finding> changed(Earlier earlier, List<Paper> papers) {
        boolean known = papers.stream().anyMatch(p -> p.stands().or(p::replaces).isPresent());
        // Of a job that was held there may be no paper outside, or none that the ledger lists.
        List<String> old =
                known || !takeBack.isEmpty() ? takeBack : List.of("the pack " + earlier.pack());
        return HistoryCheck.changed(
                job, earlier, old, agreed, papers.stream().anyMatch(p -> p.stands().isPresent()));
    }

    private Paper placed(Paper paper) {
        List<PrintedPaper> earlier =
                history.papers().stream()
                        .filter(e -> e.kind().equals(paper.kind().folder()))
                        .toList();
        if (earlier.isEmpty() || paper.kind().isMadeAnew()) {
            return paper.after(Optional.empty(), Optional.empty(), correction(paper));
        }
        Optional<PrintedPaper> signed = again ? Optional.empty() : signed(paper, earlier);
        PrintedPaper newest = earlier.get(0);
        Optional<PrintedPaper> stands =
                again ? Optional.empty() : signed.or(() -> unchanged(paper, newest));
        PrintedPaper oldest = earlier.get(earlier.size() - 1);
        boolean assigns = paper.kind().scheme().isPresent() && !paper.kind().isCopy();
        if (signed.isEmpty() && assigns && isTooNew(oldest)) {
            tooNew.add(paper.title() + " on " + Days.show(oldest.day()));
        }
        if (stands.isPresent()) {
            return paper.after(
                    stands.map(e -> told(paper, e, List.of(), true)),
                    Optional.empty(),
                    Optional.empty());
        }
        List<String> wrong = contradicted(paper, newest);
        if (!paper.kind().isCopy() && (again || !wrong.isEmpty())) {
            (isWithBuyer(paper) ? agreed : takeBack).add(paper.title() + ofBatch(newest.batch()));
        }
        boolean signedBefore =
                !wrong.isEmpty()
                        && signing(paper).filter(day -> !day.isBefore(newest.day())).isPresent();
        return paper.after(
                Optional.empty(),
                Optional.of(told(paper, newest, wrong, signedBefore)),
                correction(paper));
    }

    /** What the buyer has is agreed on with them, as the stop that holds the new paper says. */
    private boolean isWithBuyer(Paper paper) {
        return paper.isBlocked()
                && paper.kind().scheme().filter(file.withBuyer()::contains).isPresent();
    }

    /** The newest that was there on the day of signing, if nothing that it says is wrong now. */
    private Optional<PrintedPaper> signed(Paper paper, List<PrintedPaper> earlier) {
        return signing(paper)
                .flatMap(
                        day ->
                                earlier.stream()
                                        .filter(e -> !e.day().isAfter(day))
                                        .findFirst()
                                        .filter(e -> contradicted(paper, e).isEmpty()));
    }

    private Optional<PrintedPaper> unchanged(Paper paper, PrintedPaper newest) {
        return Optional.of(newest)
                .filter(e -> e.says().equals(paper.says(file)))
                .filter(
                        e ->
                                e.changed()
                                        .filter(all -> all.stream().noneMatch(f -> tells(paper, f)))
                                        .isPresent());
    }

    /** Whether a paper tells a fact anew; an assignment is held for what its buyer has. */
    private boolean tells(Paper paper, JobFact fact) {
        boolean asItWas = kept.contains(fact) && paper.kind().scheme().isEmpty();
        return paper.kind().facts().contains(fact) && !asItWas;
    }

    /** The day on which people signed, where the register tells it. */
    private Optional<LocalDate> signing(Paper paper) {
        if (!paper.kind().isSigned()) {
            return Optional.empty();
        }
        if (paper.kind() == PaperKind.DECLARATIONS) {
            return job.heater().declarationsOn();
        }
        return job.hasClaims() ? job.signedOn() : job.installedOn();
    }

    /** A day of signing that is newly told, and on which no such paper was there. */
    private boolean isTooNew(PrintedPaper oldest) {
        boolean newlyTold =
                oldest.changed()
                        .filter(all -> all.containsAll(JobFact.of(Field.SIGNED_DATE)))
                        .isPresent();
        return newlyTold && job.signedOn().filter(day -> day.isBefore(oldest.day())).isPresent();
    }

    private Optional<Finding> printedTooLate() {
        return job.signedOn()
                .filter(day -> !tooNew.isEmpty())
                .map(
                        day ->
                                Finding.of(
                                        FindingCode.SIGNED_BEFORE_PRINTED,
                                        job.origin().cell(Field.SIGNED_DATE),
                                        "The owner signed on "
                                                + Days.show(day)
                                                + ", before these were printed: "
                                                + String.join(", ", tooNew)
                                                + ".",
                                        "Look which paper the owner signed; correct the day, or have the new"
                                                + " one signed."));
    }

    /** What a paper says that is not so any more, by its headings; empty boxes say nothing. */
    private List<String> contradicted(Paper paper, PrintedPaper earlier) {
        if (earlier.changed().isEmpty()) {
            return List.of("what cannot be told");
        }
        List<JobFact> facts =
                JobFact.ALL.stream()
                        .filter(
                                f ->
                                        earlier.changed().get().contains(f)
                                                && tells(paper, f)
                                                && !earlier.blank().contains(f))
                        .toList();
        Map<String, String> now = lines(paper.says(file));
        Stream<String> figures =
                lines(earlier.says()).entrySet().stream()
                        .filter(then -> !then.getValue().equals(now.get(then.getKey())))
                        .map(Map.Entry::getKey);
        // An address may stand in one column.
        return Stream.concat(facts.stream().map(f -> f.heading(job)), figures).distinct().toList();
    }

    private static Map<String, String> lines(String says) {
        return says.lines()
                .filter(line -> !line.endsWith(": "))
                .collect(
                        Collectors.toMap(
                                line -> line.substring(0, line.indexOf(": ")),
                                line -> line.substring(line.indexOf(": ") + 2),
                                (one, other) -> one,
                                LinkedHashMap::new));
    }

    /** By its batch where that is not the newest, which is named before. */
    private String ofBatch(String batch) {
        boolean newest = history.earlier().filter(e -> e.batch().equals(batch)).isPresent();
        return newest ? "" : " of batch " + batch;
    }

    private static EarlierPaper told(
            Paper paper, PrintedPaper earlier, List<String> wrong, boolean signed) {
        return new EarlierPaper(
                earlier.batch(),
                earlier.day(),
                earlier.pack(),
                wrong,
                signed,
                paper.kind().isSigned()
                        ? earlier.step().map(PaperState.Step::awaited).orElse("")
                        : "");
    }

    /** What an assignment says of earlier claims for the heater, those of the job itself too. */
    private Optional<Correction> correction(Paper paper) {
        if (paper.kind().scheme().isEmpty()) {
            return Optional.empty();
        }
        List<ClaimState> claims =
                history.claims().stream()
                        .filter(c -> c.scheme() == paper.kind().scheme().get())
                        .toList();
        Optional<String> more =
                job.corrects().filter(said -> claims.stream().noneMatch(c -> isName(said, c)));
        return claims.isEmpty() && more.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Correction(claims.stream().map(EarlierPapers::inWords).toList(), more));
    }

    /** Whether a remark only names the claim or its job: said twice, it reads like two claims. */
    private static boolean isName(String remark, ClaimState claim) {
        return Stream.of(claim.job(), claim.reference())
                .anyMatch(name -> Keys.job(name).equals(Keys.job(remark)));
    }

    private static String became(ClaimState claim) {
        if (claim.failed().isPresent()) {
            return ", " + claim.failed().get().inWords();
        }
        return claim.active() ? claim.lodged() ? ", lodged" : "" : ", withdrawn";
    }

    private static String inWords(ClaimState claim) {
        return claim.reference()
                + " for "
                + claim.certificates()
                + (claim.buyer().isEmpty() ? "" : " to " + claim.buyer())
                + ", of "
                + Days.show(claim.claimedOn())
                + became(claim);
    }
}
