package paperbark.firm;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.firm.ColumnGuide.Holds;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;
import paperbark.value.SchemeName;

/**
 * What people are told of one of the firm's tables. The columns are those that the table is read
 * by; what is said of them stands in {@code table-guide.csv}.
 *
 * @param name the table's name
 * @param about what it is for: a sentence or two
 * @param columns in the order in which they are shown
 * @param facts what each row may be about, where that is fixed as in the firm's own table
 */
public record TableGuide(
        String name, String about, List<ColumnGuide> columns, List<ColumnGuide> facts) {
    private static final String FILE = "table-guide.csv";
    private static final List<String> HEADINGS =
            List.of("table", "column", "holds", "choices", "example", "note");

    /** Tables that other rooms read, with all their headings. */
    private static final List<TableShape> OF_HEADINGS =
            List.of(headings("columns"), headings("advice-columns"), headings("listed-columns"));

    /** A firm may do without these; one without rows is as good as none. */
    private static final Set<String> OPTIONAL =
            Set.of("accounts", "columns", "advice-columns", "listed-columns", "words");

    private static final List<TableGuide> ALL = read();

    /** Keeps the lists from being changed. */
    public TableGuide {
        columns = List.copyOf(columns);
        facts = List.copyOf(facts);
    }

    /** All tables, in the order in which a firm fills them in. */
    public static List<TableGuide> all() {
        return ALL;
    }

    /** The table of that name; it must be one of ours. */
    public static TableGuide of(String table) {
        return ALL.stream().filter(g -> g.name.equals(table)).findFirst().orElseThrow();
    }

    /** Whether a firm may do without it. */
    public boolean isOptional() {
        return OPTIONAL.contains(name);
    }

    /** Whether a heading is one of the table's, whatever its case, spaces and punctuation. */
    public boolean knows(String heading) {
        return heading.equalsIgnoreCase("note")
                || heading.equalsIgnoreCase("notes")
                || columns.stream()
                        .anyMatch(
                                c ->
                                        ColumnNames.normal(c.heading())
                                                .equals(ColumnNames.normal(heading)));
    }

    /** What is told of the column with a heading; of one that the firm added nothing. */
    public ColumnGuide column(String heading) {
        return columns.stream()
                .filter(c -> ColumnNames.normal(c.heading()).equals(ColumnNames.normal(heading)))
                .findFirst()
                .orElseGet(() -> ColumnGuide.plain(heading));
    }

    private static TableShape headings(String name) {
        return new TableShape(name, List.of("field", "alias"), List.of("always"));
    }

    private static List<TableGuide> read() {
        Map<String, Map<String, ColumnGuide>> told = new LinkedHashMap<>();
        Sheet sheet = SheetReader.readCsv(FILE, bytes(), HEADINGS::contains).result().orElseThrow();
        for (Row row : sheet.rows()) {
            ColumnGuide column = column(sheet, row);
            told.computeIfAbsent(said(sheet, row, "table"), t -> new LinkedHashMap<>())
                    .put(column.heading(), column);
        }
        List<TableShape> shapes = new ArrayList<>(TableShape.all());
        shapes.addAll(OF_HEADINGS);
        Map<String, TableShape> byName =
                shapes.stream().collect(Collectors.toMap(TableShape::name, s -> s));
        return told.keySet().stream()
                .filter(byName::containsKey)
                .map(
                        table ->
                                guide(
                                        byName.get(table),
                                        told.get(table),
                                        told.getOrDefault(table + ".fact", Map.of())))
                .toList();
    }

    /** In the order of the text; a column that it does not know comes last. */
    private static TableGuide guide(
            TableShape shape, Map<String, ColumnGuide> told, Map<String, ColumnGuide> facts) {
        List<String> own = new ArrayList<>();
        for (String heading : told.keySet()) {
            shape.own().stream()
                    .filter(h -> h.equals(heading) || isOfScheme(h, heading))
                    .forEach(own::add);
        }
        shape.own().stream().filter(h -> !own.contains(h)).forEach(own::add);
        return new TableGuide(
                shape.name(),
                told.get("").note(),
                own.stream().map(h -> told(h, told)).toList(),
                facts.values().stream().toList());
    }

    private static ColumnGuide told(String heading, Map<String, ColumnGuide> told) {
        return told.values().stream()
                .filter(c -> c.heading().equals(heading) || isOfScheme(heading, c.heading()))
                .findFirst()
                .map(c -> c.named(heading))
                .orElseGet(() -> ColumnGuide.plain(heading));
    }

    /** A column that there is once for each scheme is told of once. */
    private static boolean isOfScheme(String heading, String pattern) {
        return pattern.startsWith("*") && heading.endsWith(pattern.substring(1));
    }

    private static ColumnGuide column(Sheet sheet, Row row) {
        String holds = said(sheet, row, "holds");
        List<String> choices =
                List.of(said(sheet, row, "choices").split(";")).stream()
                        .filter(c -> !c.isEmpty())
                        .toList();
        if (choices.equals(List.of("@schemes"))) {
            choices = Arrays.stream(SchemeName.values()).map(SchemeName::word).toList();
        }
        boolean name = holds.equals("name");
        return new ColumnGuide(
                said(sheet, row, "column"),
                holds.isEmpty() ? Holds.TEXT : Holds.valueOf(holds.toUpperCase(Locale.ROOT)),
                name ? List.of() : choices,
                name ? choices.get(0) : "",
                said(sheet, row, "example"),
                said(sheet, row, "note"));
    }

    private static String said(Sheet sheet, Row row, String heading) {
        return sheet.columns().stream()
                .filter((Column c) -> c.heading().equals(heading))
                .findFirst()
                .map(c -> row.cell(c).text())
                .orElse("");
    }

    private static byte[] bytes() {
        try (InputStream in = TableGuide.class.getResourceAsStream("/" + FILE)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
