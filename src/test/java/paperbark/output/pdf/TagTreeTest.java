package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.junit.jupiter.api.Test;

class TagTreeTest {
    private final COSDictionary page = new COSDictionary();
    private final COSDictionary next = new COSDictionary();

    private static COSDictionary element(String type, COSBase... kids) {
        COSDictionary element = new COSDictionary();
        element.setName(COSName.S, type);
        COSArray all = new COSArray(List.of(kids));
        element.setItem(COSName.K, all);
        for (COSBase kid : kids) {
            if (kid instanceof COSDictionary below && below.containsKey(COSName.S)) {
                below.setItem(COSName.P, element);
            }
        }
        return element;
    }

    private static COSDictionary mark(COSDictionary on, int content) {
        COSDictionary mark = new COSDictionary();
        mark.setName(COSName.TYPE, "MCR");
        mark.setItem(COSName.PG, on);
        mark.setInt(COSName.MCID, content);
        return mark;
    }

    private COSDictionary word(int content) {
        COSDictionary span = element("Span", COSInteger.get(content));
        span.setItem(COSName.PG, page);
        return span;
    }

    private static void slim(COSDictionary element) {
        COSDictionary root = element("Root", element);
        root.removeItem(COSName.S);
        assertThat(new TagTree(root).elements()).contains(element);
    }

    @Test
    void tellsTheContentOfAListByItsNumberAlone() {
        COSDictionary body = element("LBody", mark(page, 1), word(2), mark(page, 3));

        slim(body);

        assertThat(body.getItem(COSName.PG)).isSameAs(page);
        assertThat(TagElement.kids(body))
                .containsExactly(COSInteger.get(1), COSInteger.get(2), COSInteger.get(3));
    }

    @Test
    void keepsWhatLiesOnAnotherPage() {
        COSDictionary there = mark(next, 0);
        COSDictionary body = element("LBody", mark(page, 1), there);

        slim(body);

        assertThat(TagElement.kids(body)).containsExactly(COSInteger.get(1), there);
    }

    @Test
    void findsNothingMoreToDoTheSecondTime() {
        COSDictionary body = element("LBody", mark(next, 1), word(2));
        body.setItem(COSName.PG, new COSDictionary());

        slim(body);
        List<COSBase> once = TagElement.kids(body);
        slim(body);

        assertThat(TagElement.kids(body)).isEqualTo(once).contains(COSInteger.get(1));
    }

    @Test
    void leavesOutALinkOnWhichNobodyCanPress() {
        COSDictionary good = link(10, 20);
        COSDictionary dead = link(20, 20);
        COSDictionary cell =
                element("TD", element("Link", held(good)), element("Link", held(dead)));
        page.setItem(COSName.ANNOTS, new COSArray(List.of(good, dead)));

        slim(cell);
        DeadLinks.drop(page);

        assertThat(TagElement.kids(cell)).hasSize(1);
        assertThat(page.getCOSArray(COSName.ANNOTS).toList()).isEqualTo(List.of(good));
    }

    private static COSDictionary link(int left, int right) {
        COSDictionary link = new COSDictionary();
        link.setItem(COSName.SUBTYPE, COSName.LINK);
        link.setItem(COSName.RECT, COSArray.ofCOSIntegers(List.of(left, 5, right, 9)));
        return link;
    }

    private static COSDictionary held(COSDictionary link) {
        COSDictionary reference = new COSDictionary();
        reference.setName(COSName.TYPE, "OBJR");
        reference.setItem(COSName.OBJ, link);
        return reference;
    }
}
