package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;
import paperbark.cli.Program;
import paperbark.finding.Severity;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.TemplateEngine;

/**
 * The firm's logo stands in the head of every page, comes from the folder alone and costs little.
 */
class LogoTest {
    private static final CaseFile TWO_PAPERS =
            CaseFiles.withPapers(
                    CaseFiles.installedSolar(),
                    new Paper(PaperKind.OLD_HEATER, "default", List.of()),
                    new Paper(PaperKind.HANDOVER, "default", List.of()));

    private static final String RED_SVG =
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 300 60\"><rect width=\"300\" height=\"60\" fill=\"#ff0000\"/>%s</svg>";

    @TempDir Path folder;

    private void redPng(int width, int height) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.RED);
        graphics.fillRect(0, 0, width / 2, height);
        graphics.dispose();
        ImageIO.write(image, "png", folder.resolve("logo.png").toFile());
    }

    private Pack pack() {
        Packs packs = new Packs(Optional.of(folder));
        assertThat(packs.findings()).isEmpty();
        Pack pack = packs.make(TWO_PAPERS, List.of());
        assertThat(pack.findings()).isEmpty();
        return pack;
    }

    /** The red dots of a page: from left, from top, to right, to bottom, in millimetres. */
    private static int[] red(PDDocument document, int page) throws IOException {
        BufferedImage image = new PDFRenderer(document).renderImageWithDPI(page, 101.6f);
        int[] box = {9999, 9999, -1, -1};
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                Color colour = new Color(image.getRGB(x, y));
                if (colour.getRed() > 200 && colour.getGreen() < 60) {
                    box[0] = Math.min(box[0], x / 4);
                    box[1] = Math.min(box[1], y / 4);
                    box[2] = Math.max(box[2], x / 4);
                    box[3] = Math.max(box[3], y / 4);
                }
            }
        }
        return box;
    }

    @Test
    void aPngStandsAtTheTopLeftOfEveryPageInItsOwnProportions() throws IOException {
        redPng(2400, 600);
        try (PDDocument document = Loader.loadPDF(pack().pdf())) {
            assertThat(document.getNumberOfPages()).isGreaterThan(3);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                if (!document.getPage(page).hasContents()) {
                    // A blank back says nothing, not even whose it is.
                    continue;
                }
                int[] box = red(document, page);
                assertThat(box[0]).as("left").isBetween(17, 19);
                assertThat(box[1]).as("top").isBetween(4, 12);
                assertThat(box[2] - box[0]).as("width of its red half").isBetween(16, 19);
                assertThat(box[3] - box[1]).as("height").isBetween(7, 9);
            }
        }
    }

    @Test
    void aDocumentHoldsThePictureOnceAndAsItWasMadeReady() throws IOException {
        redPng(2400, 600);
        Set<COSBase> pictures = Collections.newSetFromMap(new IdentityHashMap<>());
        try (PDDocument document = Loader.loadPDF(pack().pdf())) {
            for (PDPage page : document.getPages()) {
                PDResources resources = page.getResources();
                for (COSName name : resources.getXObjectNames()) {
                    pictures.add(resources.getXObject(name).getCOSObject());
                }
            }
        }
        assertThat(pictures).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "<text x=\"5\" y=\"20\">Ours</text>", "<path d=\"M0 0 L 9 9\"/>"})
    void anSvgStandsThereToo(String more) throws IOException {
        Files.writeString(folder.resolve("logo.svg"), RED_SVG.formatted(more));
        try (PDDocument document = Loader.loadPDF(pack().pdf())) {
            int[] box = red(document, 0);
            assertThat(box[2] - box[0]).as("width").isBetween(42, 46);
        }
    }

    @Test
    void theAltTextIsTheFirmsName() throws IOException {
        redPng(200, 50);
        TemplateEngine engine = new TemplateEngine(Optional.of(folder));
        Logo logo = Logo.of(Optional.of(folder.toRealPath()), paperbark.output.RunLimit.USUAL);
        PaperMarkup markup =
                new PaperWriter(engine, engine, TWO_PAPERS, logo, Optional.empty())
                        .write(TWO_PAPERS.papers().get(0));

        Element image = (Element) markup.running().getElementsByTagName("img").item(0);
        assertThat(image.getAttribute("alt")).isEqualTo(TWO_PAPERS.firm().name());
    }

    @Test
    void anSvgReachesNeitherNetworkNorFiles() throws IOException {
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            server.setSoTimeout(300);
            String there = "http://localhost:" + server.getLocalPort() + "/";
            Files.writeString(
                    folder.resolve("logo.svg"),
                    "<?xml-stylesheet href=\"%sa.css\"?><!DOCTYPE svg SYSTEM \"%sb.dtd\" [<!ENTITY c SYSTEM \"%sc\">]>"
                                    .formatted(there, there, there)
                            + RED_SVG.formatted(
                                    "<style>@import url(%sd.css);</style><image href=\"%se.png\" width=\"9\" height=\"9\"/><use href=\"%sf.svg#g\"/><text>&c;</text>"
                                            .formatted(there, there, there)));
            Packs packs = new Packs(Optional.of(folder));
            packs.make(TWO_PAPERS, List.of());
            assertThat(connections(server)).isZero();
        }
    }

    private static int connections(ServerSocket server) throws IOException {
        try {
            server.accept().close();
            return 1;
        } catch (SocketTimeoutException e) {
            return 0;
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"logo.png", "logo.svg"})
    void aBrokenOneIsOneFindingAndThePapersGoOutWithoutIt(String name) throws IOException {
        Files.writeString(folder.resolve(name), "<svg no picture at all");
        Packs packs = new Packs(Optional.of(folder));

        assertThat(packs.findings())
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.place().file()).isEqualTo(name);
                            assertThat(f.severity()).isEqualTo(Severity.CHECK);
                            assertThat(f.fact()).startsWith("The logo cannot be used");
                        });
        assertThat(packs.make(TWO_PAPERS, List.of()).findings()).isEmpty();
    }

    @Test
    void aLinkOutOfTheFolderIsNotFollowed() throws IOException {
        redPng(20, 5);
        Path templates = Files.createDirectory(folder.resolve("templates"));
        Files.createSymbolicLink(templates.resolve("logo.png"), folder.resolve("logo.png"));

        assertThat(new Packs(Optional.of(templates)).findings())
                .singleElement()
                .satisfies(f -> assertThat(f.fact()).contains("no file of the template folder"));
    }

    @Test
    void aBatchTellsItOnceHoweverManyJobsItHas() throws IOException {
        Files.createDirectories(folder.resolve("templates"));
        Files.writeString(folder.resolve("templates/logo.png"), "no picture");
        Files.writeString(
                folder.resolve("week.csv"),
                """
                Job,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model,Stage,Claim STCs
                T-1,Ada Amberwood,4 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,booked,yes
                T-2,Bela Brackenfold,6 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,booked,yes
                """);
        String tables = Path.of("input-samples/tables").toAbsolutePath().toString();
        Program.Run run = Program.run(folder, "prepare", "week.csv", "--tables", tables);

        assertThat(run.exitCode()).isZero();
        assertThat(run.out().lines().filter(l -> l.contains("[template-broken]"))).hasSize(1);
    }
}
