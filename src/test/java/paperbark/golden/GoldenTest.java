package paperbark.golden;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.batch.SampleWeek;
import paperbark.output.PaperKind;

/**
 * Packs of the sample week look and read as they did when somebody last looked at them: what holds
 * a pack together and the text of each paper to the letter, the pictures of its pages within {@link
 * Comparison}. The five jobs together show every paper, kind of heater and stage. {@code mvn test
 * -Dtest=GoldenTest -Dgolden.renew} writes all of it anew; look at what it changed.
 */
class GoldenTest {
    private static final Path GOLDEN = Path.of("src/test/resources/golden");
    private static final Path TARGET = Path.of("target/golden");
    private static final boolean RENEW = System.getProperty("golden.renew") != null;

    /**
     * Installed evacuated tubes, installed split heat pump, held flat plates, more than 700 L,
     * booked heat pump.
     */
    private static final List<String> JOBS =
            List.of("SB-1102", "SB-1103", "SB-1113", "SB-1127", "SB-1139");

    private static Path packs;

    @BeforeAll
    static void prepare() throws IOException {
        if (RENEW && "true".equals(System.getenv("CI"))) {
            throw new IllegalStateException("renewing is for a person who looks at the pictures");
        }
        packs = SampleWeek.published().resolve("packs");
    }

    @ParameterizedTest
    @ValueSource(strings = {"SB-1102", "SB-1103", "SB-1113", "SB-1127", "SB-1139"})
    void aPackLooksAndReadsAsBefore(String job) throws IOException {
        Path golden = GOLDEN.resolve(job);
        try (PDDocument pack = Loader.loadPDF(packs.resolve(job + ".pdf").toFile())) {
            if (RENEW) {
                renew(pack, golden);
            }
            List<String> differences = texts(pack, golden);
            differences.addAll(pictures(pack, golden, TARGET.resolve(job)));
            assertThat(differences)
                    .as(
                            "%s changed. If it should: mvn test -Dtest=GoldenTest -Dgolden.renew,"
                                    + " then look at what changed",
                            job)
                    .isEmpty();
        }
    }

    @Test
    void theJobsTogetherShowEveryPaper() throws IOException {
        Set<String> shown = new TreeSet<>();
        StringBuilder all = new StringBuilder();
        for (String job : JOBS) {
            try (PDDocument pack = Loader.loadPDF(packs.resolve(job + ".pdf").toFile())) {
                PackPaper.of(pack).forEach(p -> shown.add(p.title()));
                for (PackPaper paper : PackPaper.of(pack)) {
                    all.append(paper.text(pack));
                }
            }
        }
        assertThat(shown).containsAll(PaperKind.values().stream().map(PaperKind::title).toList());
        assertThat(all)
                .contains("evacuated tube solar", "flat plate solar", "heat pump")
                .contains("nobody: not in this pack", "Transfer slip: STCs", "Transfer slip: VEECs")
                .contains("Stage: installed", "Stage: booked");
    }

    private static List<String> texts(PDDocument pack, Path golden) throws IOException {
        List<String> differences = new ArrayList<>();
        note(differences, golden.resolve("structure.txt"), PackPaper.structure(pack));
        for (PackPaper paper : PackPaper.of(pack)) {
            note(differences, golden.resolve(paper.slug() + ".txt"), paper.text(pack));
        }
        return differences;
    }

    private static void note(List<String> differences, Path file, String actual)
            throws IOException {
        String expected = Files.exists(file) ? Files.readString(file) : "";
        String difference = PackPaper.firstDifference(expected, actual);
        if (!difference.isEmpty()) {
            differences.add(file.getFileName() + ": " + difference);
        }
    }

    private static List<String> pictures(PDDocument pack, Path golden, Path kept)
            throws IOException {
        List<String> differences = new ArrayList<>();
        Set<String> drawn = new TreeSet<>();
        for (PackPaper paper : PackPaper.of(pack)) {
            for (int page : paper.pages()) {
                String name = name(paper, page);
                drawn.add(name + ".png");
                BufferedImage actual = PagePicture.grey(pack, page);
                Path file = golden.resolve(name + ".png");
                BufferedImage expected =
                        Files.exists(file) ? ImageIO.read(file.toFile()) : PagePicture.none();
                Comparison comparison = Comparison.of(expected, actual);
                if (!comparison.isSame()) {
                    Path difference = kept.resolve(name + "-difference.png");
                    PagePicture.write(actual, kept.resolve(name + "-actual.png"));
                    PagePicture.write(Comparison.difference(expected, actual), difference);
                    differences.add("%s: %s, see %s".formatted(name, comparison, difference));
                }
            }
        }
        if (!drawn.equals(names(golden))) {
            differences.add("the pages are " + drawn + " and were " + names(golden));
        }
        return differences;
    }

    private static void renew(PDDocument pack, Path golden) throws IOException {
        Files.createDirectories(golden);
        try (Stream<Path> old = Files.list(golden)) {
            for (Path file : old.toList()) {
                Files.delete(file);
            }
        }
        Files.writeString(golden.resolve("structure.txt"), PackPaper.structure(pack));
        for (PackPaper paper : PackPaper.of(pack)) {
            Files.writeString(golden.resolve(paper.slug() + ".txt"), paper.text(pack));
            for (int page : paper.pages()) {
                PagePicture.write(
                        PagePicture.grey(pack, page), golden.resolve(name(paper, page) + ".png"));
            }
        }
    }

    private static String name(PackPaper paper, int page) {
        return paper.slug() + "-" + (page - paper.pages().get(0) + 1);
    }

    private static Set<String> names(Path golden) throws IOException {
        try (Stream<Path> files = Files.list(golden)) {
            return files.map(f -> f.getFileName().toString())
                    .filter(n -> n.endsWith(".png"))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }
}
