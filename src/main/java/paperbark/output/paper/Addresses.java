package paperbark.output.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * The addresses that a paper's links lead to. A pack goes to owners and buyers, so a link may open
 * a page, a letter or a call, or lead to another place of the pack, and may neither run a script
 * nor open a file of whoever reads it.
 */
final class Addresses {
    private static final Pattern ALLOWED =
            Pattern.compile("#.*|https?://.*|mailto:.*|tel:.*", Pattern.DOTALL);

    private Addresses() {}

    /**
     * Takes every other address out of the markup.
     *
     * @return those taken out, in order
     */
    static List<String> restrict(Document markup) {
        List<String> refused = new ArrayList<>();
        NodeList all = markup.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            String tag = element.getTagName().toLowerCase(Locale.ROOT);
            boolean leads = tag.equals("a") || tag.equals("area") || tag.equals("form");
            for (String name : List.of("href", "action")) {
                String address = element.getAttribute(name).strip();
                if (leads
                        && element.hasAttribute(name)
                        && !ALLOWED.matcher(address.toLowerCase(Locale.ROOT)).matches()) {
                    element.removeAttribute(name);
                    refused.add(address);
                }
            }
        }
        return refused;
    }
}
