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
    void joinsContentOfOneElementAndGivesNewNumbers() {
        String word = "BT /F7 9 Tf 1 0 0 1 %d 700 Tm <0041> Tj ET\n";
        assertThat(
                        slim(
                                "/Span /C0 BDC\nEMC\n/Span /C1 BDC\n"
                                        + word.formatted(15)
                                        + "EMC\n/Span /C2 BDC\n"
                                        + word.formatted(30)
                                        + "EMC\n/Span /C3 BDC\n"
                                        + word.formatted(45)
                                        + "EMC\n"))
                .isEqualTo(
                        "BT\n/Span<</MCID 0>>BDC\n0 g\n/F2 240 Tf\n"
                                + ".0375 0 0 .0375 15 700 Tm\n(^)Tj\n"
                                + "400 0 Td\n(^)Tj\nEMC\n"
                                + "/Span<</MCID 1>>BDC\n400 0 Td\n(^)Tj\nEMC\nET\n");
        assertThat(numbers).containsExactly(-1, 0, -1, 1);
        assertThat(used.of(1).get(0x41)).isTrue();
        assertThat(used.of(0).isEmpty()).isTrue();
    }

    @Test
    void nestsMarksAndTextObjectsProperlyWhereAPartHasTextAndRules() {
        String word = "BT /F7 9 Tf 1 0 0 1 10 700 Tm <0041> Tj ET\n";
        assertThat(slim("/Artifact /H BDC\n" + word + rectangle(0, 0, 9, 1) + word + "EMC\n"))
                .isEqualTo(
                        "/Artifact<</Type/Pagination>>BDC\nBT\n0 g\n/F2 240 Tf\n"
                                + ".0375 0 0 .0375 10 700 Tm\n(^)Tj\nET\n0 0 9 1 re\nf\nBT\n"
                                + ".0375 0 0 .0375 10 700 Tm\n(^)Tj\nET\nEMC\n");
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

    @Test
    void saysTheFrameOfATickBoxFromItsCornerOn() {
        String top = "%1$d 12 m %2$d 12 l %3$d 9 l %4$d 9 l h f\n";

        assertThat(slim(top.formatted(30, 60, 57, 33) + top.formatted(90, 120, 117, 93)))
                .isEqualTo(
                        "0 g\nq\n.0375 0 0 .0375 30 12 cm\n"
                                + "0 0 m\n800 0 l\n720 -80 l\n80 -80 l\nh\nf\n"
                                + "1600 0 m\n2400 0 l\n2320 -80 l\n1680 -80 l\nh\nf\nQ\n");
    }

    @Test
    void keepsTheOrderOfRulesAndFrames() {
        assertThat(slim(rectangle(0, 0, 9, 9) + "0 0 m 3 0 l 3 3 l h f\n" + rectangle(3, 3, 6, 6)))
                .isEqualTo(
                        "0 g\n0 0 9 9 re\nf\nq\n.0375 0 0 .0375 0 0 cm\n"
                                + "0 0 m\n80 0 l\n80 80 l\nh\nf\nQ\n3 3 3 3 re\nf\n");
    }

    @Test
    void drawsManyRulesInTheUnitOfTheLayout() {
        assertThat(slim(rectangle(0, 0, 3, 3) + rectangle(6, 0, 9, 3) + rectangle(12, 0, 15, 3)))
                .isEqualTo(
                        "0 g\nq\n.0375 0 0 .0375 0 0 cm\n0 0 80 80 re\nf\n"
                                + "160 0 80 80 re\nf\n320 0 80 80 re\nf\nQ\n");
    }

    @Test
    void namesAPlaceInPointsWhereTheUnitOfTheLayoutDoesNotReachIt() {
        String words =
                "BT /F7 9 Tf 1 0 0 1 15 700 Tm <0041> Tj 1 0 0 1 20.01 700 Tm <0041> Tj ET\n";

        assertThat(slim(words))
                .endsWith("15 700 Tm\n(^)Tj\n.0375 0 0 .0375 20.01 700 Tm\n(^)Tj\nET\n");
    }

    @Test
    void keepsLettersSlanted() {
        String words = "BT /F7 9 Tf 1 0 .2 1 15 700 Tm <0041> Tj 1 0 0 1 15 690 Tm <0041> Tj ET\n";

        assertThat(slim(words))
                .contains(
                        "0.0375000 0.0000000 0.0075000 0.0375000 15 700 Tm\n(^)Tj\n"
                                + ".0375 0 0 .0375 15 690 Tm\n(^)Tj\n");
    }
}
