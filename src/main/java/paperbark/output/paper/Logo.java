package paperbark.output.paper;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.parser.resources.ResourcePolicy;
import com.github.weisj.jsvg.view.FloatSize;
import com.github.weisj.jsvg.view.ViewBox;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.output.RunLimit;

/**
 * The firm's logo, {@code logo.png} or else {@code logo.svg} of its template folder, made ready for
 * print once: on white and no finer than a printer shows. In that form a document takes its bytes
 * as they are, where any other picture is decoded and encoded again for each pack.
 *
 * @param png the picture, not to be changed; empty without a usable logo
 * @param sha256 of the file by its name; empty without one
 * @param finding why the file cannot be used
 */
record Logo(Optional<byte[]> png, Map<String, String> sha256, Optional<Finding> finding) {
    private static final Logger CHATTER = Logger.getLogger("com.github.weisj.jsvg");

    static {
        // The library would write to the terminal.
        CHATTER.setLevel(Level.OFF);
    }

    /** No logo, which is no mistake. */
    static final Logo NONE = new Logo(Optional.empty(), Map.of(), Optional.empty());

    private static final List<String> FILES = List.of("logo.png", "logo.svg");

    // 76 mm by 25 mm at 300 dots an inch, more than a head has room for.
    private static final int WIDEST = 900;
    private static final int HIGHEST = 300;

    private static final long LARGEST_FILE = 10L * 1024 * 1024;

    /** The logo in a template folder given by its real path. */
    static Logo of(Optional<Path> folder, RunLimit limit) {
        Optional<Path> file =
                folder.flatMap(
                        f -> FILES.stream().map(f::resolve).filter(Files::exists).findFirst());
        if (file.isEmpty()) {
            return NONE;
        }
        String name = file.get().getFileName().toString();
        try {
            byte[] bytes = bytes(file.get(), folder.get());
            byte[] ready = limit.run(() -> png(onWhite(name, bytes)), () -> {});
            return new Logo(
                    Optional.of(ready),
                    Map.of(name, DigestUtils.sha256Hex(bytes)),
                    Optional.empty());
        } catch (RunLimit.Exceeded e) {
            return unusable(name, "Reading it " + e.getMessage() + ".");
        } catch (Unusable e) {
            return unusable(name, e.getMessage());
        } catch (Exception e) {
            return unusable(name, "It is damaged, or no picture of that kind.");
        }
    }

    private static Logo unusable(String name, String why) {
        return new Logo(
                Optional.empty(),
                Map.of(),
                Optional.of(
                        Finding.of(
                                        FindingCode.TEMPLATE_BROKEN,
                                        new Place.InTemplate(name, 0, 0),
                                        "The logo cannot be used, and the papers go out without it. "
                                                + why,
                                        "Save it anew as PNG or SVG, or take it out of the folder.")
                                .as(Severity.CHECK)));
    }

    /** The picture cannot be used, for a reason worth telling. */
    private static final class Unusable extends IOException {
        private static final long serialVersionUID = 1L;

        Unusable(String fact) {
            super(fact);
        }
    }

    private static byte[] bytes(Path file, Path folder) throws IOException {
        // The same as for any picture of a template: no link leads out of the folder.
        if (!file.toRealPath().startsWith(folder) || !Files.isRegularFile(file)) {
            throw new Unusable("It is no file of the template folder.");
        }
        if (Files.size(file) > LARGEST_FILE) {
            throw new Unusable("It is larger than 10 MB.");
        }
        return Files.readAllBytes(file);
    }

    private static BufferedImage onWhite(String name, byte[] bytes) throws IOException {
        return name.endsWith(".svg") ? drawing(bytes) : photograph(bytes);
    }

    private static BufferedImage photograph(byte[] bytes) throws IOException {
        try (ImageInputStream in =
                ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                throw new Unusable("It is damaged, or no PNG.");
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in);
                if ((long) reader.getWidth(0) * reader.getHeight(0) > PictureSize.MOST_DOTS) {
                    throw new Unusable("It has more than 60 million dots.");
                }
                return reduced(reader.read(0));
            } finally {
                reader.dispose();
            }
        }
    }

    /** Halved as often as it goes and then once more by less, so that no thin line is lost. */
    private static BufferedImage reduced(BufferedImage picture) {
        double scale = Math.min(1, scale(picture.getWidth(), picture.getHeight()));
        double step = Math.max(scale, 0.5);
        int width = size(picture.getWidth() * step);
        int height = size(picture.getHeight() * step);
        BufferedImage smaller =
                white(width, height, g -> g.drawImage(picture, 0, 0, width, height, null));
        return scale < 0.5 ? reduced(smaller) : smaller;
    }

    private static BufferedImage drawing(byte[] bytes) throws IOException {
        LoaderContext alone =
                LoaderContext.builder().externalResourcePolicy(ResourcePolicy.DENY_ALL).build();
        SVGDocument drawing = new SVGLoader().load(new ByteArrayInputStream(bytes), null, alone);
        if (drawing == null) {
            throw new Unusable("It is damaged, or no SVG.");
        }
        FloatSize is = drawing.size();
        if (!(is.width > 0 && is.height > 0)) {
            throw new Unusable("Its size is zero.");
        }
        double scale = scale(is.width, is.height);
        int width = size(is.width * scale);
        int height = size(is.height * scale);
        return white(width, height, g -> drawing.render(null, g, new ViewBox(width, height)));
    }

    private static double scale(double width, double height) {
        return Math.min(WIDEST / width, HIGHEST / height);
    }

    private static int size(double dots) {
        return (int) Math.max(1, Math.round(dots));
    }

    private interface Drawing {
        void on(Graphics2D graphics);
    }

    private static BufferedImage white(int width, int height, Drawing drawing) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width, height);
        graphics.setRenderingHint(
                RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(
                RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        graphics.setRenderingHint(
                RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        drawing.on(graphics);
        graphics.dispose();
        return image;
    }

    private static byte[] png(BufferedImage image) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "png", out);
        return out.toByteArray();
    }
}
