package paperbark.settle;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.Trouble;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.Parsed;

/**
 * The cells of one row of an advice; a cell that cannot be used is a finding and spoils the row.
 */
final class AdviceRow {
    private final Sheet sheet;
    private final Map<AdviceField, Column> columns;
    private final Row row;
    private final List<Finding> findings;
    private boolean sound = true;

    AdviceRow(Sheet sheet, Map<AdviceField, Column> columns, Row row, List<Finding> findings) {
        this.sheet = sheet;
        this.columns = columns;
        this.row = row;
        this.findings = findings;
    }

    boolean isSound() {
        return sound;
    }

    Optional<String> text(AdviceField field) {
        return cell(field).map(Cell::text);
    }

    Optional<Money> money(AdviceField field) {
        return value(field, FindingCode.MONEY_UNREADABLE, Money::parse);
    }

    Optional<LocalDate> day(AdviceField field) {
        return value(field, FindingCode.DATE_UNREADABLE, Days::parse);
    }

    <T> Optional<T> value(AdviceField field, FindingCode code, Function<String, Parsed<T>> parse) {
        return cell(field).flatMap(cell -> parsed(field, code, cell, parse));
    }

    void wrong(AdviceField field, FindingCode code, String fact, String remedy, String seen) {
        sound = false;
        findings.add(Finding.of(code, place(field), fact, remedy).as(Severity.CHECK).seeing(seen));
    }

    private <T> Optional<T> parsed(
            AdviceField field, FindingCode code, Cell cell, Function<String, Parsed<T>> parse) {
        Parsed<T> parsed = parse.apply(cell.text());
        if (parsed instanceof Parsed.Bad<T> bad) {
            wrong(field, code, bad.fact(), bad.remedy(), cell.text());
        }
        return parsed.toOptional();
    }

    private Optional<Cell> cell(AdviceField field) {
        Column column = columns.get(field);
        if (column == null) {
            return Optional.empty();
        }
        Cell cell = row.cell(column);
        for (Trouble trouble : cell.troubles()) {
            if (trouble.code().severity() == Severity.STOP) {
                wrong(field, trouble.code(), trouble.fact(), trouble.remedy(), cell.text());
                return Optional.empty();
            }
        }
        return cell.isBlank() || cell.kind() == Cell.Kind.UNUSABLE
                ? Optional.empty()
                : Optional.of(cell);
    }

    private Place place(AdviceField field) {
        Column column = columns.get(field);
        return column == null ? sheet.place(row.number()) : sheet.place(column, row.number());
    }
}
