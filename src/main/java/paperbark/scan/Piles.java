package paperbark.scan;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** Opens piles of each kind. */
final class Piles {
    private static final String SAVE_ANEW = "Scan the pages again, as PDF, TIFF, JPEG or PNG.";

    private Piles() {}

    static Pile open(Path file) throws IOException {
        if (Files.size(file) > Pile.MOST_BYTES) {
            throw new UnreadablePile(
                    "The file is larger than a gigabyte.", "Scan the pages in several piles.");
        }
        try {
            return opened(file);
        } catch (UnreadablePile told) {
            throw told;
        } catch (IOException | RuntimeException | StackOverflowError e) {
            // A file that vanished or a disk that fails is no damaged pile.
            if (!Files.isReadable(file)) {
                throw new IOException(e);
            }
            throw damaged();
        }
    }

    private static Pile opened(Path file) throws IOException {
        byte[] head = new byte[8];
        try (InputStream in = Files.newInputStream(file)) {
            in.readNBytes(head, 0, head.length);
        }
        Pile pile;
        if (starts(head, 'I', 'I', 42, 0) || starts(head, 'M', 'M', 0, 42)) {
            pile = new PicturePile(file, "tiff");
        } else if (starts(head, 0xff, 0xd8, 0xff)) {
            pile = new PicturePile(file, "jpeg");
        } else if (starts(head, 0x89, 'P', 'N', 'G')) {
            pile = new PicturePile(file, "png");
        } else if (starts(head, '%', 'P', 'D', 'F')) {
            pile = new PdfPile(file);
        } else {
            throw new UnreadablePile("The file is no PDF and no picture.", SAVE_ANEW);
        }
        if (pile.pages() == 0 || pile.pages() > Pile.MOST_PAGES) {
            int pages = pile.pages();
            pile.close();
            throw new UnreadablePile(
                    "The file has " + pages + " pages; 1 to " + Pile.MOST_PAGES + " are read.",
                    "Scan the pages in several piles.");
        }
        return pile;
    }

    private static boolean starts(byte[] head, int... with) {
        byte[] wanted = new byte[with.length];
        for (int i = 0; i < with.length; i++) {
            wanted[i] = (byte) with[i];
        }
        return Arrays.equals(Arrays.copyOf(head, with.length), wanted);
    }

    /** Refuses a picture that would not fit into memory. */
    static void refuseHuge(long width, long height) throws UnreadablePile {
        if (width <= 0 || height <= 0 || width * height > Pile.MOST_PIXELS) {
            throw new UnreadablePile(
                    "A page has " + width + " by " + height + " pixels.",
                    "Scan the pages again with 200 or 300 dots an inch.");
        }
    }

    static UnreadablePile damaged() {
        return new UnreadablePile("The file is damaged or locked.", SAVE_ANEW);
    }
}
