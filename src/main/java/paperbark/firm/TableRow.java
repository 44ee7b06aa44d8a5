package paperbark.firm;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.Trouble;
import paperbark.value.Address;
import paperbark.value.DateRange;
import paperbark.value.Days;
import paperbark.value.Parsed;
import paperbark.value.Postcode;
import paperbark.value.State;

/**
 * One row of a table, read value by value. Everything wrong with it is gathered; a row with
 * anything wrong builds nothing.
 */
final class TableRow {
    private final Sheet sheet;
    private final Map<String, Column> columns;
    private final Row row;
    private final List<Finding> findings;
    private boolean sound = true;

    TableRow(Sheet sheet, Map<String, Column> columns, Row row, List<Finding> findings) {
        this.sheet = sheet;
        this.columns = columns;
        this.row = row;
        this.findings = findings;
    }

    /** 1-based number of the row. */
    int number() {
        return row.number();
    }

    /** The row. */
    Place place() {
        return sheet.place(row.number());
    }

    /** Whether any of these columns holds something. */
    boolean saysAnyOf(String... headings) {
        return List.of(headings).stream()
                .anyMatch(h -> cell(h).map(c -> !c.isBlank()).orElse(false));
    }

    /** The text; empty where nothing is said. */
    Optional<String> text(String heading) {
        return optional(heading, Parsed::ok);
    }

    /** The value; empty where nothing is said or, with a finding, where it cannot be read. */
    <T> Optional<T> optional(String heading, Function<String, Parsed<T>> parse) {
        return optional(heading, FindingCode.TABLE_ROW_WRONG, parse);
    }

    /** Like {@link #optional(String, Function)}, with a finding of the given code. */
    <T> Optional<T> optional(String heading, FindingCode code, Function<String, Parsed<T>> parse) {
        return read(heading, parse, bad -> wrong(heading, code, bad.fact(), bad.remedy()));
    }

    /** Like {@link #optional}, but a finding does not show the value, as for bank details. */
    <T> Optional<T> confidential(String heading, Function<String, Parsed<T>> parse) {
        return read(heading, parse, bad -> add(heading, bad.fact(), bad.remedy()));
    }

    /** Like {@link #optional}, with a finding where nothing is said. */
    <T> Optional<T> needed(String heading, Function<String, Parsed<T>> parse) {
        if (!saysAnyOf(heading)) {
            wrong(heading, "The cell is empty.", "Fill in " + heading + ".");
            return Optional.empty();
        }
        return optional(heading, parse);
    }

    /** The text, with a finding where nothing is said. */
    Optional<String> neededText(String heading) {
        return needed(heading, Parsed::ok);
    }

    /** The days from one column to another; open where nothing is said. */
    DateRange range(String fromHeading, String toHeading) {
        var from = optional(fromHeading, Days::parse);
        var to = optional(toHeading, Days::parse);
        if (from.isPresent() && to.isPresent() && to.get().isBefore(from.get())) {
            wrong(
                    toHeading,
                    "The last day is before the first, " + Days.show(from.get()) + ".",
                    "Correct " + fromHeading + " or " + toHeading + ".");
            return DateRange.ALWAYS;
        }
        return new DateRange(from, to);
    }

    /** The address in the columns street, suburb, state and postcode. */
    Address address() {
        return new Address(
                text("street"),
                text("suburb"),
                optional("state", State::parse),
                optional("postcode", Postcode::parse));
    }

    /** Notes that the row cannot be used because of one of its cells. */
    void wrong(String heading, String fact, String remedy) {
        wrong(heading, FindingCode.TABLE_ROW_WRONG, fact, remedy);
    }

    /** The same with another code than that of rows in general. */
    void wrong(String heading, FindingCode code, String fact, String remedy) {
        sound = false;
        String seen = cell(heading).map(Cell::text).orElse("");
        findings.add(Finding.of(code, place(heading), fact, remedy).seeing(seen));
    }

    /** Notes that the row as a whole cannot be used. */
    void wrongRow(String fact, String remedy, List<Place> also) {
        sound = false;
        findings.add(Finding.of(FindingCode.TABLE_ROW_WRONG, place(), fact, remedy).alsoAt(also));
    }

    /** Whether nothing wrong was met so far. */
    boolean isSound() {
        return sound;
    }

    /** What the row stands for, unless something is wrong with it. */
    <T> Optional<T> build(Supplier<T> build) {
        return sound ? Optional.of(build.get()) : Optional.empty();
    }

    private <T> Optional<T> read(
            String heading, Function<String, Parsed<T>> parse, Consumer<Parsed.Bad<T>> told) {
        Optional<Cell> cell = cell(heading).filter(c -> isUsable(heading, c));
        if (cell.isEmpty() || cell.get().isBlank()) {
            return Optional.empty();
        }
        Parsed<T> parsed = parse.apply(cell.get().text());
        if (parsed instanceof Parsed.Bad<T> bad) {
            told.accept(bad);
        }
        return parsed.toOptional();
    }

    private boolean isUsable(String heading, Cell cell) {
        for (Trouble trouble : cell.troubles()) {
            if (trouble.code().severity() == Severity.STOP) {
                add(heading, trouble.fact(), trouble.remedy());
            } else {
                findings.add(
                        Finding.of(
                                trouble.code(), place(heading), trouble.fact(), trouble.remedy()));
            }
        }
        return cell.kind() != Cell.Kind.UNUSABLE
                && cell.troubles().stream().noneMatch(t -> t.code().severity() == Severity.STOP);
    }

    /** Notes that a cell looks wrong; the row is used all the same. */
    void doubt(String heading, FindingCode code, String fact, String remedy) {
        findings.add(Finding.of(code, place(heading), fact, remedy));
    }

    private void add(String heading, String fact, String remedy) {
        sound = false;
        findings.add(Finding.of(FindingCode.TABLE_ROW_WRONG, place(heading), fact, remedy));
    }

    private Optional<Cell> cell(String heading) {
        return Optional.ofNullable(columns.get(heading)).map(row::cell);
    }

    private Place place(String heading) {
        Column column = columns.get(heading);
        return column == null ? place() : sheet.place(column, row.number());
    }
}
