package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import org.junit.jupiter.api.Test;

/** Against the profile of the same colours that the JDK brings. */
class ScreenColoursTest {
    private final ICC_ColorSpace own =
            new ICC_ColorSpace(ICC_Profile.getInstance(ScreenColours.profile()));
    private final ColorSpace screen = ColorSpace.getInstance(ColorSpace.CS_sRGB);

    @Test
    void meanTheColoursOfAScreen() {
        float[][] colours = {
            {0, 0, 0},
            {1, 1, 1},
            {1, 0, 0},
            {0, 1, 0},
            {0, 0, 1},
            {.02f, .5f, .8f},
            {.12f, .36f, .3f}
        };
        for (float[] colour : colours) {
            float[] ours = own.toCIEXYZ(colour);
            float[] theirs = screen.toCIEXYZ(colour);
            for (int i = 0; i < 3; i++) {
                assertThat(ours[i]).isCloseTo(theirs[i], within(.002f));
            }
        }
    }

    @Test
    void takeAFewHundredBytes() {
        assertThat(ScreenColours.profile().length).isLessThan(600);
    }
}
