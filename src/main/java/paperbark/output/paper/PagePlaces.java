package paperbark.output.paper;

import com.openhtmltopdf.css.style.CalculatedStyle;
import com.openhtmltopdf.layout.LayoutContext;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import java.util.List;

/** Tells on which page of a document that is laid out a box lies, and where on it. */
final class PagePlaces {
    private static final float TENTHS_OF_MM_PER_INCH = 254f;
    private static final int PIXELS_PER_INCH = 96;

    private final LayoutContext context;
    private final List<PageBox> pages;
    private final float dotsPerTenth;

    PagePlaces(PdfBoxRenderer renderer) {
        context = renderer.getSharedContext().newLayoutContextInstance();
        pages = renderer.getRootBox().getLayer().getPages();
        dotsPerTenth =
                renderer.getSharedContext().getDotsPerPixel()
                        * PIXELS_PER_INCH
                        / TENTHS_OF_MM_PER_INCH;
    }

    /**
     * A place. Lengths in tenths of a millimetre from the top left corner of the page.
     *
     * @param page the page, from 1
     */
    record Spot(int page, int left, int top, int width, int height) {
        /** With what lies to the right of it on the same line. */
        Spot upTo(Spot last) {
            return new Spot(page, left, top, last.left + last.width - left, height);
        }
    }

    /** Where the box lies. */
    Spot of(Box box) {
        int number = 0;
        while (number < pages.size() - 1 && pages.get(number).getBottom() <= box.getAbsY()) {
            number++;
        }
        PageBox page = pages.get(number);
        int left = page.getMarginBorderPadding(context, CalculatedStyle.LEFT) + box.getAbsX();
        int top =
                page.getMarginBorderPadding(context, CalculatedStyle.TOP)
                        + box.getAbsY()
                        - page.getTop();
        return new Spot(
                number + 1,
                tenths(left),
                tenths(top),
                tenths(box.getWidth()),
                tenths(box.getHeight()));
    }

    private int tenths(int dots) {
        return Math.round(dots / dotsPerTenth);
    }
}
