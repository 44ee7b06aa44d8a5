package paperbark.output.paper;

import com.openhtmltopdf.context.StyleReference;
import com.openhtmltopdf.css.newmatch.CascadedStyle;
import com.openhtmltopdf.css.newmatch.PageInfo;
import com.openhtmltopdf.css.parser.CSSPrimitiveValue;
import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CalculatedStyle;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.NullUserInterface;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The styles of a document, which the layout asks for at every element and every page: the one
 * place at which a layout without end can be stopped before it fills the memory.
 */
final class WatchedStyles extends StyleReference {
    private final StyleReference styles;
    private final SharedContext context;
    private final Document document;
    private final StyleSheet sheet;
    private final Map<Element, Integer> kinds = new IdentityHashMap<>();
    private final int mostPages;
    private final int mostOfAPaper;
    private int pages;
    private boolean matching;

    private WatchedStyles(
            SharedContext context,
            Document document,
            StyleSheet sheet,
            int papers,
            int mostOfAPaper) {
        super(null);
        this.styles = context.getCss();
        this.context = context;
        this.document = document;
        this.sheet = sheet;
        this.mostOfAPaper = mostOfAPaper;
        this.matching = sheet.memory().isEmpty();
        // The library asks several times for each page, and each paper may have a blank back.
        this.mostPages = 10 * papers * (mostOfAPaper + 1);
    }

    /**
     * Watches a layout that is about to begin.
     *
     * @param document holds the sheet only where the sheet remembers nothing
     */
    static WatchedStyles over(
            PdfBoxRenderer renderer,
            Document document,
            StyleSheet sheet,
            int papers,
            int mostOfAPaper) {
        SharedContext context = renderer.getSharedContext();
        WatchedStyles styles = new WatchedStyles(context, document, sheet, papers, mostOfAPaper);
        context.setCss(styles);
        return styles;
    }

    /** The sheet is parsed and matched only for elements of which nothing is remembered. */
    private StyleReference matched() {
        if (!matching) {
            matching = true;
            sheet.putInto(document);
            styles.setDocumentContext(
                    context, context.getNamespaceHandler(), document, new NullUserInterface());
        }
        return styles;
    }

    /** A number for all elements that are alike; 0 where that is not known. */
    int kindOf(Element element) {
        Integer known = kinds.get(element);
        if (known == null) {
            int parent = element.getParentNode() instanceof Element e ? kindOf(e) : 0;
            boolean lost = parent == 0 && element.getParentNode() instanceof Element;
            known = lost ? 0 : sheet.memory().orElseThrow().kindOf(parent, element);
            kinds.put(element, known);
        }
        return known;
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
        return sheet.memory()
                .map(
                        m ->
                                m.page(
                                        pageName,
                                        pseudoPage,
                                        () -> matched().getPageStyle(pageName, pseudoPage)))
                .orElseGet(() -> matched().getPageStyle(pageName, pseudoPage));
    }

    @Override
    public CascadedStyle getCascadedStyle(Element element, boolean restyle) {
        stopIfGivenUp();
        if (element == null || sheet.memory().isEmpty()) {
            return matched().getCascadedStyle(element, restyle);
        }
        return sheet.memory()
                .get()
                .style(kindOf(element), () -> matched().getCascadedStyle(element, restyle));
    }

    @Override
    public CascadedStyle getPseudoElementStyle(Node node, String pseudoElement) {
        Node of = node instanceof Element ? node : node.getParentNode();
        if (sheet.memory().isEmpty()) {
            return matched().getPseudoElementStyle(of, pseudoElement);
        }
        return sheet.memory()
                .get()
                .part(
                        kindOf((Element) of),
                        pseudoElement,
                        () -> matched().getPseudoElementStyle(of, pseudoElement));
    }

    @Override
    public CalculatedStyle getRootElementStyle() {
        return styles.getRootElementStyle();
    }

    @Override
    public boolean isHoverStyled(Element element) {
        return sheet.memory().isEmpty() && styles.isHoverStyled(element);
    }

    @Override
    @SuppressWarnings("deprecation")
    public Map<String, CSSPrimitiveValue> getCascadedPropertiesMap(Element element) {
        return matched().getCascadedPropertiesMap(element);
    }

    @Override
    public String getCSSForAllDescendants(Element element) {
        return matched().getCSSForAllDescendants(element);
    }

    @Override
    public List<FontFaceRule> getFontFaceRules() {
        return styles.getFontFaceRules();
    }
}
