package paperbark.office;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import paperbark.finding.Finding;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.job.Field;
import paperbark.job.FieldForm;
import paperbark.output.workbook.ListToFill;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.Reading;

/** Makes an empty register in the firm's own headings, ready to be typed into. */
public final class RegisterDesk {
    private static final String USUAL_SHEET = "Jobs";
    private static final String NEWEST = "newest month";

    /** Sheets may be named after a month, and then the newest is read. */
    private static final DateTimeFormatter MONTH =
            DateTimeFormatter.ofPattern("MMM uuuu", Locale.ENGLISH);

    /** More headings than this are a table of all headings that people may use, not one list's. */
    private static final int MOST_OF_ONE_LIST = 100;

    /** What a list begins with where the firm's headings are nowhere written down. */
    private static final Set<String> RARE =
            Set.of(
                    "corrects",
                    "date",
                    "second-owner",
                    "site-position",
                    "postal-street",
                    "postal-suburb",
                    "postal-state",
                    "postal-postcode",
                    "litres",
                    "collectors",
                    "declarations-date",
                    "old-serial",
                    "old-removed-date",
                    "scheme",
                    "certificate-buyer",
                    "certificate-count",
                    "certificate-benefit",
                    "stc-zone",
                    "stc-count",
                    "veec-count",
                    "co-payment",
                    "account-name",
                    "bsb",
                    "account",
                    "office-note");

    private RegisterDesk() {}

    /**
     * The empty register as a workbook.
     *
     * @param tables the firm's, of which come headings, names and words
     * @param today names the sheet where the firm's sheets are named after months
     * @return no result, and the findings, where the tables cannot be read
     */
    public static Reading<byte[]> empty(Path tables, LocalDate today) {
        List<Finding> findings = new ArrayList<>();
        Reading<FirmTables> firm = FirmTablesReader.read(tables);
        ColumnNames<Field> names = HeadingTable.of(Field.values(), "columns", tables, findings);
        if (firm.result().isEmpty()) {
            return Reading.refused(firm.findings().stream().filter(Finding::stops).toList());
        }
        FirmTables known = firm.result().get();
        List<ListToFill.Entry> entries =
                fields(names).stream().map(field -> entry(field, names, known)).toList();
        return Reading.of(ListToFill.of(sheet(names, today), entries), List.of());
    }

    /** Those that the firm has a heading for; the usual ones where its table is that of all. */
    private static List<Field> fields(ColumnNames<Field> names) {
        long all = Field.values().stream().mapToLong(f -> names.headings(f).size()).sum();
        boolean own = all > 0 && all <= MOST_OF_ONE_LIST;
        List<Field> chosen =
                Field.values().stream()
                        .filter(
                                f ->
                                        own
                                                ? !names.headings(f).isEmpty()
                                                : f.parts().isEmpty() && !RARE.contains(f.key()))
                        .toList();
        List<Field> fields = new ArrayList<>(chosen);
        // A register without these would be refused, unless the table says them of every row.
        Field.values().stream()
                .filter(f -> f.isNeeded() && !fields.contains(f) && names.always(f).isEmpty())
                .filter(f -> chosen.stream().noneMatch(c -> c.parts().contains(f)))
                .forEach(fields::add);
        return fields;
    }

    private static ListToFill.Entry entry(
            Field field, ColumnNames<Field> names, FirmTables tables) {
        FieldForm form = FieldForm.of(field, tables);
        String heading = names.headings(field).stream().findFirst().orElse(field.label());
        String note = field.label() + (field.isNeeded() ? ". Every job needs it." : ".");
        return new ListToFill.Entry(heading, form.holds(), form.choices(), note);
    }

    private static String sheet(ColumnNames<Field> names, LocalDate today) {
        Optional<String> pattern = names.sheets().patterns().stream().findFirst();
        return pattern.map(
                        p -> p.equalsIgnoreCase(NEWEST) ? MONTH.format(today) : p.replace("*", "1"))
                .orElse(USUAL_SHEET);
    }
}
