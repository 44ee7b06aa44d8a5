package paperbark.output.paper;

import com.openhtmltopdf.layout.LayoutContext;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.PageBox;
import com.openhtmltopdf.render.RenderingContext;
import java.util.List;

/** A page whose head and foot are known, so that nothing of its own is drawn. */
final class BarePage extends PageBox {

    /** Puts such pages in place of those of which all is known. */
    static void replace(PdfBoxRenderer renderer, PageHeads heads) {
        LayoutContext context = renderer.getSharedContext().newLayoutContextInstance();
        List<PageBox> pages = renderer.getRootBox().getLayer().getPages();
        for (int i = 0; i < pages.size(); i++) {
            if (heads.isKnown(i)) {
                pages.set(i, like(pages.get(i), context));
            }
        }
    }

    private static BarePage like(PageBox page, LayoutContext context) {
        BarePage bare = new BarePage();
        bare.setPageInfo(page.getPageInfo());
        bare.setStyle(page.getStyle());
        bare.setOuterPageWidth(page.getOuterPageWidth());
        bare.setTopAndBottom(context, page.getTop());
        bare.setPageNo(page.getPageNo());
        return bare;
    }

    @Override
    public void paintBackground(RenderingContext context, int clearance, short mode) {
        // It is part of what is known.
    }

    @Override
    public void paintBorder(RenderingContext context, int clearance, short mode) {
        // It is part of what is known.
    }

    @Override
    public void paintMarginAreas(RenderingContext context, int clearance, short mode) {
        // They are what is known.
    }
}
