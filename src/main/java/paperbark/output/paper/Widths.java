package paperbark.output.paper;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.extend.FontContext;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.pdfboxout.PdfBoxFSFont;
import com.openhtmltopdf.pdfboxout.PdfBoxFontResolver.FontDescription;
import com.openhtmltopdf.pdfboxout.PdfBoxTextRenderer;
import com.openhtmltopdf.render.FSFont;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Measures each string in each size once, for all documents: they share the typeface, and most of
 * the words. Safe for use by several threads.
 */
final class Widths extends PdfBoxTextRenderer {
    // A pack measures some 4,000 strings; most are those of the templates.
    private static final int MOST = 40_000;

    private static final Map<Key, Integer> KNOWN = new ConcurrentHashMap<>();

    private record Key(int weight, IdentValue slant, float size, String text) {}

    /** Has a layout that is about to begin measure so. */
    static void over(SharedContext context) {
        context.setTextRenderer(new Widths());
    }

    @Override
    public int getWidth(FontContext context, FSFont font, String text) {
        List<FontDescription> fonts = ((PdfBoxFSFont) font).getFontDescriptions();
        if (fonts == null || fonts.isEmpty()) {
            return super.getWidth(context, font, text);
        }
        FontDescription first = fonts.get(0);
        Key key = new Key(first.getWeight(), first.getStyle(), font.getSize2D(), text);
        Integer known = KNOWN.get(key);
        if (known != null) {
            return known;
        }
        int width = super.getWidth(context, font, text);
        if (KNOWN.size() >= MOST) {
            KNOWN.clear();
        }
        KNOWN.put(key, width);
        return width;
    }
}
