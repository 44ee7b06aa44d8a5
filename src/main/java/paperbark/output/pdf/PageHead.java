package paperbark.output.pdf;

import java.util.List;
import java.util.Optional;

/**
 * What is known of head and foot of a page of a document.
 *
 * @param values that stand in them
 * @param pictures how many they show, all of which stay as they are in each such head and foot
 * @param known as they are; empty where they were drawn
 * @param drawn the strings of the page, in order; empty where nobody wants to know more
 */
public record PageHead(
        List<String> values,
        int pictures,
        Optional<PageFrame> known,
        Optional<List<PaperPart.Drawn>> drawn) {
    /** Of which nothing is known or wanted. */
    public static final PageHead NONE =
            new PageHead(List.of(), 0, Optional.empty(), Optional.empty());
}
