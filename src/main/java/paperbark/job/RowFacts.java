package paperbark.job;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Trouble;
import paperbark.value.AccountNumber;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.Parsed;
import paperbark.value.WholeNumber;

/**
 * The facts of one row, field by field. Whatever is wrong with a cell is gathered as a finding and
 * the fact is then simply not known; reading never stops.
 */
final class RowFacts {
    private static final Map<String, Boolean> YES_NO =
            Map.of(
                    "yes", true, "y", true, "true", true, "x", true, "no", false, "n", false,
                    "false", false);

    private final Row row;
    private final Origin origin;
    private final LocalDate today;
    private final List<Finding> findings = new ArrayList<>();
    private final Set<Field> unread = EnumSet.noneOf(Field.class);

    RowFacts(Row row, Origin origin, LocalDate today) {
        this.row = row;
        this.origin = origin;
        this.today = today;
    }

    Origin origin() {
        return origin;
    }

    List<Finding> findings() {
        return findings;
    }

    Set<Field> unread() {
        return unread;
    }

    /** The cell of a field if it holds something usable; its troubles become findings once. */
    Optional<Cell> cell(Field field) {
        Column column = origin.columns().get(field);
        if (column == null || unread.contains(field)) {
            return Optional.empty();
        }
        Cell cell = row.cell(column);
        for (Trouble trouble : cell.troubles()) {
            Finding finding =
                    finding(
                            field,
                            trouble.code(),
                            trouble.fact(),
                            trouble.remedy(),
                            trouble.seen().orElse(cell.text()));
            if (finding.stops()) {
                unread.add(field);
            }
            findings.add(finding);
        }
        return unread.contains(field) || cell.isBlank() ? Optional.empty() : Optional.of(cell);
    }

    Optional<String> text(Field field) {
        return cell(field).map(Cell::text);
    }

    /** A text read as a value; a text that cannot be the value is a finding of the given code. */
    <T> Optional<T> value(Field field, FindingCode code, Function<String, Parsed<T>> parser) {
        return cell(field).flatMap(cell -> read(field, code, cell.text(), parser));
    }

    private <T> Optional<T> read(
            Field field, FindingCode code, String text, Function<String, Parsed<T>> parser) {
        Parsed<T> parsed = parser.apply(text);
        if (parsed instanceof Parsed.Bad<T> bad) {
            refuse(field, code, bad.fact(), bad.remedy(), text);
        }
        return parsed.toOptional();
    }

    /**
     * Like {@link #value}, for numbers of a known length that a spreadsheet may have robbed of
     * their leading zero.
     */
    <T> Optional<T> zeroed(
            Field field, FindingCode code, String robbedForm, Function<String, Parsed<T>> parser) {
        Optional<Cell> cell = cell(field);
        if (cell.isEmpty() || !cell.get().text().replaceAll("[ -]", "").matches(robbedForm)) {
            return cell.flatMap(c -> read(field, code, c.text(), parser));
        }
        String restored = "0" + cell.get().text();
        Optional<T> value = read(field, code, restored, parser);
        if (value.isPresent()) {
            findings.add(
                    Finding.of(
                                    FindingCode.LEADING_ZERO_LOST,
                                    origin.cell(field),
                                    isBank(field) || field == Field.OWNER_PHONE
                                            ? "The number is one digit short; it was read with a zero in front."
                                            : "The number is one digit short; it was read as "
                                                    + restored
                                                    + ".",
                                    "Format the column as text and type the number with its zero.")
                            .seeing(shownIfPublic(field, cell.get().text())));
        }
        return value;
    }

    /** An account number; one that is too short for any bank may have lost zeros at its start. */
    Optional<AccountNumber> account() {
        Optional<AccountNumber> account =
                value(Field.ACCOUNT, FindingCode.ACCOUNT_WRONG, AccountNumber::parse);
        if (account.isPresent() && account.get().isShort()) {
            findings.add(
                    Finding.of(
                                    FindingCode.LEADING_ZERO_LOST,
                                    origin.cell(Field.ACCOUNT),
                                    "The account number has only "
                                            + account.get().digits().length()
                                            + " digits; zeros at its start may be lost.",
                                    "Compare it with what the owner wrote, format the column as text and type the number with its zeros.")
                            .seeing(shownIfPublic(Field.ACCOUNT, account.get().digits())));
        }
        return account;
    }

    /** A day near enough to today to be meant. */
    Optional<LocalDate> day(Field field) {
        Optional<Cell> cell = cell(field);
        Optional<LocalDate> day = cell.flatMap(c -> c.date().or(() -> undated(field, c)));
        if (day.isPresent() && !DayCells.canBeMeant(day.get(), today)) {
            String seen = cell.map(Cell::text).orElse("");
            refuse(
                    field,
                    FindingCode.DATE_OUT_OF_RANGE,
                    DayCells.outOfRange(day.get(), today),
                    "Type the date again.",
                    seen);
            return Optional.empty();
        }
        return day;
    }

    private Optional<LocalDate> undated(Field field, Cell cell) {
        Optional<LocalDate> counted = DayCells.dayCount(cell.text(), origin.from1904());
        if (counted.isEmpty()) {
            return read(field, FindingCode.DATE_UNREADABLE, cell.text(), Days::parse);
        }
        findings.add(
                Finding.of(
                                FindingCode.NUMBER_FOR_DATE,
                                origin.cell(field),
                                "The cell holds a plain number; as a day count it is "
                                        + Days.show(counted.get())
                                        + " and was read so.",
                                "Compare the day, and type it as day/month/year.")
                        .seeing(cell.text()));
        return counted;
    }

    /** An amount that is not less than nothing. */
    Optional<Money> money(Field field) {
        return cell(field)
                .flatMap(
                        c ->
                                stored(c)
                                        .or(
                                                () ->
                                                        read(
                                                                field,
                                                                FindingCode.MONEY_UNREADABLE,
                                                                c.text(),
                                                                Money::parse)))
                .filter(amount -> !negative(field, amount));
    }

    private static Optional<Money> stored(Cell cell) {
        return cell.number()
                .map(BigDecimal::stripTrailingZeros)
                .filter(number -> number.scale() <= 2)
                .map(number -> new Money(number.setScale(2, RoundingMode.UNNECESSARY)));
    }

    private boolean negative(Field field, Money amount) {
        if (amount.isNegative()) {
            refuse(
                    field,
                    FindingCode.MONEY_UNREADABLE,
                    "The amount is less than nothing.",
                    "Type the amount without a minus.",
                    "");
        }
        return amount.isNegative();
    }

    Optional<Integer> whole(Field field) {
        return value(field, FindingCode.NUMBER_UNREADABLE, WholeNumber::parse);
    }

    Optional<Boolean> yesNo(Field field) {
        return choice(field, YES_NO);
    }

    /** One of several words, whatever their case and punctuation. */
    <T> Optional<T> choice(Field field, Map<String, T> words) {
        return value(field, FindingCode.CHOICE_UNKNOWN, text -> Known.word(text, words));
    }

    /** Something known by name in one of the firm's tables. */
    <T> Optional<T> named(
            Field field,
            FindingCode code,
            Function<String, Optional<T>> lookup,
            List<String> names) {
        return value(field, code, text -> Known.name(text, lookup, names, table(code)));
    }

    void refuse(Field field, FindingCode code, String fact, String remedy, String seen) {
        unread.add(field);
        findings.add(finding(field, code, fact, remedy, seen));
    }

    private Finding finding(
            Field field, FindingCode code, String fact, String remedy, String seen) {
        return field.narrow(Finding.of(code, origin.cell(field), fact, remedy))
                .seeing(shownIfPublic(field, seen));
    }

    /** The table that knows the names which a finding of this code is about. */
    private static String table(FindingCode code) {
        return switch (code) {
            case MAKER_UNKNOWN -> "makers table";
            case MODEL_UNKNOWN -> "products table";
            case PERSON_UNKNOWN -> "people table";
            case SELLER_UNKNOWN -> "sellers table";
            case BUYER_UNKNOWN -> "buyers table";
            default -> throw new IllegalArgumentException("no table of names for " + code);
        };
    }

    /**
     * Bank details are never repeated in a finding, nor nine digits in place of an ABN: they may be
     * a person's tax file number.
     */
    private static String shownIfPublic(Field field, String text) {
        boolean mayBeTaxFile =
                field == Field.OWNER_ABN && text.replaceAll("[^0-9]", "").length() == 9;
        return isBank(field) || mayBeTaxFile ? text.replaceAll("[0-9A-Za-z]", "*") : text;
    }

    private static boolean isBank(Field field) {
        return field == Field.BSB || field == Field.ACCOUNT;
    }
}
