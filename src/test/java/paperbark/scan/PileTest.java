package paperbark.scan;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.SampleWeek;

/**
 * Piles made of the sample week's print run, drawn by PDFBox and harmed by chance with fixed seeds:
 * noise, blur, up to five degrees askew, one page in ten upside down, grey stamps over the mark,
 * coffee-coloured paper, black and white or JPEG of quality 40, 150 to 300 dots an inch. What each
 * page really is, its printed text says. {@code -Dscan.pages=10000} reads more of them.
 */
class PileTest {
    private static final int PAGES = Integer.getInteger("scan.pages", 100);
    private static final int AT_ONCE = 100;
    private static final int[] SHARP_ENOUGH = {150, 150, 200, 300};

    @TempDir private Path folder;

    @Test
    void everyPageIsPlacedRightOrAskedAboutAndEmptyBoxesAreSeen() throws Exception {
        PileScore score = new PileScore(SampleWeek.published());
        for (int done = 0; done < PAGES; done += AT_ONCE) {
            int some = Math.min(AT_ONCE, PAGES - done);
            score.pile(folder.resolve("pile.pdf"), 47 + done, some, SHARP_ENOUGH);
            if (PAGES > AT_ONCE) {
                System.out.println(score);
            }
        }
        assertThat(score.wrong).as("%s", score).isEmpty();
        assertThat(score.pages).isEqualTo(PAGES);
        // Stamped backs look like pages of somebody's.
        assertThat(score.asked * 100).as("%s", score.doubtful).isLessThanOrEqualTo(PAGES * 3);
        assertThat(score.blankBoxes).isPositive();
        assertThat(score.blankFound * 100)
                .as("%s", score.doubtful)
                .isGreaterThanOrEqualTo(score.blankBoxes * 99);
        assertThat(score.falseAlarms * 100)
                .as("%s", score.doubtful)
                .isLessThanOrEqualTo(score.signedBoxes);
        assertThat(score.unlooked * 100).isLessThanOrEqualTo(PAGES);
    }
}
