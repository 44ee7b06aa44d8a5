package paperbark.firm;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.sheet.CellTrouble;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.Reading;
import paperbark.sheet.Row;
import paperbark.sheet.RowReader;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;
import paperbark.value.WholeNumber;

/**
 * A published list of listed models, whatever its headings.
 *
 * @param models a map each, from field to the text that the table of products takes
 */
public record ListedModels(List<Map<ListedField, String>> models) {
    private static final String TABLE = "listed-columns";

    /** Keeps the list from being changed. */
    public ListedModels {
        models = List.copyOf(models);
    }

    /**
     * Reads a list.
     *
     * @param sheet the sheet wanted; empty takes the one whose headings match best
     * @param tables the firm's, of which the headings and the makers' names are taken
     * @return the models of the firm's makers; findings on rows that cannot be used
     */
    public static Reading<ListedModels> read(Path list, Optional<String> sheet, Path tables) {
        List<Finding> findings = new ArrayList<>();
        ColumnNames<ListedField> names =
                HeadingTable.of(List.of(ListedField.values()), TABLE, tables, findings);
        Reading<FirmTables> firm = FirmTablesReader.read(tables);
        Reading<Sheet> read = SheetReader.read(list, names::knows, sheet);
        findings.addAll(read.findings());
        Optional<Map<ListedField, Column>> columns =
                read.result()
                        .flatMap(
                                s -> {
                                    Reading<Map<ListedField, Column>> map = ColumnMap.of(s, names);
                                    findings.addAll(map.findings());
                                    return map.result();
                                });
        if (firm.result().isEmpty() || columns.isEmpty()) {
            findings.addAll(
                    firm.result().isEmpty()
                            ? firm.findings().stream().filter(Finding::stops).toList()
                            : List.of());
            return Reading.refused(findings.stream().filter(Finding::stops).toList());
        }
        Sheet rows = read.result().get();
        List<Map<ListedField, String>> models = new ArrayList<>();
        for (Row row : rows.rows()) {
            new Line(rows, columns.get(), row, findings, names)
                    .read(firm.result().get())
                    .ifPresent(models::add);
        }
        return Reading.of(
                new ListedModels(models),
                findings.stream().filter(f -> f.severity() != Severity.NOTE).toList());
    }

    /** One row of the list. */
    private static final class Line extends RowReader<ListedField> {
        private final ColumnNames<ListedField> names;

        Line(
                Sheet sheet,
                Map<ListedField, Column> columns,
                Row row,
                List<Finding> findings,
                ColumnNames<ListedField> names) {
            super(sheet, columns, row, findings);
            this.names = names;
        }

        /** The model under the name that the firm has for its maker; empty for other makers. */
        Optional<Map<ListedField, String>> read(FirmTables firm) {
            Optional<Maker> maker = text(ListedField.MAKER).flatMap(firm::maker);
            Optional<String> model = text(ListedField.MODEL);
            if (maker.isEmpty() || model.isEmpty()) {
                return Optional.empty();
            }
            Map<ListedField, String> said = new EnumMap<>(ListedField.class);
            said.put(ListedField.MAKER, maker.get().name());
            said.put(ListedField.MODEL, model.get());
            for (ListedField field : ListedField.values()) {
                if (!said.containsKey(field)) {
                    value(field).ifPresent(text -> said.put(field, text));
                }
            }
            return unread().isEmpty() && said.containsKey(ListedField.ELIGIBLE_FROM)
                    ? Optional.of(said)
                    : Optional.empty();
        }

        private Optional<String> value(ListedField field) {
            return switch (field) {
                case ELIGIBLE_FROM, ELIGIBLE_TO -> day(field).map(LocalDate::toString);
                case KIND, BOOST, STCS_BASIS -> text(field);
                default ->
                        value(field, FindingCode.TABLE_ROW_WRONG, WholeNumber::parse)
                                .map(String::valueOf);
            };
        }

        @Override
        protected Optional<String> always(ListedField field) {
            return names.always(field);
        }

        @Override
        protected boolean takesShortYears() {
            return names.shortYears();
        }

        @Override
        protected Finding finding(
                ListedField field, Place place, CellTrouble trouble, boolean refused) {
            return Finding.of(FindingCode.TABLE_ROW_WRONG, place, trouble.fact(), trouble.remedy())
                    .seeing(trouble.seen().orElse(""));
        }
    }
}
