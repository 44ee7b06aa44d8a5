package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.junit.jupiter.api.Test;

/** Elements of a paper that was drawn are written for another document with its numbers. */
class ReadyTagsTest {
    private final COSDictionary front = new COSDictionary();
    private final COSDictionary back = new COSDictionary();
    private final COSDictionary top = new COSDictionary();

    private static COSDictionary element(String kind, COSDictionary page, COSBase... kids) {
        COSDictionary element = new COSDictionary();
        element.setItem(COSName.PG, page);
        element.setName(COSName.S, kind);
        element.setItem(COSName.K, new COSArray(List.of(kids)));
        for (COSBase kid : kids) {
            if (kid instanceof COSDictionary below) {
                below.setItem(COSName.P, element);
            }
        }
        return element;
    }

    private List<KnownElement> known(COSDictionary... elements) {
        for (COSDictionary element : elements) {
            element.setItem(COSName.P, top);
        }
        COSDictionary root = new COSDictionary();
        root.setItem(COSName.K, top);
        TagElement.setKids(top, List.of(elements));
        new TagTree(root);
        return ReadyTags.of(List.of(elements), List.of(front, back))
                .orElseThrow()
                .below(top, List.of(front, back));
    }

    @Test
    void givesEachElementItsNumbers() {
        COSDictionary first = element("P", front, COSInteger.get(0), COSInteger.get(1));
        COSDictionary second = element("P", back, COSInteger.get(0));
        COSDictionary alone = element("P", back, COSInteger.get(1));
        List<KnownElement> known = known(element("Sect", front, first, second), alone);
        List<String> texts = new ArrayList<>();
        for (KnownElement each : known) {
            for (ReadyTags.Text text : each.elements()) {
                Buffer out = new Buffer();
                text.write(100, 7, page -> 40 + page, out);
                texts.add(out.toString());
            }
        }
        assertThat(texts)
                .containsExactly(
                        "<</P 7 0 R/S/Sect/K[101 0 R 102 0 R]>>",
                        "<</P 100 0 R/Pg 40 0 R/S/P/K[0 1]>>",
                        "<</P 100 0 R/Pg 41 0 R/S/P/K 0>>",
                        "<</P 7 0 R/Pg 41 0 R/S/P/K 1>>");
    }

    @Test
    void tellsWhichElementHoldsAContent() {
        COSDictionary second = element("P", back, COSInteger.get(3));
        List<KnownElement> known = known(element("Sect", front, second));
        assertThat(known.get(0).contents()).containsExactly(new ReadyTags.Content(1, 3, 1));
        assertThat(known.get(0).page(1)).isSameAs(back);
        assertThat(known.get(0).count()).isEqualTo(2);
    }

    @Test
    void leavesElementsAloneThatTheirPlaceWouldChange() {
        COSDictionary span = element("Span", front, COSInteger.get(0));
        span.setItem(COSName.P, top);
        assertThat(ReadyTags.of(List.of(span), List.of(front, back))).isEmpty();
    }

    @Test
    void leavesElementsAloneThatLieElsewhere() {
        COSDictionary elsewhere = element("P", new COSDictionary(), COSInteger.get(0));
        elsewhere.setItem(COSName.P, top);
        assertThat(ReadyTags.of(List.of(elsewhere), List.of(front, back))).isEmpty();
    }
}
