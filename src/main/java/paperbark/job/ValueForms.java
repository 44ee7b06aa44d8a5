package paperbark.job;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import paperbark.firm.FirmTables;
import paperbark.firm.Product;
import paperbark.sheet.Cell;
import paperbark.value.Abn;
import paperbark.value.Bsb;
import paperbark.value.Days;
import paperbark.value.Email;
import paperbark.value.Money;
import paperbark.value.Phone;
import paperbark.value.Postcode;
import paperbark.value.State;
import paperbark.value.WholeNumber;

/** What values of each field look like, by which a column without a known heading is told. */
final class ValueForms {
    private static final Pattern STREET =
            Pattern.compile("(?i)([a-z]+ ?)?[0-9]+[a-z]?[ ,/-].*\\p{L}{3}.*");
    private static final Pattern ONE_CELL =
            Pattern.compile("(?i).*\\d.*\\b(VIC|NSW|QLD|SA|WA|TAS|NT|ACT)\\b.*\\d{4}$");
    private static final Pattern PERSON =
            Pattern.compile("\\p{Lu}[\\p{L}'’-]+([ ,&]+\\p{Lu}[\\p{L}'’.-]*)+");
    private static final Pattern PLACE = Pattern.compile("\\p{Lu}[\\p{L}'’ -]+");
    private static final Pattern BSB = Pattern.compile("[0-9]{3}-[0-9]{3}");

    /** A number of a job: short, with a digit, never twice. */
    private static final Pattern REFERENCE = Pattern.compile("[\\p{L}/#-]{0,6}[0-9]{1,8}[A-Za-z]?");

    private final List<Cell> cells;
    private final FirmTables tables;

    /** Forms for a column of these values, in a firm with these tables. */
    ValueForms(List<Cell> cells, FirmTables tables) {
        this.cells = cells;
        this.tables = tables;
    }

    /**
     * What values of a field look like.
     *
     * @param fits whether a value does
     * @param strength how much it says when most do
     * @param words what they are
     * @param alone whether that says enough without a heading
     * @param strict whether a column of others is none of it
     */
    record Form(Predicate<Cell> fits, int strength, String words, boolean alone, boolean strict) {}

    /** The form of the values of a field. */
    Form of(Field field) {
        FieldForm form = FieldForm.of(field, tables);
        boolean usual = !field.key().startsWith("postal-") && !field.key().startsWith("old-");
        return switch (form.holds()) {
            case DAY -> strict(this::isDay, 25, "are days", false);
            case NUMBER -> strict(this::isCount, 15, "are whole numbers", false);
            case MONEY -> strict(this::isMoney, 20, "are amounts", false);
            case POSTCODE -> strict(this::isPostcode, 45, "are postcodes", usual);
            case PHONE -> strict(this::isPhone, 45, "are telephone numbers", true);
            case CHOICE -> choice(field, form, usual);
            case NAME -> names(field, form);
            default -> text(field);
        };
    }

    private static Form strict(Predicate<Cell> fits, int strength, String words, boolean alone) {
        return new Form(fits, strength, words, alone, true);
    }

    private Form choice(Field field, FieldForm form, boolean usual) {
        boolean yesNo = form.choices().equals(List.of("yes", "no"));
        if (field.equals(Field.SITE_STATE) || field.equals(Field.POSTAL_STATE)) {
            return strict(
                    c -> State.parse(c.text()).toOptional().isPresent(), 58, "are states", usual);
        }
        Predicate<Cell> fits =
                yesNo
                        ? c -> tables.words().yesNo(field.key(), c.text()).toOptional().isPresent()
                        : c -> WordMatch.isKnown(field, c.text(), tables);
        // Words of the firm's own are no sign against it: they can be taught.
        boolean telling = !yesNo && usual;
        return new Form(fits, yesNo ? 15 : 58, "are words for it", telling, yesNo);
    }

    private Form names(Field field, FieldForm form) {
        Set<String> names =
                form.choices().stream()
                        .map(n -> n.toLowerCase(Locale.ROOT))
                        .collect(Collectors.toSet());
        boolean first = !field.equals(Field.ELECTRICIAN) && !field.equals(Field.SELLER);
        // A list may well come before the tables have its names.
        return new Form(
                c -> names.contains(c.text().toLowerCase(Locale.ROOT)),
                names.isEmpty() ? 0 : 50,
                "are in the firm's tables",
                first,
                false);
    }

    private Form text(Field field) {
        if (field.equals(Field.OWNER_ABN)) {
            return strict(c -> Abn.parse(c.text()).toOptional().isPresent(), 50, "are ABNs", true);
        }
        if (field.equals(Field.OWNER_EMAIL)) {
            return strict(
                    c -> Email.parse(c.text()).toOptional().isPresent(), 50, "are e-mails", true);
        }
        if (field.equals(Field.BSB)) {
            return strict(
                    c ->
                            BSB.matcher(c.text()).matches()
                                    && Bsb.parse(c.text()).toOptional().isPresent(),
                    45,
                    "are BSBs",
                    true);
        }
        if (field.equals(Field.TANK_SERIAL) || field.equals(Field.HEAT_PUMP_SERIAL)) {
            boolean tank = field.equals(Field.TANK_SERIAL);
            return new Form(this::isSerial, 50, "have the form of a maker's serials", tank, false);
        }
        if (field.equals(Field.SITE_ONE_CELL) || field.equals(Field.POSTAL_ONE_CELL)) {
            return strict(
                    fits(ONE_CELL), 50, "are whole addresses", field.equals(Field.SITE_ONE_CELL));
        }
        if (field.equals(Field.PRODUCT_ONE_CELL)) {
            return new Form(
                    c -> ProductCell.isMakerThenModel(c.text(), tables),
                    50,
                    "begin with a maker of the tables",
                    true,
                    false);
        }
        if (field.equals(Field.SITE_STREET) || field.equals(Field.POSTAL_STREET)) {
            boolean site = field.equals(Field.SITE_STREET);
            return strict(
                    c -> fits(STREET).test(c) && !fits(ONE_CELL).test(c), 40, "are streets", site);
        }
        if (field.equals(Field.SITE_SUBURB)) {
            return strict(fits(PLACE), 15, "may be places", false);
        }
        if (field.equals(Field.OWNER_NAME)) {
            return strict(fits(PERSON), 30, "may be names", false);
        }
        if (field.equals(Field.JOB)) {
            return strict(this::isReference, 25, "are numbers that come once", false);
        }
        return new Form(c -> false, 0, "", false, false);
    }

    private static Predicate<Cell> fits(Pattern pattern) {
        return cell -> pattern.matcher(cell.text()).matches();
    }

    private boolean isDay(Cell cell) {
        return cell.date().isPresent()
                || Days.parse(cell.text()).toOptional().isPresent()
                || Days.parseOfThisCentury(cell.text()).toOptional().isPresent();
    }

    private boolean isCount(Cell cell) {
        return cell.date().isEmpty()
                && cell.text().length() <= 4
                && WholeNumber.parse(cell.text()).toOptional().isPresent();
    }

    private boolean isMoney(Cell cell) {
        return cell.date().isEmpty() && Money.parse(cell.text()).toOptional().isPresent();
    }

    private boolean isPostcode(Cell cell) {
        return cell.text().matches("[0-9]{4}")
                && Postcode.parse(cell.text()).toOptional().isPresent();
    }

    private boolean isPhone(Cell cell) {
        return cell.text().matches("[+0-9 ()-]{9,}")
                && Phone.parse(cell.text()).toOptional().isPresent();
    }

    private boolean isSerial(Cell cell) {
        return tables.products().stream()
                .map(Product::serialPattern)
                .flatMap(pattern -> pattern.stream())
                .anyMatch(pattern -> pattern.matcher(cell.text()).matches());
    }

    private boolean isReference(Cell cell) {
        return REFERENCE.matcher(cell.text()).matches()
                && cells.stream().filter(c -> c.text().equals(cell.text())).count() == 1;
    }
}
