package paperbark.batch;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import paperbark.finding.Finding;
import paperbark.job.Field;
import paperbark.output.workbook.CheckedRegister;
import paperbark.output.workbook.PlainRows;
import paperbark.output.workbook.PlainRows.PlainRow;
import paperbark.sheet.Cell;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.Row;
import paperbark.sheet.SheetReader;

/** A list with its findings marked: a copy of a workbook, or a workbook made of a CSV file. */
public final class MarkedCopy {
    private MarkedCopy() {}

    /**
     * The copy.
     *
     * @param knownHeading tells what is a heading of such a list
     */
    public static byte[] of(Path register, Predicate<String> knownHeading, List<Finding> findings) {
        Optional<List<Row>> lines = SheetReader.csvLines(register, knownHeading).result();
        if (lines.isEmpty()) {
            return CheckedRegister.of(register, findings);
        }
        List<PlainRow> rows =
                lines.get().stream().map(row -> new PlainRow(row.number(), fields(row))).toList();
        return CheckedRegister.of(new PlainRows(register.getFileName().toString(), rows), findings);
    }

    /**
     * The copy of a register that was refused.
     *
     * @return empty where the file is none that a copy can be made of
     */
    public static Optional<byte[]> ofRefused(Path register, Path tables, List<Finding> findings) {
        try {
            ColumnNames<Field> names =
                    HeadingTable.of(Field.values(), "columns", tables, new ArrayList<>());
            return Optional.of(of(register, names::knows, findings));
        } catch (RuntimeException unreadable) {
            // What refused the register often keeps a copy from being made; the note tells all.
            return Optional.empty();
        }
    }

    private static List<String> fields(Row row) {
        int last = row.cells().keySet().stream().max(Integer::compareTo).orElse(0);
        return IntStream.rangeClosed(1, last)
                .mapToObj(i -> Optional.ofNullable(row.cells().get(i)).map(Cell::text).orElse(""))
                .toList();
    }
}
