package paperbark.output.workbook;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.Date;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ooxml.POIXMLProperties.CoreProperties;
import org.apache.poi.poifs.filesystem.FileMagic;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.finding.Finding;

/**
 * The admin's own register with every finding marked in its cell: coloured by severity, with a
 * comment, and listed on a sheet of its own. Nothing else of the register changes, and the file it
 * came from is only ever read.
 */
public final class CheckedRegister {
    private CheckedRegister() {}

    /**
     * A marked copy of a workbook.
     *
     * @param file the name by which findings know it
     * @param content the bytes of the register, .xlsx or .xls
     * @return the bytes of an .xlsx file, the same for the same input
     */
    public static byte[] of(String file, byte[] content, List<Finding> findings) {
        try (XSSFWorkbook workbook = opened(content)) {
            CellFinder spots = new CellFinder(workbook, file);
            Map<CellFinder.Spot, List<Finding>> byCell = spots.byCell(findings);
            new Marker(workbook).mark(byCell, spot -> true);
            return written(workbook, findings, spots, byCell, spot -> true, Optional.empty());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A marked workbook made of the rows alone: every value stays text. */
    public static byte[] of(PlainRows rows, List<Finding> findings) {
        PlainBook book = new PlainBook(rows);
        try (XSSFWorkbook workbook = book.workbook()) {
            CellFinder spots = new CellFinder(workbook, rows.file(), book.firstColumns());
            Map<CellFinder.Spot, List<Finding>> byCell = spots.byCell(findings);
            Marker marker = new Marker(workbook);
            Predicate<CellFinder.Spot> inMemory = spot -> !book.isBeyond(spot.address().getRow());
            marker.mark(byCell, inMemory);
            Map<CellAddress, Fill> beyond = new HashMap<>();
            byCell.forEach(
                    (spot, found) -> {
                        if (book.isBeyond(spot.address().getRow())) {
                            beyond.put(spot.address(), Fill.of(Marker.worst(found)));
                        }
                    });
            return written(
                    workbook,
                    findings,
                    spots,
                    byCell,
                    inMemory,
                    book.hasMore()
                            ? Optional.of(
                                    streamed ->
                                            book.writeRest(streamed.getSheetAt(0), beyond, marker))
                            : Optional.empty());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    // Opened from bytes: with a file at hand the library would write to it on closing.
    private static XSSFWorkbook opened(byte[] content) throws IOException {
        return switch (FileMagic.valueOf(content)) {
            case OOXML -> new XSSFWorkbook(new ByteArrayInputStream(content));
            case OLE2 -> {
                try (HSSFWorkbook old = new HSSFWorkbook(new ByteArrayInputStream(content))) {
                    yield new OldBook(old).converted();
                }
            }
            default -> throw new IllegalArgumentException("neither .xlsx nor .xls");
        };
    }

    private static byte[] written(
            XSSFWorkbook workbook,
            List<Finding> findings,
            CellFinder spots,
            Map<CellFinder.Spot, List<Finding>> byCell,
            Predicate<CellFinder.Spot> inMemory,
            Optional<Consumer<SXSSFWorkbook>> further)
            throws IOException {
        FindingsSheet list = new FindingsSheet(workbook, findings, spots, notes(byCell.size()));
        Map<CellFinder.Spot, List<Finding>> near = new LinkedHashMap<>(byCell);
        near.keySet().removeIf(inMemory.negate());
        new WorstColumn(workbook).write(near, list.name(), list.lines());
        // Without a date of its own the library would put the present moment.
        CoreProperties core = workbook.getProperties().getCoreProperties();
        if (core.getModified() == null) {
            core.setModified(
                    Optional.of(
                            core.getCreated() == null
                                    ? Date.from(Instant.EPOCH)
                                    : core.getCreated()));
        }
        if (list.isShort() && further.isEmpty()) {
            // A stream would load the typefaces of the machine, to measure what nobody asks for.
            list.addTo(workbook);
            return SteadyZip.of(workbook);
        }
        try (SXSSFWorkbook streamed = StreamedBook.over(workbook)) {
            further.ifPresent(more -> more.accept(streamed));
            list.addTo(streamed);
            return StreamedBook.bytes(streamed);
        }
    }

    private static List<String> notes(int cells) {
        return cells <= Marker.MOST_COMMENTS
                ? List.of()
                : List.of(
                        String.format(
                                Locale.ROOT,
                                "%,d cells are coloured; only the %,d gravest have a comment too.",
                                cells,
                                Marker.MOST_COMMENTS));
    }
}
