package paperbark.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** Reads which of the firm's headings means which field. */
public final class HeadingTable {
    private HeadingTable() {}

    /**
     * The firm's table of headings, or the shipped one where the firm has none.
     *
     * @param fields the fields that the list has
     * @param name of the table: a sheet of the firm's workbook of tables, or a CSV file
     * @param tables the firm's folder or workbook of tables
     * @param findings takes what is wrong with the table
     */
    public static <F extends ColumnField> ColumnNames<F> of(
            List<F> fields, String name, Path tables, List<Finding> findings) {
        String file = name + ".csv";
        Reading<Sheet> reading = own(name, file, tables);
        findings.addAll(reading.findings());
        Sheet sheet =
                reading.result().orElseGet(() -> new Sheet(file, "", 1, List.of(), List.of()));
        return ColumnNames.of(
                fields,
                sheet,
                (row, why) ->
                        findings.add(
                                Finding.of(
                                        FindingCode.TABLE_ROW_WRONG,
                                        new Place.InRule(file, row.number()),
                                        why,
                                        "Correct the row; the manual lists the fields on its page \"The register\".")));
    }

    private static Reading<Sheet> own(String name, String file, Path tables) {
        Path own = tables.resolve(file);
        if (Files.isRegularFile(own)) {
            return SheetReader.read(own, ColumnNames::isOwnHeading, Optional.empty());
        }
        if (Files.isRegularFile(tables)) {
            Reading<Sheet> sheet =
                    SheetReader.read(tables, ColumnNames::isOwnHeading, Optional.of(name));
            // A workbook without such a sheet is no fault: the shipped headings serve.
            if (sheet.result().isPresent()
                    || sheet.findings().stream()
                            .noneMatch(f -> f.code() == FindingCode.SHEET_NOT_FOUND)) {
                return sheet;
            }
        }
        return SheetReader.readCsv(file, shipped(file), ColumnNames::isOwnHeading);
    }

    private static byte[] shipped(String file) {
        try (InputStream in = HeadingTable.class.getResourceAsStream("/" + file)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
