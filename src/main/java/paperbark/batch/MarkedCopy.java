package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.job.Field;
import paperbark.output.workbook.CheckedRegister;
import paperbark.output.workbook.PlainRows;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.ReadList;
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
     * The copy of a list that was read.
     *
     * @throws IOException when the disk does not do its part
     */
    public static MarkedCopy of(CopySource source, List<Finding> findings) throws IOException {
        return switch (source.form()) {
            case TEXT -> new MarkedCopy(CheckedRegister.of(source.rows(), findings), List.of());
            case PASSING ->
                    plain(
                            source.rows(),
                            findings,
                            "The workbook is too large to be copied with its looks",
                            "Look at the register itself where its looks matter.");
            case WORKBOOK -> copied(source, Files.readAllBytes(source.file()), findings);
            case CONVERTED ->
                    copied(
                            source,
                            SheetReader.asWorkbook(source.file())
                                    .result()
                                    .orElseThrow(
                                            () -> new IllegalStateException("nothing to copy")),
                            findings);
        };
    }

    private static MarkedCopy copied(CopySource source, byte[] original, List<Finding> findings)
            throws IOException {
        try {
            return new MarkedCopy(
                    CheckedRegister.of(source.rows().file(), original, findings), List.of());
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError | LinkageError e) {
            SideProducts.passOn(e);
            return plain(
                    source.rows(),
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
                .make("copy", () -> again(register, names, findings))
                .map(MarkedCopy::content);
    }

    /** Reads it once more: of a register that was refused nothing is kept. */
    private static MarkedCopy again(Path register, ColumnNames<Field> names, List<Finding> findings)
            throws IOException {
        Optional<ReadList> read =
                SheetReader.readAll(register, names::knows, Optional.empty(), names.sheets())
                        .result();
        if (read.isPresent()) {
            return of(CopySource.of(register, read.get()), findings);
        }
        if (SheetReader.isPassing(register)) {
            throw new IllegalStateException("too large to be copied, and not read");
        }
        String file = register.getFileName().toString();
        Optional<PlainRows> csv =
                SheetReader.csvLines(register, names::knows)
                        .result()
                        .map(lines -> CopySource.rows(file, "", lines));
        if (csv.isPresent()) {
            return new MarkedCopy(CheckedRegister.of(csv.get(), findings), List.of());
        }
        Optional<byte[]> other = SheetReader.asWorkbook(register).result();
        byte[] original = other.isPresent() ? other.get() : Files.readAllBytes(register);
        return new MarkedCopy(CheckedRegister.of(file, original, findings), List.of());
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
}
