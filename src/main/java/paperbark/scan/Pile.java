package paperbark.scan;

import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/** A file of scanned pages. Not to be used by several threads at once. */
interface Pile extends AutoCloseable {
    /** Pages of more pixels are refused: a sheet of A3 at 600 dots an inch has 70 million. */
    long MOST_PIXELS = 100_000_000L;

    /** A pile of more pages is refused. */
    int MOST_PAGES = 2_000;

    /** A larger file is refused, in bytes. */
    long MOST_BYTES = 1L << 30;

    /** How many pages it has. */
    int pages();

    /**
     * A page as a picture.
     *
     * @param number from 1
     * @throws UnreadablePile when it is damaged or too large
     */
    Grey picture(int number) throws IOException;

    /** Puts a page behind those of a document, without a loss that the eye could see. */
    PDPage copyTo(PDDocument document, int number) throws IOException;

    @Override
    void close() throws IOException;

    /**
     * Opens a pile, by what it holds and not by its name.
     *
     * @throws UnreadablePile when it is none, damaged, locked or too large
     */
    static Pile open(Path file) throws IOException {
        return Piles.open(file);
    }
}
