package paperbark.output.paper;

import com.openhtmltopdf.extend.FontContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.TextRenderer;
import com.openhtmltopdf.pdfboxout.PdfBoxOutputDevice;
import com.openhtmltopdf.render.FSFont;
import com.openhtmltopdf.render.FSFontMetrics;
import com.openhtmltopdf.render.JustificationInfo;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSDictionary;

/** Writes down which strings are drawn where, page by page, while the library draws them. */
final class DrawnText implements TextRenderer {
    private final TextRenderer renderer;
    private final Map<COSDictionary, List<Piece>> pieces = new IdentityHashMap<>();

    /**
     * A string on a page, in the layout's own coordinates.
     *
     * @param plain whether its letters stand as close as they usually do
     */
    record Piece(String text, float x, float y, boolean plain) {}

    DrawnText(TextRenderer renderer) {
        this.renderer = renderer;
    }

    /** The strings of a page, in order. */
    List<Piece> on(COSDictionary page) {
        return pieces.getOrDefault(page, List.of());
    }

    @Override
    public void drawString(OutputDevice device, String text, float x, float y) {
        note(device, new Piece(text, x, y, true));
        renderer.drawString(device, text, x, y);
    }

    @Override
    public void drawString(
            OutputDevice device, String text, float x, float y, JustificationInfo gaps) {
        note(device, new Piece(text, x, y, gaps == null));
        renderer.drawString(device, text, x, y, gaps);
    }

    private void note(OutputDevice device, Piece piece) {
        pieces.computeIfAbsent(
                        ((PdfBoxOutputDevice) device).getPage().getCOSObject(),
                        page -> new ArrayList<>())
                .add(piece);
    }

    @Override
    public FSFontMetrics getFSFontMetrics(FontContext context, FSFont font, String text) {
        return renderer.getFSFontMetrics(context, font, text);
    }

    @Override
    public int getWidth(FontContext context, FSFont font, String text) {
        return renderer.getWidth(context, font, text);
    }
}
