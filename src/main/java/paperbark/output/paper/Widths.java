package paperbark.output.paper;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.extend.FontContext;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.pdfboxout.PdfBoxFSFont;
import com.openhtmltopdf.pdfboxout.PdfBoxFontResolver.FontDescription;
import com.openhtmltopdf.pdfboxout.PdfBoxTextRenderer;
import com.openhtmltopdf.render.FSFont;
import com.openhtmltopdf.util.OpenUtil;
import java.util.List;
import paperbark.output.LetterWidths;

/**
 * Measures strings by the letters of the one typeface, without a font of the document. What is
 * measured so is the same to the last digit.
 */
final class Widths extends PdfBoxTextRenderer {
    // Of the library: less than this above a whole number is taken for it.
    private static final float NEARLY = 0.01f;

    private static final int BOLD = 700;

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
        LetterWidths letters =
                LetterWidths.of(first.getWeight() == BOLD, first.getStyle() == IdentValue.ITALIC);
        int units = 0;
        for (int i = 0; i < text.length(); ) {
            int letter = text.codePointAt(i);
            int own = letters.of(letter);
            // The library leaves some letters out, and looks for others elsewhere.
            if (own < 0 || !OpenUtil.isSafeFontCodePointToPrint(letter)) {
                return super.getWidth(context, font, text);
            }
            units += own;
            i += Character.charCount(letter);
        }
        float width = units / 1000f * font.getSize2D();
        return width - Math.floor(width) < NEARLY ? (int) width : (int) Math.ceil(width);
    }
}
