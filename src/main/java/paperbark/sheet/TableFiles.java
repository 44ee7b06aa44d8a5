package paperbark.sheet;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/**
 * Where the firm's tables are kept: in a folder as one workbook with a sheet a table, as a CSV file
 * a table, or partly so; or in a workbook alone.
 *
 * <p>A table that has both a CSV file and a sheet with rows is refused: nobody could tell which of
 * the two the firm means. A sheet without rows beside a CSV file counts for nothing. Rows that show
 * what a row looks like are left out.
 */
public final class TableFiles {
    /** The workbook's name in a folder of tables. */
    public static final String WORKBOOK = "tables.xlsx";

    /** How the first cell of a row begins that only shows what a row looks like. */
    public static final String EXAMPLE = "Example:";

    // What keeps a spreadsheet from running the text of a CSV cell is no part of the text.
    private static final Pattern KEPT_FROM_RUNNING = Pattern.compile("'[=+@'-].*");

    private final Path place;
    private final Optional<Path> workbook;
    private final Map<String, Predicate<String>> known;
    private final Map<String, Reading<Sheet>> sheets;

    private TableFiles(
            Path place,
            Optional<Path> workbook,
            Map<String, Predicate<String>> known,
            Map<String, Reading<Sheet>> sheets) {
        this.place = place;
        this.workbook = workbook;
        this.known = known;
        this.sheets = sheets;
    }

    /**
     * The tables there. A workbook is opened once.
     *
     * @param folderOrWorkbook a folder of tables or a workbook; it need not be there
     * @param known by the table's name whether a heading is one of its own
     */
    public static TableFiles at(Path folderOrWorkbook, Map<String, Predicate<String>> known) {
        Optional<Path> workbook = workbook(folderOrWorkbook);
        return new TableFiles(
                folderOrWorkbook,
                workbook,
                known,
                workbook.map(file -> SheetReader.named(file, known)).orElse(Map.of()));
    }

    /** The workbook of tables at a place; empty where there is none. */
    public static Optional<Path> workbook(Path folderOrWorkbook) {
        return Optional.of(
                        Files.isDirectory(folderOrWorkbook)
                                ? folderOrWorkbook.resolve(WORKBOOK)
                                : folderOrWorkbook)
                .filter(Files::isRegularFile);
    }

    /**
     * The sheet of a table.
     *
     * @return refused with {@link FindingCode#TABLE_MISSING} where there is none, and with {@link
     *     FindingCode#TABLE_TWICE} where there are two
     */
    public Reading<Sheet> sheet(String table) {
        Path csv = place.resolve(table + ".csv");
        Reading<Sheet> inWorkbook = sheets.getOrDefault(table, Reading.refused(List.of()));
        boolean hasCsv = Files.isDirectory(place) && Files.isRegularFile(csv);
        boolean hasSheet = workbook.isPresent() && !isMissing(inWorkbook);
        if (hasCsv && hasSheet && !isEmpty(inWorkbook)) {
            return twice(csv, table);
        }
        if (hasCsv) {
            return plain(SheetReader.read(csv, known.get(table), Optional.empty()));
        }
        return hasSheet ? withoutExamples(inWorkbook) : missing(table);
    }

    /** Whether a sheet of a workbook, and no CSV file, was found to have no rows. */
    public static boolean isEmptySheet(Reading<Sheet> reading) {
        boolean ofWorkbook =
                reading.result().map(sheet -> !sheet.name().isEmpty()).orElse(false)
                        || reading.findings().stream()
                                .anyMatch(f -> !f.place().sheetName().isEmpty());
        return ofWorkbook && isEmpty(reading);
    }

    private static boolean isEmpty(Reading<Sheet> reading) {
        return reading.result()
                .map(sheet -> sheet.rows().stream().allMatch(TableFiles::isExample))
                .orElseGet(
                        () ->
                                reading.findings().stream()
                                        .anyMatch(f -> f.code() == FindingCode.REGISTER_EMPTY));
    }

    private static boolean isMissing(Reading<Sheet> reading) {
        return reading.findings().stream().anyMatch(f -> f.code() == FindingCode.SHEET_NOT_FOUND);
    }

    private static Reading<Sheet> withoutExamples(Reading<Sheet> reading) {
        return new Reading<>(
                reading.result()
                        .map(
                                sheet ->
                                        sheet.with(
                                                sheet.rows().stream()
                                                        .filter(row -> !isExample(row))
                                                        .toList())),
                reading.findings());
    }

    /** Whether the row only shows what a row looks like. */
    private static boolean isExample(Row row) {
        return row.cells().values().stream()
                .filter(cell -> !cell.isBlank())
                .min(Comparator.comparing(Cell::column))
                .filter(cell -> cell.text().regionMatches(true, 0, EXAMPLE, 0, EXAMPLE.length()))
                .isPresent();
    }

    private static Reading<Sheet> plain(Reading<Sheet> reading) {
        return withoutExamples(
                new Reading<>(
                        reading.result()
                                .map(
                                        sheet ->
                                                sheet.with(
                                                        sheet.rows().stream()
                                                                .map(TableFiles::plain)
                                                                .toList())),
                        reading.findings()));
    }

    private static Row plain(Row row) {
        return new Row(
                row.number(),
                row.cells().entrySet().stream()
                        .collect(Collectors.toMap(Map.Entry::getKey, e -> plain(e.getValue()))));
    }

    private static Cell plain(Cell cell) {
        return cell.kind() == Cell.Kind.TEXT && KEPT_FROM_RUNNING.matcher(cell.text()).matches()
                ? new Cell(
                        cell.column(),
                        cell.address(),
                        cell.kind(),
                        cell.text().substring(1),
                        cell.number(),
                        cell.date(),
                        cell.troubles())
                : cell;
    }

    private Reading<Sheet> twice(Path csv, String table) {
        return Reading.refused(
                List.of(
                        Finding.of(
                                FindingCode.TABLE_TWICE,
                                new Place.InFile(csv.getFileName().toString()),
                                "The tables folder has the table "
                                        + table
                                        + " twice: as this file and as a sheet of "
                                        + WORKBOOK
                                        + ".",
                                "Keep one of the two: delete the file, or empty the sheet below its headings.")));
    }

    private Reading<Sheet> missing(String table) {
        if (workbook.isPresent()) {
            return missing(
                    workbook.get().getFileName().toString(),
                    "The workbook has no sheet " + table + ".",
                    "Add a sheet named " + table + ", with its heading row.");
        }
        if (!Files.isDirectory(place)) {
            return missing(
                    String.valueOf(place.getFileName()),
                    "There is neither a folder nor a workbook of this name.",
                    "Name the folder of the firm's tables, or the workbook that holds them.");
        }
        return missing(
                table + ".csv",
                "The tables folder has no file " + table + ".csv.",
                "Put " + table + ".csv into the tables folder, with its heading row.");
    }

    private static Reading<Sheet> missing(String file, String fact, String remedy) {
        return Reading.refused(
                List.of(
                        Finding.of(
                                FindingCode.TABLE_MISSING, new Place.InFile(file), fact, remedy)));
    }
}
