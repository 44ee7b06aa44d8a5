package paperbark.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
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
                                        place(file, sheet, row),
                                        why,
                                        "Correct the row; the manual lists the fields on its page \"The register\".")));
    }

    /** The shipped headings, whatever the firm has. */
    public static <F extends ColumnField> ColumnNames<F> shipped(List<F> fields, String name) {
        String file = name + ".csv";
        Sheet sheet =
                SheetReader.readCsv(file, shipped(file), ColumnNames::isOwnHeading)
                        .result()
                        .orElseThrow();
        return ColumnNames.of(fields, sheet, (row, why) -> {});
    }

    private static Place place(String file, Sheet sheet, Row row) {
        return sheet.name().isEmpty()
                ? new Place.InRule(file, row.number())
                : sheet.place(row.number());
    }

    /** Where the firm has no such table, or an empty sheet of it, the shipped headings serve. */
    private static Reading<Sheet> own(String name, String file, Path tables) {
        Reading<Sheet> own =
                TableFiles.at(tables, Map.of(name, ColumnNames::isOwnHeading)).sheet(name);
        boolean missing =
                own.findings().stream().anyMatch(f -> f.code() == FindingCode.TABLE_MISSING);
        return missing || TableFiles.isEmptySheet(own)
                ? SheetReader.readCsv(file, shipped(file), ColumnNames::isOwnHeading)
                : own;
    }

    private static byte[] shipped(String file) {
        try (InputStream in = HeadingTable.class.getResourceAsStream("/" + file)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
