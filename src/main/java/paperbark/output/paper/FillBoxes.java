package paperbark.output.paper;

import com.openhtmltopdf.newtable.TableCellBox;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Finds the boxes that ask for a fact of the register: cells that are printed empty and name it, or
 * the cells of a table that does, a sign a cell.
 */
final class FillBoxes {
    private static final String FIELD = "data-field";

    private final PagePlaces places;
    private final Map<Element, List<PagePlaces.Spot>> found = new LinkedHashMap<>();

    private FillBoxes(PdfBoxRenderer renderer) {
        places = new PagePlaces(renderer);
    }

    /** The boxes of a document that is laid out, page by page. */
    static List<FillBox> in(PdfBoxRenderer renderer) {
        FillBoxes boxes = new FillBoxes(renderer);
        boxes.look(renderer.getRootBox());
        return boxes.found.entrySet().stream().map(e -> box(e.getKey(), e.getValue())).toList();
    }

    private void look(Box box) {
        if (box instanceof TableCellBox cell && cell.getElement() != null) {
            add(cell, cell.getElement());
        }
        for (int i = 0; i < box.getChildCount(); i++) {
            look(box.getChild(i));
        }
    }

    private void add(TableCellBox cell, Element element) {
        if (element.getTagName().equals("td")) {
            Node asks = element;
            while (asks instanceof Element inside && !inside.hasAttribute(FIELD)) {
                asks = inside.getTagName().equals("table") ? null : inside.getParentNode();
            }
            if (asks instanceof Element asking) {
                found.computeIfAbsent(asking, e -> new ArrayList<>()).add(places.of(cell));
            }
        }
    }

    private static FillBox box(Element asking, List<PagePlaces.Spot> spots) {
        PagePlaces.Spot all = spots.get(0).upTo(spots.get(spots.size() - 1));
        return new FillBox(
                all.page(),
                asking.getAttribute(FIELD),
                spots.size(),
                all.left(),
                all.top(),
                all.width(),
                all.height());
    }
}
