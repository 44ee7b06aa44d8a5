package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sample week with every paper drawn is the sample week. */
class ShownPapersTest {
    @TempDir private Path out;

    @Test
    void areTheSameToTheByteAsDrawnOnes() throws IOException {
        Path usual = SampleWeek.published();
        Path drawn = drawingAll();

        try (Stream<Path> packs = Files.list(usual.resolve("packs"))) {
            assertThat(packs.toList())
                    .hasSizeGreaterThan(30)
                    .allSatisfy(
                            pack ->
                                    assertThat(pack)
                                            .hasSameBinaryContentAs(
                                                    drawn.resolve("packs")
                                                            .resolve(pack.getFileName())));
        }
        assertThat(usual.resolve("print-run.pdf"))
                .hasSameBinaryContentAs(drawn.resolve("print-run.pdf"));
    }

    private Path drawingAll() throws IOException {
        System.setProperty("paperbark.draw-all", "true");
        try {
            return new Batch((what, done, of) -> {})
                    .prepare(SampleWeek.request(SampleWeek.XLSX, out))
                    .published()
                    .orElseThrow();
        } finally {
            System.clearProperty("paperbark.draw-all");
        }
    }
}
