package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.job.Field;
import paperbark.output.workbook.CheckedRegister;
import paperbark.output.workbook.PlainRows;
import paperbark.output.workbook.PlainRows.PlainRow;
import paperbark.sheet.Cell;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

/**
 * A list with its findings marked: a copy of a workbook, or a workbook made of a CSV file or of the
 * rows of a workbook that the library can read but not copy.
 *
 * @param content the bytes of an .xlsx file; not to be changed
 * @param noticed what the copy lacks, already listed in it
 */
public record MarkedCopy(byte[] content, List<Finding> noticed) {

    /** Keeps the list from being changed. */
    public MarkedCopy {
        noticed = List.copyOf(noticed);
    }

    /**
     * The copy.
     *
     * @param sheetName the sheet that was read; empty takes the one whose headings match best
     * @param knownHeading tells what is a heading of such a list
     * @throws IOException when the disk does not do its part
     */
    public static MarkedCopy of(
            Path register,
            Optional<String> sheetName,
            Predicate<String> knownHeading,
            List<Finding> findings)
            throws IOException {
        String file = register.getFileName().toString();
        if (SheetReader.isPassing(register)) {
            return plain(
                    values(register, sheetName, knownHeading),
                    findings,
                    "The workbook is too large to be copied with its looks",
                    "Look at the register itself where its looks matter.");
        }
        Optional<PlainRows> csv =
                SheetReader.csvLines(register, knownHeading)
                        .result()
                        .map(lines -> rows(file, "", lines));
        if (csv.isPresent()) {
            return new MarkedCopy(CheckedRegister.of(csv.get(), findings), List.of());
        }
        Optional<byte[]> other = SheetReader.asWorkbook(register).result();
        byte[] original = other.isPresent() ? other.get() : Files.readAllBytes(register);
        try {
            return new MarkedCopy(CheckedRegister.of(file, original, findings), List.of());
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError | LinkageError e) {
            SideProducts.passOn(e);
            return plain(
                    values(register, sheetName, knownHeading),
                    findings,
                    "The workbook can be read, but not copied with its looks",
                    "Save the register as a new .xlsx file for the next time.");
        }
    }

    /**
     * The copy of a register that was refused.
     *
     * @return empty where the file is none that a copy can be made of
     * @throws IOException when the disk does not do its part
     */
    public static Optional<byte[]> ofRefused(Path register, Path tables, List<Finding> findings)
            throws IOException {
        ColumnNames<Field> names =
                HeadingTable.of(Field.values(), "columns", tables, new ArrayList<>());
        if (!Files.isRegularFile(register)) {
            return Optional.empty();
        }
        // What refused the register often keeps a copy from being made; the note tells all.
        return new SideProducts(register.getFileName().toString())
                .make("copy", () -> of(register, Optional.empty(), names::knows, findings))
                .map(MarkedCopy::content);
    }

    /** Its own method, so that the cells are gone when the copy is made. */
    static PlainRows values(
            Path register, Optional<String> sheetName, Predicate<String> knownHeading) {
        Sheet sheet =
                SheetReader.read(register, knownHeading, sheetName)
                        .result()
                        .orElseThrow(() -> new IllegalStateException("nothing to copy"));
        List<Row> rows = new ArrayList<>();
        Map<Integer, Cell> headings = new TreeMap<>();
        sheet.columns()
                .forEach(
                        c ->
                                headings.put(
                                        c.index(),
                                        Cell.text(
                                                c.index(),
                                                c.letters() + sheet.headingRow(),
                                                c.heading())));
        rows.add(new Row(sheet.headingRow(), headings));
        rows.addAll(sheet.rows());
        return rows(sheet.file(), sheet.name(), rows);
    }

    private static MarkedCopy plain(
            PlainRows rows, List<Finding> findings, String why, String remedy) {
        Finding lacking =
                Finding.of(
                                FindingCode.SIDE_FILE_LACKING,
                                new Place.InFile(rows.file()),
                                why
                                        + "; the marked-up copy holds the values of the sheet"
                                        + " that was read, and nothing else of it.",
                                remedy)
                        .as(Severity.NOTE);
        List<Finding> all = new ArrayList<>(findings);
        all.add(lacking);
        return new MarkedCopy(CheckedRegister.of(rows, Finding.inOrder(all)), List.of(lacking));
    }

    static PlainRows rows(String file, String sheet, List<Row> rows) {
        return new PlainRows(
                file,
                sheet,
                rows.stream().map(row -> new PlainRow(row.number(), fields(row))).toList());
    }

    private static List<String> fields(Row row) {
        int last = row.cells().keySet().stream().max(Integer::compareTo).orElse(0);
        return IntStream.rangeClosed(1, last)
                .mapToObj(i -> Optional.ofNullable(row.cells().get(i)).map(Cell::text).orElse(""))
                .toList();
    }
}
