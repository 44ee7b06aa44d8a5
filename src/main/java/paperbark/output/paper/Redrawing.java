package paperbark.output.paper;

import com.openhtmltopdf.layout.Layer;
import com.openhtmltopdf.layout.LayoutContext;
import com.openhtmltopdf.pdfboxout.PdfBoxAccessibilityHelper;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import paperbark.output.pdf.PaperPart;
import paperbark.output.pdf.Sketch;

/**
 * Which papers of a pack are drawn, and which are shown as they were drawn for another job, with
 * their own words. All of them are laid out, so that a paper is only taken for another where every
 * box of it has the same style and place.
 */
final class Redrawing {
    private final PDDocument document;
    private final PdfBoxRenderer renderer;
    private final List<PaperMarkup> papers;
    private final List<Extent> extents;
    private final Optional<PaperMemory> memory;
    private final DrawnText text;
    private final List<Optional<PaperShape>> shapes = new ArrayList<>();
    private final List<Optional<Sketch>> known = new ArrayList<>();

    private Redrawing(
            PDDocument document,
            PdfBoxRenderer renderer,
            List<PaperMarkup> papers,
            List<Extent> extents,
            Optional<PaperMemory> memory) {
        this.document = document;
        this.renderer = renderer;
        this.papers = papers;
        this.extents = extents;
        this.memory = memory;
        text = new DrawnText(renderer.getSharedContext().getTextRenderer());
    }

    /**
     * Looks at papers that are laid out, and takes those off the pages that need not be drawn.
     *
     * @param styles of the papers
     * @param memory of papers that were drawn; empty where none is kept
     */
    static Redrawing of(
            PDDocument document,
            PdfBoxRenderer renderer,
            List<PaperMarkup> papers,
            List<Extent> extents,
            WatchedStyles styles,
            Optional<PaperMemory> memory) {
        Redrawing redrawing = new Redrawing(document, renderer, papers, extents, memory);
        redrawing.look(styles);
        return redrawing;
    }

    private void look(WatchedStyles styles) {
        Layer root = renderer.getRootBox().getLayer();
        // What is placed by itself belongs to no paper.
        boolean plain = root.getChildren().isEmpty() && root.getFloats().isEmpty();
        for (int i = 0; i < papers.size(); i++) {
            String template = nameOf(papers.get(i));
            boolean asked = plain && memory.isPresent() && !memory.get().draws(template);
            Optional<PaperShape> shape = asked ? shape(i, styles) : Optional.empty();
            Optional<Sketch> sketch = shape.flatMap(s -> known(template, s));
            shapes.add(shape);
            known.add(sketch);
            if (sketch.isPresent()) {
                leaf(i).removeAllChildren();
            }
        }
        if (shapes.stream().anyMatch(Optional::isPresent)) {
            renderer.getSharedContext().setTextRenderer(text);
        }
    }

    private Optional<PaperShape> shape(int paper, WatchedStyles styles) {
        List<PageBox> pages = renderer.getRootBox().getLayer().getPages();
        Extent extent = extents.get(paper);
        LayoutContext context = renderer.getSharedContext().newLayoutContextInstance();
        return PaperShape.of(
                leaf(paper), pages.subList(extent.first(), extent.end()), styles, context);
    }

    private Optional<Sketch> known(String template, PaperShape shape) {
        List<Sketch.Words> words = shape.words();
        return Sketch.canShow(words)
                ? memory.orElseThrow().proven(template, shape).map(sketch -> sketch.with(words))
                : Optional.empty();
    }

    private Box leaf(int paper) {
        return renderer.getSharedContext().getBoxById(PackDocument.LEAF + paper);
    }

    private static String nameOf(PaperMarkup paper) {
        return paper.held() ? PaperWriter.HELD : paper.template();
    }

    /** The papers on the pages of the document, once they are drawn. */
    List<PaperPart> parts() {
        List<PaperPart> parts = new ArrayList<>();
        for (int i = 0; i < papers.size(); i++) {
            Extent extent = extents.get(i);
            Optional<Sketch> sketch = known.get(i);
            List<List<PaperPart.Drawn>> wanted =
                    sketch.isPresent()
                            ? List.of()
                            : shapes.get(i).map(s -> strings(extent, s)).orElse(List.of());
            parts.add(
                    new PaperPart(
                            extent.first(),
                            extent.count(),
                            sketch.isPresent() ? Optional.empty() : element(i),
                            sketch,
                            wanted));
        }
        return parts;
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
            all.add(
                    text.on(document.getPage(page).getCOSObject()).stream()
                            .map(piece -> drawn(piece, finder))
                            .toList());
        }
        return all;
    }

    private static PaperPart.Drawn drawn(DrawnText.Piece piece, PaperShape.Finder finder) {
        int run =
                piece.plain() ? finder.find(piece.text(), piece.x(), piece.y()) : PaperPart.UNKNOWN;
        return new PaperPart.Drawn(run, new Sketch.Words(piece.text(), (int) piece.x()));
    }

    /** Remembers the papers that were drawn. */
    void learn(List<Optional<Sketch>> sketches) {
        for (int i = 0; i < sketches.size(); i++) {
            PaperMarkup paper = papers.get(i);
            PaperShape shape = shapes.get(i).orElse(null);
            sketches.get(i)
                    .ifPresent(sketch -> memory.orElseThrow().learn(nameOf(paper), shape, sketch));
        }
    }
}
