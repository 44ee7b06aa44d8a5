package paperbark.output.form;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.output.table.SafeCsv;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Reading;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;
import paperbark.value.Parsed;

/**
 * What a maker or buyer takes as entries: a table with the columns {@code heading,value,form},
 * whose rows are in the order of the recipient's own page. A first cell that begins with # is a
 * remark, or one of the options {@code #page} and {@code #table} with {@code no} behind it.
 *
 * @param file name of the list
 * @param rows the entries
 * @param page whether a page to type from is wanted
 * @param table whether a table to send is wanted
 */
record EntryList(String file, List<EntryRow> rows, boolean page, boolean table) {

    /** Keeps the list from being changed. */
    EntryList {
        rows = List.copyOf(rows);
    }

    /**
     * One entry.
     *
     * @param row line of the list, from 1
     * @param heading as the recipient calls it
     * @param value in the language of templates
     * @param form of a day, such as {@code dd/mm/yyyy}
     */
    record EntryRow(int row, String heading, String value, Optional<String> form) {}

    /**
     * Reads a list.
     *
     * @param findings takes a check for each row that cannot be used, and for a list without any
     */
    static EntryList read(String file, String text, List<Finding> findings) {
        Reading<List<Row>> lines =
                SheetReader.csvLines(
                        file,
                        text.getBytes(StandardCharsets.UTF_8),
                        heading ->
                                heading.strip().toLowerCase(Locale.ROOT).matches("heading|value"));
        findings.addAll(lines.findings().stream().map(f -> beside(f.place(), f.fact())).toList());
        List<EntryRow> entries = new ArrayList<>();
        Map<String, Column> columns = new HashMap<>();
        boolean page = true;
        boolean table = true;
        for (Row row : lines.result().orElse(List.of())) {
            String first = text(row, 1);
            if (first.startsWith("#")) {
                boolean no = text(row, 2).equalsIgnoreCase("no");
                page &= !(no && first.equals("#page"));
                table &= !(no && first.equals("#table"));
            } else if (columns.isEmpty()) {
                row.cells().values().forEach(cell -> heading(cell, columns));
            } else {
                Sheet sheet = new Sheet(file, "", 1, List.copyOf(columns.values()), List.of());
                entry(new MappingRow(sheet, columns, row, findings)).ifPresent(entries::add);
            }
        }
        if (entries.isEmpty()) {
            findings.add(
                    beside(new Place.InRule(file, 0), "The list has no entry that can be used."));
        }
        return new EntryList(file, entries, page, table);
    }

    /** A check that holds nothing: entries lie beside the papers. */
    static Finding beside(Place place, String fact) {
        return Finding.of(
                FindingCode.SIDE_FILE_LACKING,
                place,
                fact,
                "Mend the list of entries; papers and claims are whole.");
    }

    private static String text(Row row, int column) {
        Cell cell = row.cells().get(column);
        return cell == null ? "" : cell.text();
    }

    private static void heading(Cell cell, Map<String, Column> columns) {
        columns.putIfAbsent(
                cell.text().toLowerCase(Locale.ROOT),
                new Column(cell.column(), cell.address().replaceAll("[0-9]", ""), cell.text()));
    }

    private static Optional<EntryRow> entry(MappingRow row) {
        Optional<String> heading = row.text("heading").map(SafeCsv::bare);
        String value = row.text("value").map(v -> v.replace("\\n", "\n")).orElse("");
        Optional<String> form =
                row.value("form", FindingCode.TABLE_ROW_WRONG, EntryList::formOfDays);
        return heading.filter(h -> row.unread().isEmpty())
                .map(h -> new EntryRow(row.number(), h, value, form));
    }

    private static Parsed<String> formOfDays(String text) {
        String form = text.toLowerCase(Locale.ROOT);
        return form.matches("[dmy]{1,4}([-/. ]{0,2}[dmy]{1,4}){0,2}")
                ? Parsed.ok(form)
                : Parsed.bad(
                        "The text is no form of a day.",
                        "Type a form such as dd/mm/yyyy, or leave the cell empty.");
    }
}
