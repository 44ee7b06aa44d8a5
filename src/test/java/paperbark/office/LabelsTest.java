package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.PDFTextStripperByArea;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.cli.Program;
import paperbark.output.paper.Judge;

/** Labels lie where the sheet has them, their marks can be read, and a letter reaches its owner. */
class LabelsTest {
    private static final double POINTS_PER_MM = 72 / 25.4;
    private static final int DPI = 200;
    private static final String DAY = "2026-11-23";
    private static final String LONG = "Jacaranda Peppermint Wattlebird ".repeat(6).strip();

    @TempDir private static Path shared;

    @TempDir private Path folder;

    /**
     * 27 jobs; the second is held, the third called off, the owner of the fourth lives elsewhere.
     */
    @BeforeAll
    static void prepare() throws IOException {
        Office office = Offices.make(shared.resolve("office"));
        List<String> lines =
                new ArrayList<>(
                        Offices.register(IntStream.rangeClosed(1, 27).toArray()).lines().toList());
        for (int i = 0; i < lines.size(); i++) {
            String more =
                    switch (i) {
                        case 0 ->
                                ",Postal street,Postal suburb,Postal state,Postal postcode,Contact person";
                        case 4 -> ",PO Box 12,Melton,VIC,3337,Bertha Banksia";
                        case 5 -> ",PO Box 13,,VIC,,";
                        default -> ",,,,,";
                    };
            lines.set(i, lines.get(i) + more);
        }
        lines.set(2, lines.get(2).replace("DEMO-2,17/11/2026", ","));
        lines.set(6, lines.get(6).replace("Ada Amberwood", LONG));
        Files.writeString(office.intake().resolve("week.csv"), String.join("\n", lines) + "\n");
        run(shared.resolve("office"), DAY, "watch", ".", "--once", "--quiet-for", "0");
        Program.Run off =
                run(shared.resolve("office"), DAY, "withdraw", "J-3", "--because", "called off");
        assertThat(off.exitCode()).isZero();
    }

    @BeforeEach
    void takeACopy() throws IOException {
        Offices.copy(shared.resolve("office"), folder.resolve("office"));
    }

    private static Program.Run run(Path folder, String day, String... words) {
        return Program.run(Instant.parse(day + "T02:00:00Z"), folder, words);
    }

    private byte[] made(String out, String... words) throws IOException {
        Program.Run run = run(folder.resolve("office"), DAY, words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        return Files.readAllBytes(folder.resolve("office").resolve(out));
    }

    private byte[] labels(String... more) throws IOException {
        List<String> words = new ArrayList<>(List.of("labels"));
        words.addAll(List.of(more));
        return made("labels.pdf", words.toArray(String[]::new));
    }

    private static String[] jobs(String... more) {
        List<String> jobs = new ArrayList<>();
        IntStream.rangeClosed(1, 27).filter(n -> n != 3).forEach(n -> jobs.add("J-" + n));
        jobs.addAll(List.of(more));
        return jobs.toArray(String[]::new);
    }

    /** The job whose mark lies in a part of a page, in millimetres. */
    private static String mark(
            PDDocument document, int page, double x, double y, double w, double h)
            throws Exception {
        BufferedImage all =
                new PDFRenderer(document).renderImageWithDPI(page, DPI, ImageType.BINARY);
        double dots = DPI / 25.4;
        BufferedImage part =
                all.getSubimage(
                        (int) (x * dots), (int) (y * dots), (int) (w * dots), (int) (h * dots));
        int[] pixels =
                part.getRGB(0, 0, part.getWidth(), part.getHeight(), null, 0, part.getWidth());
        return new QRCodeReader()
                .decode(
                        new BinaryBitmap(
                                new HybridBinarizer(
                                        new RGBLuminanceSource(
                                                part.getWidth(), part.getHeight(), pixels))))
                .getText();
    }

    private static String text(
            PDDocument document, int page, double x, double y, double w, double h)
            throws IOException {
        PDFTextStripperByArea area = new PDFTextStripperByArea();
        area.addRegion(
                "label",
                new Rectangle2D.Double(
                        x * POINTS_PER_MM,
                        y * POINTS_PER_MM,
                        w * POINTS_PER_MM,
                        h * POINTS_PER_MM));
        area.extractRegions(document.getPage(page));
        return area.getTextForRegion("label").replaceAll("\\s+", " ").strip();
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void everyLabelLiesInItsPlaceAndItsMarkSaysItsJob() throws Exception {
        try (PDDocument document = Loader.loadPDF(labels(jobs("--start", "3")))) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            String[] jobs = jobs();
            for (int i = 0; i < jobs.length; i++) {
                int place = (i + 2) % 24;
                double x = place % 3 * 70;
                double y = 0.5 + place / 3 * 37;
                int page = (i + 2) / 24;
                assertThat(mark(document, page, x, y, 70, 37)).isEqualTo(jobs[i]);
                String number = jobs[i].substring(2);
                assertThat(text(document, page, x, y, 70, 37))
                        .startsWith(jobs[i] + " ")
                        .contains(number.equals("6") ? "Jacaranda" : "Ada Amberwood");
            }
        }
    }

    @Test
    void aLongNameStaysInItsLabel() throws Exception {
        try (PDDocument document = Loader.loadPDF(labels("J-6", "J-7"))) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            BufferedImage page =
                    new PDFRenderer(document).renderImageWithDPI(0, DPI, ImageType.GRAY);
            int below = (int) (38 * DPI / 25.4);
            for (int x = 0; x < page.getWidth(); x++) {
                for (int y = below; y < page.getHeight(); y++) {
                    assertThat(page.getRGB(x, y) & 0xff).as(x + " " + y).isEqualTo(0xff);
                }
            }
        }
    }

    @Test
    void aTanksLabelNamesNoOwner() throws IOException {
        assertThat(text(labels("J-1", "--tanks")))
                .contains("J-1", "1 Teaspoon Lane", "Dunlin D270-A", "2610040004512101")
                .doesNotContain("Amberwood");
    }

    @Test
    void aSingleLabelIsAPage() throws Exception {
        try (PDDocument document = Loader.loadPDF(labels("J-1", "J-2", "--single"))) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            assertThat((double) document.getPage(0).getMediaBox().getWidth() / POINTS_PER_MM)
                    .isBetween(99.9, 100.1);
            assertThat((double) document.getPage(0).getMediaBox().getHeight() / POINTS_PER_MM)
                    .isBetween(49.9, 50.1);
            assertThat(mark(document, 1, 0, 0, 100, 50)).isEqualTo("J-2");
        }
    }

    @Test
    void otherMeasuresAreTakenAndImpossibleOnesRefused() throws Exception {
        byte[] pdf =
                labels(
                        "J-1",
                        "J-2",
                        "J-4",
                        "--grid",
                        "2x7",
                        "--size",
                        "99.1x38.1",
                        "--first",
                        "4.6x15.1",
                        "--step",
                        "101.6x38.1");
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(mark(document, 0, 4.6 + 101.6, 15.1, 99.1, 38.1)).isEqualTo("J-2");
            assertThat(mark(document, 0, 4.6, 15.1 + 38.1, 99.1, 38.1)).isEqualTo("J-4");
        }
        for (String[] wrong :
                new String[][] {
                    {"--grid", "4x8"},
                    {"--grid", "3x9"},
                    {"--start", "25"},
                    {"--start", "0"},
                    {"--size", "wide"},
                    {"--step", "60x37"},
                    {"--grid", "0x0"},
                    {"--single", "--first=1x1"}
                }) {
            Program.Run run =
                    run(folder.resolve("office"), DAY, "labels", "J-1", wrong[0], wrong[1]);
            assertThat(run.exitCode()).as(wrong[1]).isEqualTo(2);
            assertThat(run.err()).contains("do not lie on a sheet of A4", "Nothing was made.");
        }
    }

    @Test
    void whatWasCalledOffForgottenOrNeverKnownGetsNoneAndNothingIsMade() {
        Path office = folder.resolve("office");
        run(office, "2041-01-01", "forget", "J-5", "--warranty-ended", "2040-01-01");
        Program.Run run = run(office, DAY, "labels", "J-1", "J-3", "J-5", "J-99");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .contains(
                        "Job J-3 was called off or replaced.",
                        "Job J-5 was forgotten.",
                        "The ledger knows no job J-99.",
                        "Nothing was made.")
                .doesNotContain("J-1");
        assertThat(office.resolve("labels.pdf")).doesNotExist();
    }

    @Test
    void aLetterGoesWhereTheOwnerLives() throws IOException {
        assertThat(text(made("envelopes.pdf", "envelopes", "J-4")))
                .isEqualTo(
                        "Saltmarsh Hot Water Pty Ltd 2 Samovar Lane, Ballan VIC 3342 Ada Amberwood"
                                + " Attention: Bertha Banksia PO Box 12 Melton VIC 3337 ");
        assertThat(text(made("envelopes.pdf", "envelopes", "J-1")))
                .contains("Ada Amberwood 1 Teaspoon Lane Ballan VIC 3342");
        Program.Run half = run(folder.resolve("office"), DAY, "envelopes", "J-5");
        assertThat(half.exitCode()).isEqualTo(2);
        assertThat(half.err()).contains("no whole postal address for the owner of job J-5");
        Program.Run form = run(folder.resolve("office"), DAY, "envelopes", "J-1", "--form", "b5");
        assertThat(form.exitCode()).isEqualTo(2);
        assertThat(form.err()).contains("dl, c5, window");
    }

    @ParameterizedTest
    @ValueSource(strings = {"dl", "c5", "window"})
    void envelopesCanBeReadAloudAndKept(String form) throws Exception {
        byte[] pdf = made("envelopes.pdf", "envelopes", "J-1", "J-4", "--form", form);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
        }
        assertThat(Judge.of(pdf)).isEqualTo(Judge.Verdict.CONFORMS);
    }

    @Test
    void labelsCanBeReadAloudAndKept() throws Exception {
        assertThat(Judge.of(labels(jobs()))).isEqualTo(Judge.Verdict.CONFORMS);
        assertThat(Judge.of(labels("J-1", "--tanks", "--single")))
                .isEqualTo(Judge.Verdict.CONFORMS);
    }

    @Test
    void theFirmsOwnTemplateIsUsedAndABrokenOneGivesWay() throws IOException {
        Path own =
                Files.createDirectories(folder.resolve("office/templates/labels"))
                        .resolve("folder.ftlh");
        Files.writeString(own, "<h1>Box ${label.job}</h1>");
        assertThat(text(labels("J-1"))).contains("Box J-1").doesNotContain("Amberwood");
        Files.writeString(own, "<h1>${label.nothing}</h1>");
        assertThat(text(labels("J-1"))).contains("J-1 Ada Amberwood");
    }
}
