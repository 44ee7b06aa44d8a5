package paperbark.sheet;

import static paperbark.finding.FindingCode.FILE_UNREADABLE;

import java.io.IOException;
import java.io.InputStream;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import paperbark.finding.Finding;
import paperbark.finding.Place;

/**
 * Reads one sheet of an .xlsx, .xlsm, .xls or .ods workbook, or a CSV file. The file is never
 * opened for writing.
 */
public final class SheetReader {
    private static final Logger LOG = System.getLogger("paperbark");

    /** The hidden sheet that holds the drop-down lists of workbooks of ours. */
    public static final String LISTS = "Lists of choices";

    /** The sheet on which missing facts are asked for; it holds no jobs. */
    public static final String ANSWERS = "Still missing";

    private static final long LARGEST_CONTENTS = 1_000_000;

    private SheetReader() {}

    /**
     * Reads the file.
     *
     * @param file the workbook or CSV file; a link to one is followed
     * @param knownHeading whether a heading text is one that the caller understands; decides which
     *     row holds the headings and, without a name, which sheet is meant
     * @param sheetName the sheet wanted, also a hidden one; empty takes the visible one whose
     *     headings match best; not looked at for a CSV file
     * @return the sheet, or the findings that say why not; never throws for anything that is wrong
     *     with the file
     */
    public static Reading<Sheet> read(
            Path file, Predicate<String> knownHeading, Optional<String> sheetName) {
        return first(readAll(file, knownHeading, sheetName, SheetRule.NONE));
    }

    private static Reading<Sheet> first(Reading<ReadList> read) {
        return new Reading<>(read.result().map(list -> list.sheets().get(0)), read.findings());
    }

    /**
     * The same of a list that may stand on several sheets, with what a copy of it needs.
     *
     * @param rule which sheets are meant where none is named; not looked at for a CSV file
     */
    public static Reading<ReadList> readAll(
            Path file, Predicate<String> knownHeading, Optional<String> sheetName, SheetRule rule) {
        Path name = file.getFileName();
        Place.InFile place = new Place.InFile(name == null ? file.toString() : name.toString());
        return guarded(
                place,
                () -> {
                    FileKind kind = FileGate.pass(file, place);
                    if (kind != FileKind.TEXT) {
                        return WorkbookReader.read(
                                file, kind, place, knownHeading, sheetName, rule);
                    }
                    return CsvSource.read(place.file(), Files.readAllBytes(file), knownHeading);
                });
    }

    /**
     * Reads several sheets of a workbook, which is opened once.
     *
     * @param wanted for each name whether a heading text is one that the caller understands
     * @return for each name its sheet, or the findings that say why not
     */
    public static Map<String, Reading<Sheet>> named(
            Path workbook, Map<String, Predicate<String>> wanted) {
        Place.InFile place = new Place.InFile(String.valueOf(workbook.getFileName()));
        Reading<Map<String, Reading<Sheet>>> all =
                guarded(
                        place,
                        () ->
                                Reading.of(
                                        WorkbookReader.named(
                                                workbook,
                                                FileGate.pass(workbook, place),
                                                place,
                                                wanted),
                                        List.of()));
        return all.result()
                .orElseGet(
                        () ->
                                wanted.keySet().stream()
                                        .collect(
                                                Collectors.toMap(
                                                        name -> name,
                                                        name -> Reading.refused(all.findings()))));
    }

    /** Reads the bytes of a CSV file that came from elsewhere than the disk. */
    public static Reading<Sheet> readCsv(
            String fileName, byte[] content, Predicate<String> knownHeading) {
        return first(
                guarded(
                        new Place.InFile(fileName),
                        () -> CsvSource.read(fileName, content, knownHeading)));
    }

    /**
     * Every line of a CSV file that holds anything, the headings and what stands above them too.
     *
     * @return the lines; no result and no finding for a workbook
     */
    public static Reading<List<Row>> csvLines(Path file, Predicate<String> knownHeading) {
        Place.InFile place = new Place.InFile(String.valueOf(file.getFileName()));
        return guarded(
                place,
                () ->
                        FileGate.pass(file, place) == FileKind.TEXT
                                ? CsvSource.lines(
                                        place.file(), Files.readAllBytes(file), knownHeading)
                                : Reading.refused(List.of()));
    }

    /** The same of the bytes of a CSV file that came from elsewhere than the disk. */
    public static Reading<List<Row>> csvLines(
            String fileName, byte[] content, Predicate<String> knownHeading) {
        return guarded(
                new Place.InFile(fileName), () -> CsvSource.lines(fileName, content, knownHeading));
    }

    /**
     * An .xlsx made of a file that can be read but not be copied as it is: an OpenDocument
     * spreadsheet, or a workbook with macros, without them.
     *
     * @return the bytes; no result and no finding for any other file
     */
    public static Reading<byte[]> asWorkbook(Path file) {
        Place.InFile place = new Place.InFile(String.valueOf(file.getFileName()));
        return guarded(
                place,
                () ->
                        CopiedWorkbook.of(file, FileGate.pass(file, place), place)
                                .map(bytes -> Reading.of(bytes, List.of()))
                                .orElse(Reading.refused(List.of())));
    }

    /**
     * Whether a file is a workbook so large that its cells are never all in memory at once. Asked
     * of its table of contents alone.
     */
    public static boolean isPassing(Path file) {
        Place place = new Place.InFile(String.valueOf(file.getFileName()));
        return guarded(place, () -> Reading.of(PassingBook.isNeeded(file), List.of()))
                .result()
                .orElse(false);
    }

    /** Whether an .xlsx has a sheet of a name. Asked of its table of contents alone. */
    public static boolean hasSheet(Path file, String name) {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            ZipEntry contents = zip.getEntry("xl/workbook.xml");
            if (contents == null || contents.getSize() > LARGEST_CONTENTS) {
                return false;
            }
            try (InputStream in = zip.getInputStream(contents)) {
                String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
                return text.contains("name=\"" + name + "\"");
            }
        } catch (IOException | RuntimeException none) {
            // No workbook of this kind; whoever reads it says what is wrong with it.
            return false;
        }
    }

    private interface Work<T> {
        Reading<T> read() throws Refused, IOException;
    }

    /**
     * The one boundary to the libraries, which fail with a dozen unchecked exceptions and errors on
     * damaged files. Only a virtual machine that is out of memory or broken is passed on.
     */
    private static <T> Reading<T> guarded(Place place, Work<T> work) {
        try {
            return work.read();
        } catch (Refused refused) {
            return Reading.refused(refused.findings());
        } catch (StackOverflowError e) {
            return unreadable(place, e);
        } catch (VirtualMachineError e) {
            throw e;
        } catch (Throwable e) {
            return unreadable(place, e);
        }
    }

    /** Its own text is kept for whoever mends it: it may repeat what people wrote in the file. */
    private static <T> Reading<T> unreadable(Place place, Throwable cause) {
        LOG.log(Level.DEBUG, "a file that cannot be read", cause);
        Finding finding =
                Finding.of(
                        FILE_UNREADABLE,
                        place,
                        "The file is damaged or holds something that no spreadsheet program writes.",
                        "Open it in the spreadsheet program and save it as a new .xlsx file.");
        return Reading.refused(List.of(finding));
    }
}
