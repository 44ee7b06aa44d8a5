package paperbark.output.paper;

import com.openhtmltopdf.context.StyleReference;
import com.openhtmltopdf.css.newmatch.CascadedStyle;
import com.openhtmltopdf.css.newmatch.PageInfo;
import com.openhtmltopdf.css.parser.CSSPrimitiveValue;
import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CalculatedStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The styles of a document, which the layout asks for at every element and every page: the one
 * place at which a layout without end can be stopped before it fills the memory.
 */
final class WatchedStyles extends StyleReference {
    private final StyleReference styles;
    private final int mostPages;
    private final int mostOfAPaper;
    private int pages;

    private WatchedStyles(StyleReference styles, int papers, int mostOfAPaper) {
        super(null);
        this.styles = styles;
        this.mostOfAPaper = mostOfAPaper;
        // The library asks several times for each page, and each paper may have a blank back.
        this.mostPages = 10 * papers * (mostOfAPaper + 1);
    }

    /** Watches a layout that is about to begin. */
    static void over(PdfBoxRenderer renderer, int papers, int mostOfAPaper) {
        renderer.getSharedContext()
                .setCss(
                        new WatchedStyles(
                                renderer.getSharedContext().getCss(), papers, mostOfAPaper));
    }

    private static void stopIfGivenUp() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("given up");
        }
    }

    @Override
    public PageInfo getPageStyle(String pageName, String pseudoPage) {
        stopIfGivenUp();
        if (++pages > mostPages) {
            throw new TooManyPages(mostOfAPaper);
        }
        return styles.getPageStyle(pageName, pseudoPage);
    }

    @Override
    public CascadedStyle getCascadedStyle(Element element, boolean restyle) {
        stopIfGivenUp();
        return styles.getCascadedStyle(element, restyle);
    }

    @Override
    public CascadedStyle getPseudoElementStyle(Node node, String pseudoElement) {
        return styles.getPseudoElementStyle(node, pseudoElement);
    }

    @Override
    public CalculatedStyle getRootElementStyle() {
        return styles.getRootElementStyle();
    }

    @Override
    public boolean isHoverStyled(Element element) {
        return styles.isHoverStyled(element);
    }

    @Override
    @SuppressWarnings("deprecation")
    public Map<String, CSSPrimitiveValue> getCascadedPropertiesMap(Element element) {
        return styles.getCascadedPropertiesMap(element);
    }

    @Override
    public String getCSSForAllDescendants(Element element) {
        return styles.getCSSForAllDescendants(element);
    }

    @Override
    public List<FontFaceRule> getFontFaceRules() {
        return styles.getFontFaceRules();
    }
}
