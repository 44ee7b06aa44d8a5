package paperbark.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import paperbark.firm.FirmTables;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Sheet;
import paperbark.value.SchemeName;

/** What the values of a column say of it. */
final class ColumnValues {
    /** More than these tell no more. */
    private static final int LOOKED_AT = 200;

    private static final int MOST = 80;

    /** Of names and words the firm may have some of its own. */
    private static final int MORE = 60;

    private static final int FEW = 30;

    /** More fields than these help nobody to choose. */
    private static final int OFFERED = 3;

    private static final int KINDS = 2;

    private static final int AGAINST = -50;

    private final List<Cell> cells;
    private final ValueForms forms;

    private ColumnValues(List<Cell> cells, FirmTables tables) {
        this.cells = cells;
        this.forms = new ValueForms(cells, tables);
    }

    /** The values below a heading. */
    static ColumnValues of(Sheet sheet, Column column, FirmTables tables) {
        List<Cell> cells = new ArrayList<>();
        sheet.rows().stream()
                .map(row -> row.cell(column))
                .filter(cell -> !cell.isBlank() && cell.kind() != Cell.Kind.UNUSABLE)
                .limit(LOOKED_AT)
                .forEach(cells::add);
        return new ColumnValues(cells, tables);
    }

    /**
     * What speaks for a field, or against it.
     *
     * @param points how much; below zero against it
     * @param because in words
     * @param alone whether it says enough without a heading
     * @param every whether each of several values speaks for it
     */
    record Evidence(int points, String because, boolean alone, boolean every) {
        static final Evidence NONE = new Evidence(0, "", false, false);
    }

    Evidence speaksFor(Field field) {
        if (cells.isEmpty()) {
            return Evidence.NONE;
        }
        ValueForms.Form form = forms.of(field);
        long fitting = cells.stream().filter(form.fits()).count();
        int percent = (int) (100 * fitting / cells.size());
        if (percent >= (form.strict() ? MOST : MORE) && form.strength() > 0) {
            return new Evidence(
                    form.strength(),
                    fitting + " of " + cells.size() + " " + form.words(),
                    form.alone() && fitting > 1,
                    fitting > 1 && fitting == cells.size());
        }
        boolean against = percent < FEW && form.strict();
        return against
                ? new Evidence(AGAINST, "but few " + form.words(), false, false)
                : Evidence.NONE;
    }

    /**
     * What the column may be, for people who look for its field: of the two likeliest kinds of
     * value up to three fields each.
     *
     * @param open fields that no column is proposed for
     */
    String hint(List<Field> open) {
        if (cells.isEmpty()) {
            return "nothing stands below it";
        }
        Map<String, List<Field>> byKind = new LinkedHashMap<>();
        for (Field field : open) {
            Evidence evidence = speaksFor(field);
            if (evidence.points() > 0 && !field.key().startsWith("postal-")) {
                byKind.computeIfAbsent(evidence.because(), k -> new ArrayList<>()).add(field);
            }
        }
        String kinds =
                byKind.entrySet().stream()
                        .sorted(
                                Comparator.comparingInt(
                                        e -> -speaksFor(e.getValue().get(0)).points()))
                        .limit(KINDS)
                        .map(e -> labels(e.getValue()) + " (" + e.getKey() + ")")
                        .collect(Collectors.joining(" or "));
        return kinds.isEmpty() ? "nothing speaks for any field" : "may be " + kinds;
    }

    private static String labels(List<Field> fields) {
        return fields.stream()
                .sorted(
                        Comparator.comparing((Field f) -> !f.isNeeded())
                                .thenComparing(ColumnValues::isOfCertificates))
                .limit(OFFERED)
                .map(f -> "\"" + f.label() + "\"")
                .collect(Collectors.joining(", "));
    }

    /** A list with a column for each scheme has headings that say so. */
    private static boolean isOfCertificates(Field field) {
        return field.key().startsWith("certificate-")
                || Arrays.stream(SchemeName.values())
                        .anyMatch(s -> field.key().startsWith(s.key()));
    }
}
