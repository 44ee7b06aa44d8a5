package paperbark.output.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.output.CaseFile;
import paperbark.output.PageMark;
import paperbark.output.Paper;
import paperbark.output.RunLimit;
import paperbark.output.pdf.PackWriter;
import paperbark.output.pdf.SlimPages;

/**
 * Lays out the papers of a job one behind the other and makes one document of them. Safe for use by
 * several threads.
 */
final class PackBinder {
    private final Optional<Path> folder;
    private final Logo logo;
    private final RunLimit limit;

    /**
     * A binder.
     *
     * @param folder the firm's templates, by its real path
     * @param logo the firm's
     * @param limit for the time that a layout may take
     */
    PackBinder(Optional<Path> folder, Logo logo, RunLimit limit) {
        this.folder = folder;
        this.logo = logo;
        this.limit = limit;
    }

    /**
     * The papers as a pack, with what was noticed while they were laid out. What is remembered of
     * other jobs must never cost a job its papers: where it fails, all of them are drawn.
     *
     * @throws RuntimeException when they cannot be laid out; {@link #reason} says why, if anything
     *     can
     */
    Pack bind(CaseFile caseFile, List<PaperMarkup> papers, Inserts inserts, StyleSheet style) {
        try {
            return inTime(() -> bound(caseFile, papers, inserts, style));
        } catch (RuntimeException e) {
            if (reason(e).isPresent() || style.drawn().isEmpty()) {
                throw e;
            }
        }
        List<PaperMarkup> all = papers.stream().map(PaperMarkup::unforeseen).toList();
        return inTime(() -> bound(caseFile, all, inserts, style.drawingAll()));
    }

    private Pack inTime(RunLimit.Work<Pack, RuntimeException> layout) {
        return limit.run(layout, () -> {});
    }

    /**
     * Why a layout was given up, as the end of a sentence that begins with what was laid out; empty
     * where it failed in a way that says nothing to people.
     */
    static Optional<String> reason(RuntimeException failure) {
        boolean told =
                failure instanceof RunLimit.Exceeded
                        || failure instanceof TooManyPages
                        || failure instanceof TextOffPage;
        return told ? Optional.of(failure.getMessage()) : Optional.empty();
    }

    private Pack bound(
            CaseFile caseFile, List<PaperMarkup> papers, Inserts inserts, StyleSheet style) {
        String title = "Papers of job " + caseFile.job().reference();
        ResourceGate gate = new ResourceGate(folder, logo.png());
        try (PDDocument document = new PDDocument()) {
            LaidOut laidOut = Layout.draw(document, title, style, papers, gate);
            List<PaperPages> pages = pages(papers, laidOut.papers(), inserts);
            Conformance claims = inserts.fill(document, pages, papers, laidOut);
            Links.describe(document, pages);
            List<PaperPages> marked = pages.stream().filter(PaperPages::marked).toList();
            mark(document, laidOut.pages(), caseFile, marked);
            laidOut.slim();
            Imprint.of(caseFile, title, claims).stamp(document);
            byte[] pdf = PackWriter.bytes(document);
            List<Finding> refused = new ArrayList<>();
            gate.refused()
                    .forEach(
                            (uri, why) ->
                                    refused.add(
                                            refused(
                                                    TemplateFinder.of(uri, papers),
                                                    uri,
                                                    why,
                                                    caseFile)));
            return new Pack(
                    caseFile, pdf, pages, laidOut.boxes(), laidOut.fills(), claims, refused);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<PaperPages> pages(
            List<PaperMarkup> papers, List<Extent> extents, Inserts inserts) {
        List<PaperPages> pages = new ArrayList<>();
        for (int i = 0; i < papers.size(); i++) {
            Paper paper = papers.get(i).paper();
            Extent at = extents.get(i);
            pages.add(
                    new PaperPages(
                            paper.kind(),
                            at.first() + 1,
                            at.count(),
                            inserts.isMarked(paper.kind()),
                            paper.blockedBy()));
        }
        return pages;
    }

    private static void mark(
            PDDocument document, SlimPages drawn, CaseFile file, List<PaperPages> papers)
            throws IOException {
        for (PaperPages paper : papers) {
            for (int i = 0; i < paper.pageCount(); i++) {
                int page = paper.firstPage() + i;
                PageMark says =
                        PageMark.of(
                                file.job().reference(),
                                paper.kind().folder(),
                                page,
                                file.batch().id());
                new ScanMark(says.text()).draw(drawn, document.getPage(page - 1));
            }
        }
    }

    private static Finding refused(String asker, String uri, String why, CaseFile caseFile) {
        return Finding.of(
                        FindingCode.TEMPLATE_BROKEN,
                        new Place.InTemplate(asker, 0, 0),
                        "It asks for "
                                + (uri.length() > 80 ? uri.substring(0, 80) + "..." : uri)
                                + ", "
                                + why
                                + ".",
                        "Copy a file of ordinary size into the template folder and name it without"
                                + " a folder.")
                .as(Severity.CHECK)
                .seeing(uri)
                .forJob(caseFile.job().reference());
    }
}
