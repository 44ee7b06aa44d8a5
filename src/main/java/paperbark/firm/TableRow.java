package paperbark.firm;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.sheet.CellTrouble;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.RowReader;
import paperbark.sheet.Sheet;
import paperbark.value.Address;
import paperbark.value.DateRange;
import paperbark.value.Days;
import paperbark.value.Parsed;
import paperbark.value.State;

/**
 * One row of a table, read value by value. Everything wrong with it is gathered; a row with
 * anything wrong builds nothing.
 */
final class TableRow extends RowReader<String> {
    private final Set<String> confidential = new HashSet<>();
    private boolean whole = true;

    TableRow(Sheet sheet, Map<String, Column> columns, Row row, List<Finding> findings) {
        super(sheet, columns, row, findings);
    }

    /** Whether any of these columns holds something. */
    boolean saysAnyOf(String... headings) {
        return Arrays.stream(headings).anyMatch(this::says);
    }

    /** The value; empty where nothing is said or, with a finding, where it cannot be read. */
    <T> Optional<T> optional(String heading, Function<String, Parsed<T>> parse) {
        return value(heading, FindingCode.TABLE_ROW_WRONG, parse);
    }

    /** From now on no finding shows what the cell holds, as for bank details. */
    TableRow confidential(String heading) {
        confidential.add(heading);
        return this;
    }

    /** Whether something is said, with a finding where nothing is. */
    boolean needs(String heading) {
        if (!says(heading)) {
            wrong(heading, "The cell is empty.", "Fill in " + heading + ".");
        }
        return says(heading);
    }

    /** Like {@link #optional}, with a finding where nothing is said. */
    <T> Optional<T> needed(String heading, Function<String, Parsed<T>> parse) {
        return needs(heading) ? optional(heading, parse) : Optional.empty();
    }

    /** The text, with a finding where nothing is said. */
    Optional<String> neededText(String heading) {
        return needed(heading, Parsed::ok);
    }

    /** The days from one column to another; open where nothing is said. */
    DateRange range(String fromHeading, String toHeading) {
        var from = day(fromHeading);
        var to = day(toHeading);
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
                postcode("postcode"));
    }

    /** Notes that the row cannot be used because of one of its cells. */
    void wrong(String heading, String fact, String remedy) {
        refuse(heading, FindingCode.TABLE_ROW_WRONG, fact, remedy);
    }

    /** Notes that the row as a whole cannot be used. */
    void wrongRow(String fact, String remedy, List<Place> also) {
        whole = false;
        findings().add(Finding.of(FindingCode.TABLE_ROW_WRONG, place(), fact, remedy).alsoAt(also));
    }

    /** Notes that a cell looks wrong; the row is used all the same. */
    void doubt(String heading, FindingCode code, String fact, String remedy) {
        findings().add(Finding.of(code, place(heading), fact, remedy));
    }

    /** Whether nothing wrong was met so far. */
    boolean isSound() {
        return whole && unread().isEmpty();
    }

    /** What the row stands for, unless something is wrong with it. */
    <T> Optional<T> build(Supplier<T> build) {
        return isSound() ? Optional.of(build.get()) : Optional.empty();
    }

    @Override
    protected boolean isPublic(String heading) {
        return !confidential.contains(heading);
    }

    @Override
    protected Finding finding(String heading, Place place, CellTrouble trouble, boolean refused) {
        boolean ownCode = !refused || trouble.code() == FindingCode.ACN_WRONG;
        return Finding.of(
                        ownCode ? trouble.code() : FindingCode.TABLE_ROW_WRONG,
                        place,
                        trouble.fact(),
                        trouble.remedy())
                .seeing(isPublic(heading) ? trouble.seen().orElse("") : "");
    }
}
