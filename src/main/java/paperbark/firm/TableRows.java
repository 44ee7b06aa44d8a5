package paperbark.firm;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Reading;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;
import paperbark.sheet.TableFiles;

/**
 * The rows of one of the firm's tables as they stand, usable or not.
 *
 * @param name the table's name
 * @param headings the firm's own, in order, its own additions too
 * @param rows a text for each heading; a day in ISO form, a number in plain digits
 */
public record TableRows(String name, List<String> headings, List<List<String>> rows) {
    /** What cannot be carried over without loss. */
    private static final Set<FindingCode> LOSSES =
            Set.of(FindingCode.COLUMN_UNNAMED, FindingCode.ROW_LONG, FindingCode.HEADING_TWICE);

    private static final int LETTERS = 26;

    /** Keeps the lists from being changed. */
    public TableRows {
        headings = List.copyOf(headings);
        rows = rows.stream().map(List::copyOf).toList();
    }

    /** A table that has no rows yet, with all its headings. */
    public static TableRows empty(String name) {
        List<String> headings =
                TableGuide.of(name).columns().stream().map(ColumnGuide::heading).toList();
        return new TableRows(name, headings, List.of());
    }

    /** Where a heading stands, from 0, whatever its case, spaces and punctuation; else -1. */
    public int column(String heading) {
        String wanted = ColumnNames.normal(heading);
        return IntStream.range(0, headings.size())
                .filter(i -> ColumnNames.normal(headings.get(i)).equals(wanted))
                .findFirst()
                .orElse(-1);
    }

    /** What a row says under a heading; empty where the table has no such column. */
    public String said(List<String> row, String heading) {
        int column = column(heading);
        return column < 0 ? "" : row.get(column);
    }

    /** The same with other rows. */
    public TableRows with(List<List<String>> other) {
        return new TableRows(name, headings, other);
    }

    /**
     * The same with a row more.
     *
     * @param texts by the table's own name of a heading; one that it lacks is left out
     */
    public TableRows plus(Map<String, String> texts) {
        List<List<String>> all = new ArrayList<>(rows);
        String[] row = new String[headings.size()];
        Arrays.fill(row, "");
        texts.forEach(
                (heading, text) -> {
                    if (column(heading) >= 0) {
                        row[column(heading)] = text;
                    }
                });
        all.add(List.of(row));
        return with(all);
    }

    /** What a row goes by: its name, and of a model the maker's too. */
    private String key(List<String> row) {
        String first = TableGuide.of(name).columns().get(0).heading();
        String second = name.equals("products") ? said(row, "model") : "";
        return TakenNames.key(said(row, first)) + "|" + TakenNames.key(second);
    }

    /** The same with the rows of another whose names this one lacks. */
    public TableRows joined(TableRows other) {
        Set<String> names = rows.stream().map(this::key).collect(Collectors.toSet());
        TableRows all = this;
        for (List<String> row : other.rows) {
            if (!names.contains(other.key(row)) && !other.key(row).equals("|")) {
                Map<String, String> texts = new HashMap<>();
                for (int i = 0; i < row.size(); i++) {
                    texts.put(other.headings.get(i), row.get(i));
                }
                all = all.plus(texts);
            }
        }
        return all;
    }

    /**
     * All tables that the firm has at a place, in the order in which a firm fills them in.
     *
     * @return no result, and the reason, where anything there would be lost on the way
     */
    public static Reading<List<TableRows>> read(Path folderOrWorkbook) {
        Map<String, Predicate<String>> known = new HashMap<>();
        TableGuide.all().forEach(guide -> known.put(guide.name(), guide::knows));
        TableFiles files = TableFiles.at(folderOrWorkbook, known);
        List<TableRows> tables = new ArrayList<>();
        List<Finding> trouble = new ArrayList<>();
        for (TableGuide guide : TableGuide.all()) {
            Reading<Sheet> reading = files.sheet(guide.name());
            boolean missing = has(reading, FindingCode.TABLE_MISSING);
            boolean bare = has(reading, FindingCode.REGISTER_EMPTY);
            if (bare) {
                tables.add(empty(guide.name()));
            } else if (!missing) {
                reading.findings().stream()
                        .filter(f -> f.stops() || LOSSES.contains(f.code()))
                        .forEach(trouble::add);
                reading.result().ifPresent(sheet -> tables.add(of(guide.name(), sheet)));
            }
        }
        return trouble.isEmpty() ? Reading.of(tables, List.of()) : Reading.refused(trouble);
    }

    /** A table out of the bytes of a CSV file that the program brings along. */
    public static TableRows ofCsv(String name, byte[] content) {
        return SheetReader.readCsv(name + ".csv", content, TableGuide.of(name)::knows)
                .result()
                .map(sheet -> of(name, sheet))
                .orElseGet(() -> empty(name));
    }

    /** As a sheet of a workbook that nobody has written yet. */
    Sheet sheet() {
        List<Column> columns =
                IntStream.range(0, headings.size())
                        .mapToObj(i -> new Column(i + 1, letters(i), headings.get(i)))
                        .toList();
        List<Row> all =
                IntStream.range(0, rows.size()).mapToObj(i -> row(i + 2, rows.get(i))).toList();
        return new Sheet(TableFiles.WORKBOOK, name, 1, columns, all);
    }

    private static Row row(int number, List<String> texts) {
        Map<Integer, Cell> cells = new HashMap<>();
        for (int i = 0; i < texts.size(); i++) {
            cells.put(i + 1, Cell.text(i + 1, letters(i) + number, texts.get(i)));
        }
        return new Row(number, cells);
    }

    private static String letters(int column) {
        String last = String.valueOf((char) ('A' + column % LETTERS));
        return column < LETTERS ? last : letters(column / LETTERS - 1) + last;
    }

    private static boolean has(Reading<Sheet> reading, FindingCode code) {
        return reading.findings().stream().anyMatch(f -> f.code() == code);
    }

    private static TableRows of(String name, Sheet sheet) {
        Map<Integer, Column> byIndex = new TreeMap<>();
        sheet.columns().forEach(c -> byIndex.put(c.index(), c));
        List<List<String>> rows = new ArrayList<>();
        for (Row row : sheet.rows()) {
            List<String> texts =
                    byIndex.values().stream().map(column -> row.cell(column).text()).toList();
            if (texts.stream().anyMatch(t -> !t.isEmpty())) {
                rows.add(texts);
            }
        }
        return new TableRows(name, byIndex.values().stream().map(Column::heading).toList(), rows);
    }
}
