package paperbark.output.paper;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import paperbark.output.pdf.SlimPages;

/**
 * What came of the layout of a pack.
 *
 * @param papers the pages of each paper, in order
 * @param boxes the boxes that people write in, in order
 * @param fills the boxes that ask for a fact of the register
 * @param elements the element of the structure tree that came of the markup with an id
 * @param pages the pages as they were drawn
 * @param fonts with which they were drawn
 * @param redrawing which of the papers were drawn
 * @param gate decided about every address that they named
 */
record LaidOut(
        List<Extent> papers,
        List<SignBox> boxes,
        List<FillBox> fills,
        Function<String, Optional<PDStructureElement>> elements,
        SlimPages pages,
        Fonts fonts,
        Redrawing redrawing,
        ResourceGate gate) {
    /** Keeps the lists from being changed. */
    LaidOut {
        papers = List.copyOf(papers);
        boxes = List.copyOf(boxes);
        fills = List.copyOf(fills);
    }

    /** Makes the pages that still show what was drawn small. */
    void slim() throws IOException {
        SlimPages.Slimmed drawn = pages.slim(fonts::styleOf, redrawing.parts(), redrawing.heads());
        // What was refused to a paper is told of each that asks for it.
        if (gate.refused().isEmpty()) {
            redrawing.learn(drawn, boxes, fills);
        }
    }
}
