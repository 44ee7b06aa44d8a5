package paperbark.output.paper;

import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.LineBox;

/** A paper has text where no page is, so that nobody would see it. */
final class TextOffPage extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private TextOffPage() {
        super("has text that falls off its pages");
    }

    /**
     * Goes through all lines of text.
     *
     * @param pages height of all pages together
     * @throws TextOffPage for a line above the first page or below the last
     */
    static void refuse(Box box, int pages) {
        if (box instanceof LineBox && (box.getAbsY() < 0 || box.getAbsY() >= pages)) {
            throw new TextOffPage();
        }
        for (int i = 0; i < box.getChildCount(); i++) {
            refuse(box.getChild(i), pages);
        }
    }
}
