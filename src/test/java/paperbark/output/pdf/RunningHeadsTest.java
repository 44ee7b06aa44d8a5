package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSStream;
import org.junit.jupiter.api.Test;

class RunningHeadsTest {
    private static final Op RULE = new Op.Box("0 g\n", new Op.Area(0, 0, 10_000, 10_000));
    private static final Op BODY = text("body");

    private static Op text(String words) {
        byte[] shown = Sketch.shown(Faces.shared().get(0).glyphs(words));
        return new Op.Text("0 g\n", 0, 90_000, "", 0, 0, shown, shown);
    }

    private static List<Op> page(Op... head) {
        List<Op> page = new ArrayList<>();
        page.add(new Op.Begin(Mark.PAGINATION));
        page.addAll(List.of(head));
        page.addAll(List.of(new Op.End(), new Op.Save(), BODY, new Op.Restore()));
        return page;
    }

    private static String content(Optional<COSStream> stream) throws Exception {
        try (InputStream in = stream.orElseThrow().createInputStream()) {
            return new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }

    private static String slim(List<Op> steps) {
        return new String(
                new PageText(steps, (a, b) -> false, 0).write(), StandardCharsets.ISO_8859_1);
    }

    @Test
    void writesOnceWhatEveryPageHas() throws Exception {
        List<Op> first = page(RULE, text("Job 7"), text("Page 1"));
        List<Op> second = page(RULE, text("Job 7"), text("Page 2"));
        RunningHeads heads = new RunningHeads(List.of(first, second));

        assertThat(content(heads.of(first))).contains(" re\n", "(Job 7)").doesNotContain("Page");
        assertThat(heads.of(second).orElseThrow()).isSameAs(heads.of(first).orElseThrow());
        assertThat(slim(heads.rest(second)))
                .contains("(Page 2)", "(body)")
                .doesNotContain(" re\n", "Job");
    }

    @Test
    void fillsTwiceWhatEveryPageFillsTwice() throws Exception {
        List<Op> page = page(RULE, RULE);
        RunningHeads heads = new RunningHeads(List.of(page, page));

        assertThat(content(heads.of(page))).endsWith("0 0 1 1 re\nf\n0 0 1 1 re\nf\nEMC\n");
        assertThat(slim(heads.rest(page))).doesNotContain(" re\n");
    }

    @Test
    void leavesAPageWithAnotherHeadAlone() throws Exception {
        List<Op> usual = page(RULE, text("Job 7"));
        List<Op> other = page(text("Ours"));
        List<List<Op>> pages = new ArrayList<>(List.of(other));
        for (int i = 0; i < 9; i++) {
            pages.add(usual);
        }
        RunningHeads heads = new RunningHeads(pages);

        assertThat(heads.of(usual)).isPresent();
        assertThat(heads.of(other)).isEmpty();
    }

    @Test
    void sharesNothingOfASinglePage() throws Exception {
        List<Op> only = page(RULE);

        assertThat(new RunningHeads(List.of(only)).of(only)).isEmpty();
    }

    @Test
    void leavesAHeadWithAPictureWhole() throws Exception {
        List<Op> page = page(RULE);
        page.add(2, new Op.Save());
        page.add(3, new Op.Restore());

        assertThat(new RunningHeads(List.of(page, page)).of(page)).isEmpty();
    }
}
