package paperbark.output.paper;

import com.openhtmltopdf.layout.Layer;
import com.openhtmltopdf.layout.LayoutContext;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The pages of papers at the end of a pack of which all is known, head and foot too: they are not
 * laid out, and are added once the papers before them are.
 */
final class LeanPages {
    // Of a paper that is not laid out yet.
    private static final int LIKELY_PAGES = 2;

    private LeanPages() {}

    /**
     * The first paper from which on all is likely to be known; as many as there are if none is.
     *
     * @param memory of heads and feet; empty where none is kept
     */
    static int from(List<PaperMarkup> papers, Optional<FrameMemory> memory) {
        int from = papers.size();
        while (from > 0
                && papers.get(from - 1).ready().isPresent()
                && papers.get(from - 1).head().isPresent()) {
            from--;
        }
        // Something has to be laid out, for the library to make a document of.
        if (from == 0 || from == papers.size() || memory.isEmpty()) {
            return papers.size();
        }
        List<Extent> likely = new ArrayList<>();
        int pages = 0;
        for (int i = 0; i < papers.size(); i++) {
            int count = papers.get(i).ready().map(ReadyPaper::pages).orElse(LIKELY_PAGES);
            pages += isBlankBefore(papers, i, pages) ? 1 : 0;
            likely.add(new Extent(pages, count));
            pages += count;
        }
        PageHeads heads = new PageHeads(papers, likely, pages, memory);
        boolean known = likely.subList(from, papers.size()).stream().allMatch(heads::isKnown);
        return known ? from : papers.size();
    }

    /** Whether the back of the sheet before stays blank. */
    private static boolean isBlankBefore(List<PaperMarkup> papers, int paper, int pages) {
        return paper > 0
                && pages % 2 == 1
                && !PackDocument.mayShareASheet(papers.get(paper - 1), papers.get(paper));
    }

    /**
     * Takes pages away that only boxes without height began.
     *
     * @return false where the space below the paper before would take room of the next page
     */
    static boolean trim(PdfBoxRenderer renderer, List<PaperMarkup> papers, int from) {
        if (from == papers.size()) {
            return true;
        }
        Box last = renderer.getSharedContext().getBoxById(PackDocument.LEAF + (from - 1));
        Box next = renderer.getSharedContext().getBoxById(PackDocument.LEAF + from);
        List<PageBox> pages = renderer.getRootBox().getLayer().getPages();
        pages.removeIf(page -> page.getTop() >= last.getAbsY() + last.getHeight());
        return next.getAbsY() <= pages.get(pages.size() - 1).getBottom();
    }

    /** Adds the pages of the papers from one on, and has their boxes stand there. */
    static List<Extent> add(PdfBoxRenderer renderer, List<PaperMarkup> papers, int from) {
        SharedContext shared = renderer.getSharedContext();
        LayoutContext context = shared.newLayoutContextInstance();
        Layer layer = renderer.getRootBox().getLayer();
        List<PageBox> pages = layer.getPages();
        List<Extent> extents = new ArrayList<>();
        for (int i = from; i < papers.size(); i++) {
            if (isBlankBefore(papers, i, pages.size())) {
                layer.addPage(context);
            }
            int first = pages.size();
            int count = papers.get(i).ready().orElseThrow().pages();
            for (int page = 0; page < count; page++) {
                layer.addPage(context);
            }
            Box leaf = shared.getBoxById(PackDocument.LEAF + i);
            Box mark = shared.getBoxById(PackDocument.markOf(papers.get(i)));
            leaf.setAbsY(pages.get(first).getTop());
            mark.setAbsY(pages.get(first).getTop());
            extents.add(new Extent(first, count));
        }
        return extents;
    }
}
