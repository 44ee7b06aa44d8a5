package paperbark.output.paper;

import com.openhtmltopdf.layout.Layer;
import com.openhtmltopdf.pdfboxout.PdfBoxAccessibilityHelper;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import paperbark.output.pdf.PageHead;
import paperbark.output.pdf.PaperPart;
import paperbark.output.pdf.Sketch;
import paperbark.output.pdf.SlimPages;

/**
 * Which papers of a pack are drawn, and which are shown as they were drawn for another job, with
 * their own words; of those that are drawn, what is to be remembered.
 */
final class Redrawing {
    private static final PaperShape.Finder UNKNOWN = new PaperShape.Finder(Map.of(), Set.of());

    private final PDDocument document;
    private final PdfBoxRenderer renderer;
    private final List<PaperMarkup> papers;
    private final List<Extent> extents;
    private final Optional<PaperMemory> memory;
    private final DrawnText text;
    private final List<Optional<PaperShape>> shapes = new ArrayList<>();
    private final WatchedStyles styles;
    private final PageHeads heads;

    private Redrawing(
            PDDocument document,
            PdfBoxRenderer renderer,
            List<PaperMarkup> papers,
            List<Extent> extents,
            WatchedStyles styles,
            PageHeads heads,
            Optional<PaperMemory> memory) {
        this.heads = heads;
        this.document = document;
        this.renderer = renderer;
        this.papers = papers;
        this.extents = extents;
        this.styles = styles;
        this.memory = memory;
        text = new DrawnText(renderer.getSharedContext().getTextRenderer());
    }

    /**
     * Looks at papers that are laid out, and takes those off the pages that need not be drawn.
     *
     * @param styles of the papers
     * @param heads of their pages
     * @param memory of papers that were drawn; empty where none is kept
     */
    static Redrawing of(
            PDDocument document,
            PdfBoxRenderer renderer,
            List<PaperMarkup> papers,
            List<Extent> extents,
            WatchedStyles styles,
            PageHeads heads,
            Optional<PaperMemory> memory) {
        Redrawing redrawing =
                new Redrawing(document, renderer, papers, extents, styles, heads, memory);
        redrawing.look();
        return redrawing;
    }

    private void look() {
        Layer root = renderer.getRootBox().getLayer();
        // What is placed by itself belongs to no paper.
        boolean plain = root.getChildren().isEmpty() && root.getFloats().isEmpty();
        for (int i = 0; i < papers.size(); i++) {
            PaperMarkup paper = papers.get(i);
            boolean asked =
                    plain
                            && paper.ready().isEmpty()
                            && paper.wording().isPresent()
                            && memory.isPresent()
                            && !memory.get().draws(nameOf(paper));
            shapes.add(asked ? shape(i) : Optional.empty());
            if (paper.ready().isPresent()) {
                leaf(i).removeAllChildren();
            }
        }
        if (memory.isPresent()) {
            renderer.getSharedContext().setTextRenderer(text);
        }
    }

    private Optional<PaperShape> shape(int paper) {
        return PaperShape.of(
                leaf(paper),
                top(paper),
                styles,
                renderer.getSharedContext().newLayoutContextInstance());
    }

    private int top(int paper) {
        int first = extents.get(paper).first();
        return renderer.getRootBox().getLayer().getPages().get(first).getTop();
    }

    private Box leaf(int paper) {
        return renderer.getSharedContext().getBoxById(PackDocument.LEAF + paper);
    }

    /** The papers on the pages of the document, once they are drawn. */
    List<PaperPart> parts() {
        List<PaperPart> parts = new ArrayList<>();
        for (int i = 0; i < papers.size(); i++) {
            Extent extent = extents.get(i);
            Optional<Sketch> sketch = papers.get(i).ready().map(ReadyPaper::sketch);
            parts.add(
                    new PaperPart(
                            extent.first(),
                            extent.count(),
                            sketch.isPresent() ? Optional.empty() : element(i),
                            sketch,
                            shapes.get(i).map(s -> strings(extent, s)).orElse(List.of())));
        }
        return parts;
    }

    /** Head and foot of each page, once the pages are drawn. */
    List<PageHead> heads() {
        return heads.of(page -> strings(page, UNKNOWN));
    }

    private Optional<COSDictionary> element(int paper) {
        PDStructureElement element =
                PdfBoxAccessibilityHelper.getStructualElementForBox(leaf(paper));
        return Optional.ofNullable(element).map(PDStructureElement::getCOSObject);
    }

    private List<List<PaperPart.Drawn>> strings(Extent extent, PaperShape shape) {
        PaperShape.Finder finder = shape.finder();
        List<List<PaperPart.Drawn>> all = new ArrayList<>();
        for (int page = extent.first(); page < extent.end(); page++) {
            all.add(strings(page, finder));
        }
        return all;
    }

    private List<PaperPart.Drawn> strings(int page, PaperShape.Finder finder) {
        return text.on(document.getPage(page).getCOSObject()).stream()
                .map(piece -> drawn(piece, finder))
                .toList();
    }

    private static PaperPart.Drawn drawn(DrawnText.Piece piece, PaperShape.Finder finder) {
        int run =
                piece.plain() ? finder.find(piece.text(), piece.x(), piece.y()) : PaperPart.UNKNOWN;
        return new PaperPart.Drawn(run, new Sketch.Words(piece.text(), (int) piece.x()));
    }

    /**
     * Remembers the papers that were drawn.
     *
     * @param drawn what could be taken of them
     * @param boxes to write in, of all papers
     * @param fills that ask for a fact, of all papers
     */
    void learn(SlimPages.Slimmed drawn, List<SignBox> boxes, List<FillBox> fills) {
        heads.learn(drawn.frames());
        List<Optional<Sketch>> sketches = drawn.sketches();
        for (int i = 0; i < sketches.size(); i++) {
            boolean last = i == papers.size() - 1;
            // Neither what a paper takes of the next page is told by its shape, nor that the first
            // begins without a break.
            boolean apart =
                    i > 0
                            && PaperTops.isOnTop(renderer, papers.get(i), extents.get(i))
                            && (last
                                    || PaperTops.isOnTop(
                                            renderer, papers.get(i + 1), extents.get(i + 1)));
            if (sketches.get(i).isPresent() && apart) {
                Extent extent = extents.get(i);
                learn(
                        i,
                        new ReadyPaper(
                                extent.count(),
                                sketches.get(i).get(),
                                SignBox.within(boxes, extent),
                                FillBox.within(fills, extent),
                                !last));
            }
        }
    }

    private void learn(int i, ReadyPaper drawn) {
        PaperMarkup paper = papers.get(i);
        PaperMemory known = memory.orElseThrow();
        if (paper.foreseen().isPresent()) {
            known.compare(nameOf(paper), paper.foreseen().get().paper(), drawn);
        } else {
            known.learn(
                    nameOf(paper),
                    paper.wording().orElseThrow(),
                    shapes.get(i).orElseThrow(),
                    drawn,
                    leaf(i),
                    top(i),
                    styles::kindOf);
        }
    }

    private static String nameOf(PaperMarkup paper) {
        return paper.held() ? PaperWriter.HELD : paper.template();
    }
}
