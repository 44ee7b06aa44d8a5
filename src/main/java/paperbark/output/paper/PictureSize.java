package paperbark.output.paper;

import java.io.IOException;
import java.io.InputStream;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;

/** How many dots a picture has, read off its first bytes: few bytes may unpack to a great many. */
final class PictureSize {
    /** A photograph of a good camera; a picture of more is packed to fill the memory. */
    static final long MOST_DOTS = 60_000_000;

    private PictureSize() {}

    /** The end of a sentence that says that the picture is too large; empty where it is not. */
    static Optional<String> excess(InputStream picture) throws IOException {
        try (ImageInputStream in = new MemoryCacheImageInputStream(picture)) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return Optional.empty();
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in);
                long dots = (long) reader.getWidth(0) * reader.getHeight(0);
                return dots <= MOST_DOTS
                        ? Optional.empty()
                        : Optional.of(
                                String.format(
                                        Locale.ROOT,
                                        "which has %,d dots; the limit is %,d",
                                        dots,
                                        MOST_DOTS));
            } finally {
                reader.dispose();
            }
        }
    }
}
