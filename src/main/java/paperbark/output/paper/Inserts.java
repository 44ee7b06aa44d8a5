package paperbark.output.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.multipdf.PDFMergerUtility;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.w3c.dom.Document;
import paperbark.output.FinishedPaper;
import paperbark.output.Paper;
import paperbark.output.PaperKind;

/**
 * Papers that come as finished pages. Each is laid out as so many blank pages, so that page numbers
 * and bookmarks of the pack come out right; then its own pages take their place.
 */
final class Inserts {
    private static final List<COSName> OF_A_PAGE =
            List.of(
                    COSName.CONTENTS,
                    COSName.RESOURCES,
                    COSName.MEDIA_BOX,
                    COSName.CROP_BOX,
                    COSName.ROTATE,
                    COSName.ANNOTS);

    private final List<FinishedPaper> finished;

    Inserts(List<FinishedPaper> finished) {
        this.finished = List.copyOf(finished);
    }

    /** The blank pages that keep the place of a paper; empty where it is no finished one. */
    Optional<PaperMarkup> blank(Paper paper) {
        return paper.isBlocked() ? Optional.empty() : of(paper.kind()).map(f -> blank(paper, f));
    }

    /** Whether the paper's pages are finished ones. */
    boolean isOf(PaperMarkup paper) {
        return !paper.held() && of(paper.paper().kind()).isPresent();
    }

    /** Whether the scan mark goes onto the pages of the paper. */
    boolean isMarked(PaperKind kind) {
        return of(kind).map(FinishedPaper::marked).orElse(true);
    }

    private Optional<FinishedPaper> of(PaperKind kind) {
        return finished.stream().filter(f -> f.kind() == kind).findFirst();
    }

    private static PaperMarkup blank(Paper paper, FinishedPaper pages) {
        Document content = Markup.blank(pages.pageCount(), idOf(paper.kind()));
        Document running = Markup.empty();
        running.appendChild(running.createElement("div"));
        return new PaperMarkup(paper, running, content, false);
    }

    private static String idOf(PaperKind kind) {
        return "page-" + kind.folder() + "-";
    }

    /**
     * Puts the finished pages where they belong, each as a figure that is told in words.
     *
     * @return what the pack may still claim
     */
    Conformance fill(
            PDDocument document, List<PaperPages> papers, List<PaperMarkup> markup, LaidOut laidOut)
            throws IOException {
        List<Conformance> claims = new ArrayList<>();
        for (int i = 0; i < papers.size(); i++) {
            Optional<FinishedPaper> own = of(papers.get(i).kind());
            if (own.isPresent() && !markup.get(i).held()) {
                List<PDPage> pages = replace(document, papers.get(i), own.get());
                claims.add(ConformanceCheck.of(pages));
                claims.add(tag(document, papers.get(i), pages, laidOut));
            }
        }
        return Conformance.ofAll(claims);
    }

    private static Conformance tag(
            PDDocument document, PaperPages paper, List<PDPage> pages, LaidOut laidOut) {
        try {
            for (int i = 0; i < pages.size(); i++) {
                String words =
                        paper.kind().title()
                                + " on a form that is not ours, page "
                                + new Extent(0, pages.size()).words(i);
                PDStructureElement place =
                        laidOut.elements().apply(idOf(paper.kind()) + i).orElseThrow();
                new FormTags(document, pages.get(i)).put(place, words);
            }
            return Conformance.BOTH;
        } catch (IOException | RuntimeException e) {
            // Content that cannot be read is printed as it is, and nothing is claimed of it.
            return new Conformance(false, false);
        }
    }

    private static List<PDPage> replace(PDDocument document, PaperPages at, FinishedPaper paper)
            throws IOException {
        if (at.pageCount() != paper.pageCount()) {
            throw new IllegalStateException("a place of the wrong size for " + paper.kind());
        }
        int end = document.getNumberOfPages();
        try (PDDocument source = Loader.loadPDF(paper.pdf())) {
            new PDFMergerUtility().appendDocument(document, source);
        }
        List<PDPage> pages = new ArrayList<>();
        for (int i = 0; i < paper.pageCount(); i++) {
            PDPage from = document.getPage(end);
            PDPage to = document.getPage(at.firstPage() - 1 + i);
            replace(from, to);
            document.removePage(end);
            pages.add(to);
        }
        return pages;
    }

    private static void replace(PDPage from, PDPage to) throws IOException {
        COSDictionary place = to.getCOSObject();
        for (COSName name : OF_A_PAGE) {
            place.removeItem(name);
            Optional.ofNullable(from.getCOSObject().getItem(name))
                    .ifPresent(value -> place.setItem(name, value));
        }
        for (PDAnnotation annotation : to.getAnnotations()) {
            annotation.setPage(to);
        }
    }
}
