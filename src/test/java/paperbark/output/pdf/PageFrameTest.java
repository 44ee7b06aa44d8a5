package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSDictionary;
import org.junit.jupiter.api.Test;

/** Head and foot of a page with other digits. */
class PageFrameTest {
    private static final List<String> VALUES = List.of("Job SB-1102", "Working", "3", "12");

    @Test
    void putsOtherValuesWhereTheirsWere() {
        PageFrame frame = frame(VALUES, "Job SB-1102", "Working", "Page ", "3", " of ", "12");

        assertThat(shown(frame, List.of("Job SB-2345", "Working", "7", "13")))
                .containsExactly("Job SB-2345", "Working", "Page ", "7", " of ", "13");
    }

    @Test
    void tellsEqualValuesApartByTheirTurn() {
        List<String> last = List.of("Job SB-1102", "Working", "12", "12");
        PageFrame frame = frame(last, "Job SB-1102", "Page ", "12", " of ", "12");

        assertThat(shown(frame, VALUES.subList(0, 2), "11", "13"))
                .containsExactly("Job SB-1102", "Page ", "11", " of ", "13");
    }

    @Test
    void leavesAPageAloneOnWhichDigitsAreNoValue() {
        assertThat(taken(VALUES, "Job SB-1102", "since 1998")).isEmpty();
        assertThat(taken(VALUES, "3", "3")).as("once too often").isEmpty();
    }

    @Test
    void noticesAnotherPicture() {
        PageFrame one = frame(VALUES, "Job SB-1102", "3");

        assertThat(one.isSame(frame(VALUES, "Job SB-1102", "3"), VALUES)).isTrue();
        assertThat(one.isSame(frame(VALUES, "Job SB-1102", "12"), VALUES)).isFalse();
    }

    @Test
    void takesValuesForAlikeThatDifferInDigits() {
        assertThat(PageFrame.alike("Job SB-1102")).isEqualTo(PageFrame.alike("Job SB-9999"));
        assertThat(PageFrame.alike("9")).isNotEqualTo(PageFrame.alike("10"));
        assertThat(PageFrame.alike("SB-1")).isNotEqualTo(PageFrame.alike("SC-1"));
    }

    private static PageFrame frame(List<String> values, String... strings) {
        return taken(values, strings).orElseThrow();
    }

    private static Optional<PageFrame> taken(List<String> values, String... strings) {
        List<Op> steps = new ArrayList<>();
        List<PaperPart.Drawn> drawn = new ArrayList<>();
        for (String string : strings) {
            steps.add(text(string));
            drawn.add(drawn(string));
        }
        steps.add(new Op.Save());
        steps.add(text("the paper itself, 2026"));
        drawn.add(drawn("the paper itself, 2026"));
        steps.add(new Op.Restore());
        try {
            PageHead head = new PageHead(values, 0, Optional.empty(), Optional.of(drawn));
            return PageFrame.of(steps, drawn, head, new COSDictionary());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static PaperPart.Drawn drawn(String string) {
        return new PaperPart.Drawn(PaperPart.UNKNOWN, new Sketch.Words(string, 0));
    }

    private static Op.Text text(String string) {
        byte[] glyphs = Faces.shared().get(0).glyphs(string);
        return new Op.Text("0 g\n", 0, 100, "", 0, 0, glyphs, Sketch.shown(glyphs));
    }

    private static List<String> shown(PageFrame frame, List<String> first, String... others) {
        List<String> values = new ArrayList<>(first);
        values.addAll(List.of(others));
        return shown(frame, values);
    }

    private static List<String> shown(PageFrame frame, List<String> values) {
        List<String> shown = new ArrayList<>();
        for (Op step : frame.with(values, new Glyphs())) {
            if (step instanceof Op.Text text) {
                shown.add(said(text));
            }
        }
        return shown;
    }

    private static String said(Op.Text text) {
        for (String known :
                List.of(
                        "Job SB-1102",
                        "Job SB-2345",
                        "Working",
                        "Page ",
                        " of ",
                        "3",
                        "7",
                        "11",
                        "12",
                        "13")) {
            if (new String(text(known).shown(), StandardCharsets.ISO_8859_1)
                    .equals(new String(text.shown(), StandardCharsets.ISO_8859_1))) {
                return known;
            }
        }
        return "?";
    }
}
