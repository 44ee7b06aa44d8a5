package paperbark.output.paper;

import com.openhtmltopdf.newtable.TableCellBox;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import java.util.ArrayList;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * Finds the boxes of signature tables that are printed empty and must not come back so. What
 * somebody writes in later, such as the buyer's acceptance, is in a block of class {@code later}.
 */
final class SignBoxes {
    private final PagePlaces places;
    private final List<SignBox> found = new ArrayList<>();

    private SignBoxes(PdfBoxRenderer renderer) {
        places = new PagePlaces(renderer);
    }

    /** The boxes of a document that is laid out, page by page. */
    static List<SignBox> in(PdfBoxRenderer renderer) {
        SignBoxes boxes = new SignBoxes(renderer);
        boxes.look(renderer.getRootBox());
        return List.copyOf(boxes.found);
    }

    private void look(Box box) {
        if (box instanceof TableCellBox cell) {
            add(cell);
        }
        for (int i = 0; i < box.getChildCount(); i++) {
            look(box.getChild(i));
        }
    }

    private void add(TableCellBox cell) {
        Element element = cell.getElement();
        if (element == null
                || !element.getTagName().equals("td")
                || !element.getTextContent().isBlank()) {
            return;
        }
        Element table = around(element, "table", "sign");
        Element block = around(element, "div", "signature");
        if (table == null || block == null || hasClass(block, "later")) {
            return;
        }
        String what = heading(table, cell.getCol());
        if (what.startsWith("Signature") || what.startsWith("Date") || what.startsWith("Name")) {
            found.add(placed(cell, who(element, block), what));
        }
    }

    private SignBox placed(TableCellBox cell, String who, String what) {
        PagePlaces.Spot at = places.of(cell);
        return new SignBox(at.page(), who, what, at.left(), at.top(), at.width(), at.height());
    }

    /** The row's own heading, or that of the block. */
    private static String who(Element cell, Element block) {
        NodeList rowHeads = ((Element) cell.getParentNode()).getElementsByTagName("th");
        NodeList heads = rowHeads.getLength() > 0 ? rowHeads : block.getElementsByTagName("h3");
        return heads.getLength() > 0 ? heads.item(0).getTextContent().strip() : "";
    }

    private static String heading(Element table, int column) {
        NodeList heads = table.getElementsByTagName("thead");
        if (heads.getLength() == 0) {
            return "";
        }
        NodeList cells = ((Element) heads.item(0)).getElementsByTagName("th");
        return column < cells.getLength() ? cells.item(column).getTextContent().strip() : "";
    }

    private static Element around(Element inside, String tag, String name) {
        Node node = inside;
        while (node instanceof Element element) {
            if (element.getTagName().equals(tag) && hasClass(element, name)) {
                return element;
            }
            node = node.getParentNode();
        }
        return null;
    }

    private static boolean hasClass(Element element, String name) {
        return List.of(element.getAttribute("class").split("\\s+")).contains(name);
    }
}
