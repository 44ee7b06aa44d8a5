package paperbark.office;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.ledger.PaperState;
import paperbark.ledger.ScanBook;
import paperbark.scan.PrintedPage;
import paperbark.scan.ReturnedPaper;
import paperbark.scan.SeenPage;

/** What is to be said of the papers in a pile, beside what the ledger knows of them. */
final class ScanFindings {
    private final String file;
    private final ScanBook book;
    private final List<Finding> findings = new ArrayList<>();

    ScanFindings(String file, ScanBook book) {
        this.file = file;
        this.book = book;
    }

    List<Finding> all() {
        return List.copyOf(findings);
    }

    /** Of a page that nobody can place, which lies under a number to be placed by a person. */
    void unplaced(SeenPage page, String number, Optional<PrintedPage> maybe) {
        check(
                FindingCode.PAGE_UNPLACED,
                "Page "
                        + page.number()
                        + " belongs to no paper for certain. "
                        + page.why()
                        + maybe.map(ScanFindings::maybe).orElse(""),
                "Look at signed/to-place/"
                        + number
                        + ", and place it with file-page; a page that is not yours delete.",
                Optional.empty());
    }

    /** Of a paper, before its pages are entered. */
    void of(ReturnedPaper paper) {
        Optional<PaperState> before =
                book.papers(paper.job()).stream()
                        .filter(
                                s ->
                                        s.version() == paper.version()
                                                && s.kind().equals(paper.kind()))
                        .findFirst();
        if (before.isPresent()) {
            old(paper, before.get());
        }
        Set<Integer> earlier = before.map(PaperState::back).orElse(Set.of());
        twice(paper, earlier);
        // Of a job that was called off nothing is wanted any more.
        boolean calledOff = before.filter(PaperState::withdrawn).isPresent();
        if (paper.paper().signed() && !calledOff) {
            missing(paper, earlier);
            blank(paper);
        }
    }

    private static String maybe(PrintedPage place) {
        return " By the pages around it, it may be page "
                + place.page()
                + " of the "
                + place.paper().title()
                + " of job "
                + place.job()
                + ".";
    }

    private void old(ReturnedPaper paper, PaperState state) {
        if (state.withdrawn()) {
            outdated(
                    paper,
                    "the job was called off or replaced since.",
                    "Keep it, and tell whoever sent it that it counts no longer.");
        } else if (state.bookedAgain()) {
            outdated(
                    paper,
                    "the job is only booked again since.",
                    "Keep it, and look whether the job is installed: its register says it is not.");
        } else if (state.dropped()) {
            outdated(
                    paper,
                    "since batch "
                            + state.takenBack().orElse("")
                            + " the job has no such paper any more.",
                    "Keep it, and look at the job's stage and claims: they ask for no such paper.");
        } else if (state.replaced()) {
            outdated(
                    paper,
                    "a later batch printed it anew.",
                    "Have the newer one signed; this one counts no longer.");
        } else {
            state.takenBack()
                    .ifPresent(
                            later ->
                                    outdated(
                                            paper,
                                            "what it says changed with batch "
                                                    + later
                                                    + ", where the new one is held.",
                                            "Have the new one signed once it is printed; this one"
                                                    + " counts no longer."));
        }
    }

    private void outdated(ReturnedPaper paper, String why, String remedy) {
        check(
                FindingCode.PAPER_OUTDATED,
                named(paper) + " is of batch " + paper.batch() + ", and " + why,
                remedy,
                Optional.of(paper.job()));
    }

    private void twice(ReturnedPaper paper, Set<Integer> earlier) {
        Set<Integer> seen = new HashSet<>(earlier);
        Set<Integer> twice = new TreeSet<>();
        for (SeenPage page : paper.pages()) {
            int number = page.place().orElseThrow().page();
            if (!seen.add(number)) {
                twice.add(number);
            }
        }
        if (!twice.isEmpty()) {
            findings.add(
                    Finding.of(
                                    FindingCode.PAGE_TWICE,
                                    new Place.InFile(file),
                                    named(paper)
                                            + ": "
                                            + pages(twice)
                                            + " came more than once; each is kept.",
                                    "")
                            .forJob(paper.job()));
        }
    }

    private void missing(ReturnedPaper paper, Set<Integer> earlier) {
        Set<Integer> missing = new TreeSet<>();
        for (int page = 1; page <= paper.paper().pages(); page++) {
            missing.add(page);
        }
        missing.removeAll(earlier);
        missing.removeAll(paper.here());
        if (!missing.isEmpty()) {
            check(
                    FindingCode.PAPER_INCOMPLETE,
                    named(paper)
                            + ": "
                            + pages(missing)
                            + " of "
                            + paper.paper().pages()
                            + " did not come.",
                    "Look for it among the papers that came, and scan it.",
                    Optional.of(paper.job()));
        }
    }

    private void blank(ReturnedPaper paper) {
        for (SeenPage page : paper.pages()) {
            if (!page.blank().isEmpty()) {
                check(
                        FindingCode.BOX_BLANK,
                        named(paper)
                                + ", page "
                                + page.place().orElseThrow().page()
                                + ": nothing seems to be written in "
                                + page.blank().stream()
                                        .map(b -> b.box().who() + ", " + b.box().what())
                                        .collect(Collectors.joining("; "))
                                + ".",
                        "Look at the page, and have it signed if the box is empty.",
                        Optional.of(paper.job()));
            }
        }
    }

    private void check(FindingCode code, String fact, String remedy, Optional<String> job) {
        Finding finding = Finding.of(code, new Place.InFile(file), fact, remedy);
        findings.add(job.map(finding::forJob).orElse(finding));
    }

    private static String named(ReturnedPaper paper) {
        return paper.paper().title() + " of job " + paper.job();
    }

    private static String pages(Set<Integer> pages) {
        String numbers = pages.stream().map(String::valueOf).collect(Collectors.joining(", "));
        return (pages.size() == 1 ? "page " : "pages ") + numbers;
    }
}
