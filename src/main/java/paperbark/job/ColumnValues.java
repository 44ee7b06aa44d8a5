package paperbark.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import paperbark.firm.FirmTables;
import paperbark.firm.Product;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Sheet;
import paperbark.value.Abn;
import paperbark.value.Bsb;
import paperbark.value.Days;
import paperbark.value.Email;
import paperbark.value.Money;
import paperbark.value.Phone;
import paperbark.value.Postcode;
import paperbark.value.SchemeName;
import paperbark.value.State;
import paperbark.value.WholeNumber;

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

    private ColumnValues(List<Cell> cells, FirmTables tables) {
        this.cells = cells;
        this.tables = tables;
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
        Form form = form(field);
        long fitting = cells.stream().filter(form.fits).count();
        int percent = (int) (100 * fitting / cells.size());
        if (percent >= (form.strict ? MOST : MORE) && form.strength > 0) {
            return new Evidence(
                    form.strength,
                    fitting + " of " + cells.size() + " " + form.words,
                    form.alone && fitting > 1,
                    fitting > 1 && fitting == cells.size());
        }
        boolean against = percent < FEW && form.strict;
        return against
                ? new Evidence(AGAINST, "but few " + form.words, false, false)
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

    /**
     * What values of a field look like.
     *
     * @param fits whether a value does
     * @param strength how much it says when most do
     * @param words what they are
     * @param alone whether that says enough without a heading
     * @param strict whether a column of others is none of it
     */
    private record Form(
            Predicate<Cell> fits, int strength, String words, boolean alone, boolean strict) {}

    private static Form strict(Predicate<Cell> fits, int strength, String words, boolean alone) {
        return new Form(fits, strength, words, alone, true);
    }

    private Form form(Field field) {
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
