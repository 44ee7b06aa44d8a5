package paperbark.output.pdf;

import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSDictionary;

/**
 * A paper on the pages of a document.
 *
 * @param first its first page, from 0
 * @param count how many pages it has
 * @param element the element around it in the structure tree; empty where nothing of it was drawn
 * @param known what stands on its pages, where head and foot alone were drawn
 * @param strings for each page what was drawn there, in order; empty where nobody wants a sketch
 */
public record PaperPart(
        int first,
        int count,
        Optional<COSDictionary> element,
        Optional<Sketch> known,
        List<List<Drawn>> strings) {
    /** In place of a run: a string of which nothing is known. */
    public static final int UNKNOWN = -1;

    /** In place of a run: a string that is the same on all such papers. */
    public static final int KEPT = -2;

    /**
     * A string that was drawn.
     *
     * @param run which of the paper's runs of words it is, {@link #UNKNOWN} or {@link #KEPT}
     * @param words the string, and where the layout put it
     */
    public record Drawn(int run, Sketch.Words words) {}

    /** Its pages. */
    List<COSDictionary> of(List<COSDictionary> all) {
        return all.subList(first, first + count);
    }
}
