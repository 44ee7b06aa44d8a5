package paperbark.job;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import paperbark.firm.Buyer;
import paperbark.firm.ColumnGuide.Holds;
import paperbark.firm.FirmTables;
import paperbark.firm.Maker;
import paperbark.firm.Person;
import paperbark.firm.Product;
import paperbark.firm.Seller;
import paperbark.value.SchemeName;
import paperbark.value.State;

/**
 * What stands in the cells of a field's column: for whoever makes columns to type into, or wonders
 * what a column may be.
 *
 * @param holds the kind of value
 * @param choices the words or names that it is one of; empty where it is none of a few
 */
public record FieldForm(Holds holds, List<String> choices) {
    private static final Set<Field> DAYS =
            Set.of(
                    Field.DATE,
                    Field.VISIT_DATE,
                    Field.INSTALLED_DATE,
                    Field.SIGNED_DATE,
                    Field.DECLARATIONS_DATE,
                    Field.PLUMBING_CERTIFICATE_DATE,
                    Field.ELECTRICAL_CERTIFICATE_DATE,
                    Field.OLD_REMOVED_DATE);
    private static final Set<Field> NUMBERS =
            Set.of(Field.VISIT_ORDER, Field.LITRES, Field.COLLECTORS, Field.CERTIFICATE_COUNT);
    private static final Set<Field> AMOUNTS =
            Set.of(Field.FULL_PRICE, Field.CO_PAYMENT, Field.CERTIFICATE_BENEFIT);
    private static final Set<Field> YES_OR_NO =
            Set.of(Field.OWNER_GST, Field.SITE_BUSINESS, Field.NEW_SYSTEM, Field.COMPLETE_SYSTEM);

    /** Keeps the list from being changed. */
    public FieldForm {
        choices = List.copyOf(choices);
    }

    /**
     * The form of a field.
     *
     * @param tables the firm's, whose names are the choices of some fields
     */
    public static FieldForm of(Field field, FirmTables tables) {
        if (DAYS.contains(field)) {
            return plain(Holds.DAY);
        }
        if (NUMBERS.contains(field) || is(field, ClaimFact.COUNT) || is(field, ClaimFact.ZONE)) {
            return plain(Holds.NUMBER);
        }
        if (AMOUNTS.contains(field) || is(field, ClaimFact.BENEFIT)) {
            return plain(Holds.MONEY);
        }
        if (field.equals(Field.SITE_POSTCODE) || field.equals(Field.POSTAL_POSTCODE)) {
            return plain(Holds.POSTCODE);
        }
        if (field.equals(Field.OWNER_PHONE)) {
            return plain(Holds.PHONE);
        }
        return ofWords(field, tables);
    }

    private static FieldForm ofWords(Field field, FirmTables tables) {
        if (YES_OR_NO.contains(field) || is(field, ClaimFact.CLAIM)) {
            return words(List.of("yes", "no"));
        }
        if (field.equals(Field.STAGE)) {
            return words(all(Stage.values(), Stage::word));
        }
        if (field.equals(Field.OLD_KIND)) {
            return words(all(OldKind.values(), OldKind::word));
        }
        if (field.equals(Field.BENEFIT_FORM)) {
            return words(all(BenefitForm.values(), BenefitForm::word));
        }
        if (field.equals(Field.SCHEME)) {
            return words(all(SchemeName.values(), SchemeName::word));
        }
        if (field.equals(Field.SITE_STATE) || field.equals(Field.POSTAL_STATE)) {
            return words(all(State.values(), State::name));
        }
        return ofNames(field, tables);
    }

    private static FieldForm ofNames(Field field, FirmTables tables) {
        if (field.equals(Field.MAKER)) {
            return names(tables.makers().stream().map(Maker::name));
        }
        if (field.equals(Field.MODEL)) {
            return names(tables.products().stream().map(Product::model));
        }
        if (field.equals(Field.PLUMBER) || field.equals(Field.ELECTRICIAN)) {
            return names(tables.people().stream().map(Person::name));
        }
        if (field.equals(Field.SELLER)) {
            return names(tables.sellers().stream().map(Seller::name));
        }
        if (field.equals(Field.CERTIFICATE_BUYER) || is(field, ClaimFact.BUYER)) {
            return names(tables.buyers().stream().map(Buyer::name));
        }
        return plain(Holds.TEXT);
    }

    private static boolean is(Field field, ClaimFact fact) {
        return Arrays.stream(SchemeName.values())
                .anyMatch(s -> Field.find(s, fact).filter(field::equals).isPresent());
    }

    private static FieldForm plain(Holds holds) {
        return new FieldForm(holds, List.of());
    }

    private static FieldForm words(List<String> words) {
        return new FieldForm(Holds.CHOICE, words.stream().filter(w -> !w.isEmpty()).toList());
    }

    private static FieldForm names(Stream<String> names) {
        return new FieldForm(Holds.NAME, names.distinct().toList());
    }

    private static <E> List<String> all(E[] values, Function<E, String> word) {
        return Arrays.stream(values).map(word).toList();
    }
}
