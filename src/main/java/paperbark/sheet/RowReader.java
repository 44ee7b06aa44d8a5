package paperbark.sheet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.value.Bsb;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.Parsed;
import paperbark.value.Phone;
import paperbark.value.Postcode;
import paperbark.value.WholeNumber;

/**
 * Reads the cells of one row as values, the same way for every list and table. Whatever is wrong
 * with a cell is gathered as a finding, whose weight the owner of the row decides; the value is
 * then simply not known, and reading never stops.
 *
 * @param <K> what the columns go by
 */
public abstract class RowReader<K> {
    // Numbers of a known length that a spreadsheet robbed of the zero in front.
    private static final Pattern ROBBED_POSTCODE = Pattern.compile("[2-9][0-9]{2}");
    private static final Pattern ROBBED_PHONE = Pattern.compile("[23478][0-9]{8}");
    private static final Pattern ROBBED_BSB = Pattern.compile("[0-9]{5}");

    private final Sheet sheet;
    private final Map<K, Column> columns;
    private final Row row;
    private final List<Finding> findings;
    private final Set<K> lookedAt = new HashSet<>();
    private final Set<K> unread = new HashSet<>();

    /**
     * A reader of one row.
     *
     * @param sheet where it stands
     * @param columns the columns that the sheet has
     * @param row the row
     * @param findings takes what is wrong
     */
    protected RowReader(Sheet sheet, Map<K, Column> columns, Row row, List<Finding> findings) {
        this.sheet = sheet;
        this.columns = columns;
        this.row = row;
        this.findings = findings;
    }

    /**
     * What the owner makes of something wrong with a cell.
     *
     * @param key the column
     * @param place the cell, or the row where there is no such column
     * @param trouble what is wrong, with the value as seen
     * @param refused whether the value is not used because of it
     */
    protected abstract Finding finding(K key, Place place, CellTrouble trouble, boolean refused);

    /** Whether a sentence may repeat what the cell holds. */
    protected boolean isPublic(K key) {
        return true;
    }

    /** What every row says where its own cell says nothing. */
    protected Optional<String> always(K key) {
        return Optional.empty();
    }

    /** Whether years of two digits are those of this century. */
    protected boolean takesShortYears() {
        return false;
    }

    /** 1-based number of the row. */
    public int number() {
        return row.number();
    }

    /** The row. */
    public Place place() {
        return sheet.place(row.number());
    }

    /** The cell, or the row where there is no such column. */
    public Place place(K key) {
        Column column = columns.get(key);
        return column == null ? place() : sheet.place(column, row.number());
    }

    /** The columns whose cell could not be used so far. */
    public Set<K> unread() {
        return unread;
    }

    /** What was gathered. */
    public List<Finding> findings() {
        return findings;
    }

    /** Whether the cell holds anything, be it usable or not. */
    public boolean says(K key) {
        return !stored(key).map(Cell::isBlank).orElse(true);
    }

    /** The text. */
    public Optional<String> text(K key) {
        return cell(key).map(Cell::text);
    }

    /** A text read as a value; a text that cannot be the value is a finding of the given code. */
    public <T> Optional<T> value(K key, FindingCode code, Function<String, Parsed<T>> parse) {
        return text(key).flatMap(text -> parsed(key, code, text, parse));
    }

    /** A day; a plain number is counted as spreadsheets do. */
    public Optional<LocalDate> day(K key) {
        return cell(key).flatMap(cell -> cell.date().or(() -> undated(key, cell.text())));
    }

    /** An amount. */
    public Optional<Money> money(K key) {
        return cell(key)
                .flatMap(
                        cell ->
                                wholeCents(cell)
                                        .or(
                                                () ->
                                                        parsed(
                                                                key,
                                                                FindingCode.MONEY_UNREADABLE,
                                                                cell.text(),
                                                                Money::parse)));
    }

    /** A count. */
    public Optional<Integer> whole(K key) {
        return value(key, FindingCode.NUMBER_UNREADABLE, WholeNumber::parse);
    }

    /** A postcode, also one that lost its zero. */
    public Optional<Postcode> postcode(K key) {
        return zeroed(key, FindingCode.POSTCODE_WRONG, ROBBED_POSTCODE, Postcode::parse);
    }

    /** A telephone number, also one that lost its zero. */
    public Optional<Phone> phone(K key) {
        return zeroed(key, FindingCode.PHONE_WRONG, ROBBED_PHONE, Phone::parse);
    }

    /** The number of a bank's branch, also one that lost its zero. */
    public Optional<Bsb> bsb(K key) {
        return zeroed(key, FindingCode.BSB_WRONG, ROBBED_BSB, Bsb::parse);
    }

    /** Refuses a cell that reading alone would let pass. */
    public void refuse(K key, FindingCode code, String fact, String remedy) {
        refuse(key, code, fact, remedy, stored(key).map(Cell::text).orElse(""));
    }

    private void refuse(K key, FindingCode code, String fact, String remedy, String seen) {
        unread.add(key);
        tell(key, code, fact, remedy, seen, true);
    }

    private void tell(
            K key, FindingCode code, String fact, String remedy, String seen, boolean refused) {
        CellTrouble trouble = new CellTrouble(code, fact, remedy, Optional.of(seen));
        findings.add(finding(key, place(key), trouble, refused));
    }

    private Optional<Cell> stored(K key) {
        Optional<Cell> own = Optional.ofNullable(columns.get(key)).map(row::cell);
        return own.filter(cell -> !cell.isBlank())
                .or(() -> always(key).map(text -> Cell.text(0, "", text)))
                .or(() -> own);
    }

    /** The cell if it holds something usable; its troubles become findings once. */
    private Optional<Cell> cell(K key) {
        Optional<Cell> stored = stored(key);
        if (stored.isPresent() && lookedAt.add(key)) {
            stored.get().troubles().forEach(trouble -> take(key, trouble, stored.get()));
        }
        return stored.filter(cell -> !cell.isBlank() && !unread.contains(key));
    }

    private void take(K key, CellTrouble trouble, Cell cell) {
        boolean refused = trouble.code().severity() == Severity.STOP;
        if (refused) {
            unread.add(key);
        }
        tell(
                key,
                trouble.code(),
                trouble.fact(),
                trouble.remedy(),
                trouble.seen().orElse(cell.text()),
                refused);
    }

    private <T> Optional<T> parsed(
            K key, FindingCode code, String text, Function<String, Parsed<T>> parse) {
        Parsed<T> parsed = parse.apply(text);
        if (parsed instanceof Parsed.Bad<T> bad) {
            refuse(key, code, bad.fact(), bad.remedy(), text);
        }
        return parsed.toOptional();
    }

    private Optional<LocalDate> undated(K key, String text) {
        Optional<LocalDate> counted = DayCount.day(text, sheet.from1904());
        if (counted.isEmpty()) {
            return parsed(
                    key,
                    FindingCode.DATE_UNREADABLE,
                    text,
                    takesShortYears() ? Days::parseOfThisCentury : Days::parse);
        }
        tell(
                key,
                FindingCode.NUMBER_FOR_DATE,
                "The cell holds a plain number; as a day count it is "
                        + Days.show(counted.get())
                        + " and was read so.",
                "Compare the day, and type it as day/month/year.",
                text,
                false);
        return counted;
    }

    private static Optional<Money> wholeCents(Cell cell) {
        return cell.number()
                .map(BigDecimal::stripTrailingZeros)
                .filter(number -> number.scale() <= 2)
                .map(number -> new Money(number.setScale(2, RoundingMode.UNNECESSARY)));
    }

    private <T> Optional<T> zeroed(
            K key, FindingCode code, Pattern robbed, Function<String, Parsed<T>> parse) {
        Optional<String> text = text(key);
        if (text.filter(t -> robbed.matcher(t.replace(" ", "").replace("-", "")).matches())
                .isEmpty()) {
            return text.flatMap(t -> parsed(key, code, t, parse));
        }
        String restored = "0" + text.get();
        Optional<T> value = parsed(key, code, restored, parse);
        if (value.isPresent()) {
            tell(
                    key,
                    FindingCode.LEADING_ZERO_LOST,
                    isPublic(key)
                            ? "The number is one digit short; it was read as " + restored + "."
                            : "The number is one digit short; it was read with a zero in front.",
                    "Format the column as text and type the number with its zero.",
                    text.get(),
                    false);
        }
        return value;
    }
}
