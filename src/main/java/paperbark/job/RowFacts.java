package paperbark.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.firm.Words;
import paperbark.sheet.CellTrouble;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Row;
import paperbark.sheet.RowReader;
import paperbark.sheet.Sheet;
import paperbark.value.AccountNumber;
import paperbark.value.Days;
import paperbark.value.Money;

/** The facts of one row, field by field; a finding holds the papers that print the field. */
final class RowFacts extends RowReader<Field> {
    // A date outside is a slip of the keyboard or a wrong day count, not a job.
    private static final LocalDate EARLIEST = LocalDate.of(2000, 1, 1);
    private static final int DAYS_AHEAD = 400;

    private final Origin origin;
    private final ColumnNames<Field> names;
    private final Words words;
    private final LocalDate today;

    RowFacts(
            Sheet sheet,
            Row row,
            Origin origin,
            ColumnNames<Field> names,
            Words words,
            LocalDate today) {
        super(sheet, origin.columns(), row, new ArrayList<>());
        this.names = names;
        this.words = words;
        this.origin = origin;
        this.today = today;
    }

    Origin origin() {
        return origin;
    }

    /** The cell that says it, of whichever row of the job. */
    @Override
    public Place place(Field field) {
        return origin.cell(field);
    }

    /** An account number; one that is too short for any bank may have lost zeros at its start. */
    Optional<AccountNumber> account() {
        Optional<AccountNumber> account =
                value(Field.ACCOUNT, FindingCode.ACCOUNT_WRONG, AccountNumber::parse);
        if (account.isPresent() && account.get().isShort()) {
            CellTrouble zeros =
                    new CellTrouble(
                            FindingCode.LEADING_ZERO_LOST,
                            "The account number has only "
                                    + account.get().digits().length()
                                    + " digits; zeros at its start may be lost.",
                            "Compare it with what the owner wrote, format the column as text and type the number with its zeros.",
                            text(Field.ACCOUNT));
            findings().add(finding(Field.ACCOUNT, place(Field.ACCOUNT), zeros, false));
        }
        return account;
    }

    /** A day near enough to today to be meant. */
    @Override
    public Optional<LocalDate> day(Field field) {
        Optional<LocalDate> day = super.day(field);
        LocalDate latest = today.plusDays(DAYS_AHEAD);
        if (day.isPresent() && (day.get().isBefore(EARLIEST) || day.get().isAfter(latest))) {
            refuse(
                    field,
                    FindingCode.DATE_OUT_OF_RANGE,
                    "The date %s is not between %s and %s."
                            .formatted(
                                    Days.show(day.get()), Days.show(EARLIEST), Days.show(latest)),
                    "Type the date again.");
            return Optional.empty();
        }
        return day;
    }

    /** An amount that is not less than nothing. */
    @Override
    public Optional<Money> money(Field field) {
        Optional<Money> amount = super.money(field);
        if (amount.filter(Money::isNegative).isPresent()) {
            refuse(
                    field,
                    FindingCode.MONEY_UNREADABLE,
                    "The amount is less than nothing.",
                    "Type the amount without a minus.");
            return Optional.empty();
        }
        return amount;
    }

    Optional<Boolean> yesNo(Field field) {
        return value(field, FindingCode.CHOICE_UNKNOWN, text -> words.yesNo(field.key(), text));
    }

    /** One of a few answers that go by our words. */
    <T> Optional<T> choice(Field field, T[] answers, Function<T, String> word) {
        return value(
                field,
                FindingCode.CHOICE_UNKNOWN,
                text -> words.read(field.key(), text, answers, word));
    }

    /** Something known by name in one of the firm's tables. */
    <T> Optional<T> named(
            Field field,
            FindingCode code,
            Function<String, Optional<T>> lookup,
            Supplier<List<String>> names) {
        return value(field, code, text -> KnownNames.name(text, lookup, names, table(code)));
    }

    @Override
    protected Optional<String> always(Field field) {
        return names.always(field);
    }

    @Override
    protected boolean takesShortYears() {
        return names.shortYears();
    }

    @Override
    protected boolean isPublic(Field field) {
        return !isBank(field) && field != Field.OWNER_PHONE;
    }

    @Override
    protected Finding finding(Field field, Place place, CellTrouble trouble, boolean refused) {
        return field.narrow(Finding.of(trouble.code(), place, trouble.fact(), trouble.remedy()))
                .seeing(shownIfPublic(field, trouble.seen().orElse("")));
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
