package paperbark.output.paper;

import com.openhtmltopdf.css.style.CalculatedStyle;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.layout.Layer;
import com.openhtmltopdf.layout.LayoutContext;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineLayoutBox;
import com.openhtmltopdf.render.InlineText;
import com.openhtmltopdf.render.LineBox;
import com.openhtmltopdf.render.PageBox;
import java.util.List;

/** A paper has text where no page is, so that nobody would see it. */
final class TextOffPage extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private TextOffPage() {
        super("has text that falls off its pages");
    }

    /**
     * The sheets of all papers, one below the other, as far as the widest of them reaches.
     *
     * @param left their left edge; less than 0, where the margin ends
     * @param right their right edge
     * @param bottom the end of the last page
     */
    private record Sheets(int left, int right, int bottom) {
        static Sheets of(List<PageBox> pages, CssContext context) {
            int left = 0;
            int right = 0;
            for (PageBox page : pages) {
                int margin = page.getMarginBorderPadding(context, CalculatedStyle.LEFT);
                left = Math.min(left, -margin);
                right = Math.max(right, page.getWidth(context) - margin);
            }
            return new Sheets(left, right, pages.get(pages.size() - 1).getBottom());
        }
    }

    /**
     * Goes through all lines of text.
     *
     * @throws TextOffPage for a line above the first page or below the last, and for text that is
     *     wholly to the left or right of the widest sheet
     */
    static void refuse(PdfBoxRenderer renderer) {
        LayoutContext context = renderer.getSharedContext().newLayoutContextInstance();
        Layer layer = renderer.getRootBox().getLayer();
        refuse(layer, Sheets.of(layer.getPages(), context));
    }

    /** What is placed by itself hangs on a layer, and on no box. */
    private static void refuse(Layer layer, Sheets sheets) {
        refuse(layer.getMaster(), sheets);
        for (Layer above : layer.getChildren()) {
            refuse(above, sheets);
        }
    }

    private static void refuse(Box box, Sheets sheets) {
        if (box instanceof LineBox && (box.getAbsY() < 0 || box.getAbsY() >= sheets.bottom())) {
            throw new TextOffPage();
        }
        for (int i = 0; i < box.getChildCount(); i++) {
            refuse(box.getChild(i), sheets);
        }
        if (box instanceof InlineLayoutBox inline) {
            for (Object child : inline.getInlineChildren()) {
                if (child instanceof InlineText text) {
                    refuse(inline.getAbsX() + text.getX(), text, sheets);
                } else if (child instanceof Box within) {
                    refuse(within, sheets);
                }
            }
        }
    }

    private static void refuse(int from, InlineText text, Sheets sheets) {
        boolean off = from >= sheets.right() || from + text.getWidth() <= sheets.left();
        if (off && !text.getTextExportText().isBlank()) {
            throw new TextOffPage();
        }
    }
}
