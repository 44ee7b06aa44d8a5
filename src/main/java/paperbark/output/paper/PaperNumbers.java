package paperbark.output.paper;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.css.value.FontSpecification;
import com.openhtmltopdf.extend.FSObjectDrawer;
import com.openhtmltopdf.extend.FSObjectDrawerFactory;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.render.FSFont;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.Shape;
import java.util.List;
import java.util.Map;
import org.w3c.dom.Element;

/**
 * Prints which page of its paper a page is, e.g. {@code 2 of 3}, where the markup has {@code
 * <object type="page-of-paper"></object>}. The style sheet can count the pages of the whole
 * document alone, so the numbers within a paper are put in when the layout is known.
 */
final class PaperNumbers implements FSObjectDrawerFactory, FSObjectDrawer {
    private static final String TYPE = "page-of-paper";
    // 8.5 points in pixels of 1/96 inch.
    private static final float SIZE_IN_PIXELS = 8.5f * 96 / 72;

    private List<Extent> papers = List.of();

    /** Tells which pages the papers take, before the pages are drawn. */
    void of(List<Extent> laidOut) {
        papers = List.copyOf(laidOut);
    }

    @Override
    public FSObjectDrawer createDrawer(Element element) {
        return isReplacedObject(element) ? this : null;
    }

    @Override
    public boolean isReplacedObject(Element element) {
        return element.getAttribute("type").equals(TYPE);
    }

    @Override
    public Map<Shape, String> drawObject(
            Element element,
            double x,
            double y,
            double width,
            double height,
            OutputDevice device,
            RenderingContext context,
            int dotsPerPixel) {
        papers.stream()
                .filter(p -> p.has(context.getPageNo()))
                .findFirst()
                .ifPresent(
                        p -> {
                            device.setFont(font(context, dotsPerPixel));
                            device.setColor(FSRGBColor.BLACK);
                            context.getTextRenderer()
                                    .drawString(
                                            device,
                                            p.words(context.getPageNo()),
                                            (float) x,
                                            // The text stands on the line of the words before it.
                                            (float) (y + height));
                        });
        return Map.of();
    }

    private static FSFont font(RenderingContext context, int dotsPerPixel) {
        FontSpecification font = new FontSpecification();
        font.families = new String[] {Fonts.FAMILY};
        font.size = SIZE_IN_PIXELS * dotsPerPixel;
        font.fontWeight = IdentValue.NORMAL;
        font.fontStyle = IdentValue.NORMAL;
        font.variant = IdentValue.NORMAL;
        return context.getFont(font);
    }
}
