package paperbark.output.paper;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import java.util.List;

/**
 * Whether papers begin at the top of a page. Where the space below a paper reaches over the end of
 * its last page, the layout takes the rest of it off the page of the next.
 */
final class PaperTops {
    private PaperTops() {}

    /** Whether a paper begins at the top of its first page. */
    static boolean isOnTop(PdfBoxRenderer renderer, PaperMarkup paper, Extent at) {
        Box mark = renderer.getSharedContext().getBoxById(PackDocument.markOf(paper));
        return mark.getAbsY()
                == renderer.getRootBox().getLayer().getPages().get(at.first()).getTop();
    }

    /**
     * Refuses to show papers that the layout would have begun elsewhere.
     *
     * @throws IllegalStateException where there is one
     */
    static void refuse(PdfBoxRenderer renderer, List<PaperMarkup> papers, List<Extent> extents) {
        for (int i = 0; i < papers.size(); i++) {
            if (papers.get(i).ready().isPresent()
                    && !isOnTop(renderer, papers.get(i), extents.get(i))) {
                throw new IllegalStateException("a known paper does not begin at the top");
            }
        }
    }
}
