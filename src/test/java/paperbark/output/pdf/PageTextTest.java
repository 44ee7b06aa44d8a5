package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.junit.jupiter.api.Test;

class PageTextTest {
    private final Glyphs used = new Glyphs();
    private int[] numbers = {};

    /** What becomes of the content of a page; contents 1 and 2 stand in one element. */
    private String slim(String content) {
        COSDictionary marks = new COSDictionary();
        for (int i = 0; i < 4; i++) {
            COSDictionary mark = new COSDictionary();
            mark.setInt(COSName.MCID, i);
            marks.setItem(COSName.getPDFName("C" + i), mark);
        }
        marks.setItem(COSName.getPDFName("L"), typed("Layout"));
        marks.setItem(COSName.getPDFName("H"), typed("Pagination"));
        byte[] bytes = content.getBytes(StandardCharsets.ISO_8859_1);
        List<Op> ops = new PageOps(bytes, Map.of(COSName.getPDFName("F7"), 1), marks, used).read();
        PageText text = new PageText(ops, (a, b) -> a == 1 && b == 2, 4);
        String slim = new String(text.write(), StandardCharsets.ISO_8859_1);
        numbers = text.numbers();
        return slim;
    }

    private static COSDictionary typed(String type) {
        COSDictionary mark = new COSDictionary();
        mark.setName(COSName.TYPE, type);
        return mark;
    }

    private static String rectangle(int left, int bottom, int right, int top) {
        return "%1$d %2$d m %3$d %2$d l %3$d %4$d l %1$d %4$d l h f\n"
                .formatted(left, bottom, right, top);
    }

    @Test
    void leavesOutMarksAroundNothing() {
        assertThat(slim("/Artifact /L BDC\nEMC\n/Span /C0 BDC\nEMC\n")).isEmpty();
        assertThat(numbers[0]).isEqualTo(-1);
    }

    @Test
    void makesOneMarkAndOneRuleOfTheRulesOfNeighbouringCells() {
        assertThat(
                        slim(
                                "/Artifact /L BDC\n.5 .5 .5 rg\n"
                                        + rectangle(10, 20, 30, 21)
                                        + "EMC\n/Artifact /L BDC\n"
                                        + rectangle(30, 20, 50, 21)
                                        + "EMC\n"))
                .isEqualTo("/Artifact BMC\n.5 g\n10 20 40 1 re\nf\nEMC\n");
    }

    @Test
    void fillsTwiceWhatWasFilledTwice() {
        assertThat(slim(rectangle(10, 20, 30, 21) + rectangle(10, 20, 30, 21)))
                .isEqualTo("0 g\n10 20 20 1 re\nf\n10 20 20 1 re\nf\n");
    }

    @Test
    void keepsTheOrderOfColoursThatLieOnOneAnother() {
        assertThat(
                        slim(
                                rectangle(0, 0, 9, 9)
                                        + "1 0 0 rg\n"
                                        + rectangle(1, 1, 2, 2)
                                        + "0 0 0 rg\n"
                                        + rectangle(1, 1, 2, 2)))
                .isEqualTo("0 g\n0 0 9 9 re\nf\n1 0 0 rg\n1 1 1 1 re\nf\n0 g\n1 1 1 1 re\nf\n");
    }

    @Test
    void drawsFourSlantedSidesAsOneFrameButThreeAsTheyAre() {
        String below = "0 0 m 9 0 l 8 1 l 1 1 l h f\n";
        String above = "0 9 m 9 9 l 8 8 l 1 8 l h f\n";
        String left = "0 0 m 0 9 l 1 8 l 1 1 l h f\n";
        String right = "9 9 m 9 0 l 8 1 l 8 8 l h f\n";
        assertThat(slim(below + above + left + right))
                .isEqualTo("0 g\n0 0 9 1 re\nf\n0 8 9 1 re\nf\n0 0 1 9 re\nf\n8 0 1 9 re\nf\n");
        assertThat(slim(below + above + left)).contains("0 0 m\n9 0 l\n8 1 l\n1 1 l\nf\n");
        assertThat(slim(below + above + left + left)).contains(" l\n");
    }

    @Test
    void joinsContentOfOneElementAndGivesNewNumbers() {
        String word = "BT /F7 9 Tf 1 0 0 1 %d 700 Tm <0041> Tj ET\n";
        assertThat(
                        slim(
                                "/Span /C0 BDC\nEMC\n/Span /C1 BDC\n"
                                        + word.formatted(10)
                                        + "EMC\n/Span /C2 BDC\n"
                                        + word.formatted(20)
                                        + "EMC\n/Span /C3 BDC\n"
                                        + word.formatted(30)
                                        + "EMC\n"))
                .isEqualTo(
                        "BT\n/Span<</MCID 0>>BDC\n0 g\n/F2 9 Tf\n1 0 0 1 10 700 Tm\n(\0A)Tj\n"
                                + "1 0 0 1 20 700 Tm\n(\0A)Tj\nEMC\n"
                                + "/Span<</MCID 1>>BDC\n1 0 0 1 30 700 Tm\n(\0A)Tj\nEMC\nET\n");
        assertThat(numbers).containsExactly(-1, 0, -1, 1);
        assertThat(used.of(1).get(0x41)).isTrue();
        assertThat(used.of(0).isEmpty()).isTrue();
    }

    @Test
    void nestsMarksAndTextObjectsProperlyWhereAPartHasTextAndRules() {
        String word = "BT /F7 9 Tf 1 0 0 1 10 700 Tm <0041> Tj ET\n";
        assertThat(slim("/Artifact /H BDC\n" + word + rectangle(0, 0, 9, 1) + word + "EMC\n"))
                .isEqualTo(
                        "/Artifact<</Type/Pagination>>BDC\nBT\n0 g\n/F2 9 Tf\n"
                                + "1 0 0 1 10 700 Tm\n(\0A)Tj\nET\n0 0 9 1 re\nf\nBT\n"
                                + "1 0 0 1 10 700 Tm\n(\0A)Tj\nET\nEMC\n");
    }

    @Test
    void setsHowLinesAreDrawnOnlyWhereOneIs() {
        assertThat(slim("2 J 1.5 w\n" + rectangle(0, 0, 9, 1))).doesNotContain("w");
        assertThat(slim("2 J 1.5 w\nq\n0 0 m 9 9 l S\nQ\n"))
                .isEqualTo("q\n0 g\n2 J\n1.5 w\n0 0 m\n9 9 l\nS\nQ\n");
    }

    @Test
    void takesUpTheStateThatWasKept() {
        assertThat(
                        slim(
                                "1 0 0 rg\n"
                                        + rectangle(0, 0, 1, 1)
                                        + "q\n0 0 1 rg\n"
                                        + rectangle(2, 2, 3, 3)
                                        + "Q\n"
                                        + rectangle(4, 4, 5, 5)))
                .isEqualTo(
                        "1 0 0 rg\n0 0 1 1 re\nf\nq\n0 0 1 rg\n2 2 1 1 re\nf\nQ\n4 4 1 1 re\nf\n");
    }
}
