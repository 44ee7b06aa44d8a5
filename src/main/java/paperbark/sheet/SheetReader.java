package paperbark.sheet;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Reads one sheet of an .xlsx or .xls workbook, or a CSV file. The file is never opened for
 * writing.
 */
public final class SheetReader {
    private SheetReader() {}

    /**
     * Reads the file.
     *
     * @param file the workbook or CSV file
     * @param knownHeading whether a heading text is one that the caller understands; decides which
     *     row holds the headings and, without a name, which sheet is meant
     * @param sheetName the sheet wanted; empty takes the one whose headings match best
     * @return the sheet, or the findings that say why not; never throws for anything that is wrong
     *     with the file
     */
    public static Reading<Sheet> read(
            Path file, Predicate<String> knownHeading, Optional<String> sheetName) {
        throw new UnsupportedOperationException();
    }

    /** Reads the bytes of a CSV file that came from elsewhere than the disk. */
    public static Reading<Sheet> readCsv(
            String fileName, byte[] content, Predicate<String> knownHeading) {
        throw new UnsupportedOperationException();
    }
}
