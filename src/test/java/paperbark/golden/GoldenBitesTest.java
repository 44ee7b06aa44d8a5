package paperbark.golden;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Batch;
import paperbark.batch.Request;
import paperbark.batch.SampleWeek;

/** The smallest changes that a person would want to hear of are noticed. */
class GoldenBitesTest {
    private static final String PAPER = "old-heater-record";
    private static final String RECORD = "old-heater/default.ftlh";

    @TempDir private static Path folder;
    private static Shown before;

    /** The old-heater record of one job. */
    private record Shown(BufferedImage picture, String text) {}

    @BeforeAll
    static void prepare() throws IOException {
        before = shown("before", UnaryOperator.identity(), UnaryOperator.identity());
    }

    @Test
    void theSameAgainIsTheSame() throws IOException {
        Shown again = shown("again", UnaryOperator.identity(), UnaryOperator.identity());

        assertThat(Comparison.of(before.picture(), again.picture()).differing()).isZero();
        assertThat(again.text()).isEqualTo(before.text());
    }

    @Test
    void aChangedDigitIsNoticed() throws IOException {
        Shown digit = shown("digit", r -> r.replace("WA-01226", "WA-01228"), t -> t);

        Comparison comparison = Comparison.of(before.picture(), digit.picture());
        assertThat(comparison.isSame()).as("%s", comparison).isFalse();
        assertThat(PackPaper.firstDifference(before.text(), digit.text()))
                .contains("WA-01226", "WA-01228");
    }

    @Test
    void aLineMovedByHalfAMillimetreIsNoticed() throws IOException {
        Shown moved =
                shown(
                        "moved",
                        r -> r,
                        t ->
                                t.replace(
                                        "<@p.section number=6",
                                        "<div style=\"height: 0.5mm\"></div><@p.section number=6"));

        Comparison comparison = Comparison.of(before.picture(), moved.picture());
        assertThat(comparison.isSame()).as("%s", comparison).isFalse();
        assertThat(PackPaper.firstDifference(before.text(), moved.text())).isEmpty();
    }

    @Test
    void aPageOfAnotherSizeIsNoticed() {
        assertThat(Comparison.of(before.picture(), PagePicture.none()).isSame()).isFalse();
    }

    @Test
    void theDifferenceIsShownInRed() {
        BufferedImage other = PagePicture.sheet(List.of(before.picture()), 1);
        BufferedImage copy = other.getSubimage(8, 8, before.picture().getWidth(), 100);
        BufferedImage changed = new BufferedImage(copy.getWidth(), 100, copy.getType());
        changed.createGraphics().drawImage(copy, 0, 0, null);
        changed.setRGB(3, 3, 0);

        BufferedImage difference = Comparison.difference(copy, changed);

        assertThat(Comparison.of(copy, changed).differing()).isEqualTo(1);
        assertThat(difference.getRGB(3, 3) & 0xFFFFFF).isEqualTo(0xFF0000);
        assertThat(difference.getRGB(4, 4) & 0xFFFFFF).isNotEqualTo(0xFF0000);
    }

    private static Shown shown(
            String name, UnaryOperator<String> register, UnaryOperator<String> template)
            throws IOException {
        Path place = Files.createDirectories(folder.resolve(name));
        Path list =
                Files.writeString(
                        place.resolve("one.csv"), register.apply(SampleWeek.only("SB-1102")));
        Path record = place.resolve("templates").resolve(RECORD);
        Files.createDirectories(record.getParent());
        Files.writeString(
                record, template.apply(Files.readString(Path.of("templates").resolve(RECORD))));
        Request week = SampleWeek.request(list, place.resolve("out"));
        Request request =
                new Request(
                        week.register(),
                        new Request.FirmFiles(
                                week.firm().tables(),
                                Optional.of(place.resolve("templates")),
                                week.firm().rules()),
                        week.out(),
                        week.run(),
                        week.extras(),
                        week.ledger());
        Path batch = new Batch((what, done, of) -> {}).prepare(request).published().orElseThrow();
        try (PDDocument pack = Loader.loadPDF(batch.resolve("packs/SB-1102.pdf").toFile())) {
            PackPaper paper =
                    PackPaper.of(pack).stream()
                            .filter(p -> p.slug().equals(PAPER))
                            .findFirst()
                            .orElseThrow();
            return new Shown(PagePicture.grey(pack, paper.pages().get(0)), paper.text(pack));
        }
    }
}
