package paperbark.output;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import paperbark.value.Abn;
import paperbark.value.AccountNumber;
import paperbark.value.Acn;
import paperbark.value.Address;
import paperbark.value.Bsb;
import paperbark.value.DateRange;
import paperbark.value.Days;
import paperbark.value.Email;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.Phone;
import paperbark.value.Postcode;
import paperbark.value.Serial;

/**
 * Turns records into the maps, lists, texts, numbers and booleans that a template sees, so that no
 * Java object reaches a template.
 *
 * <p>A record becomes a map with one entry a component and one a public method without arguments.
 * An absent Optional has no entry, so that a template must say what stands in its place. Days,
 * amounts and numbers of the trade become their printed form; bank details and contact data are
 * given in full. An enum becomes its word. An address has the entry {@code line} beside its parts.
 */
public final class TemplateModel {
    private static final Set<Class<?>> PRINTED =
            Set.of(
                    Money.class,
                    Abn.class,
                    Acn.class,
                    Serial.class,
                    Postcode.class,
                    DateRange.class);

    private TemplateModel() {}

    /** The template's view of a job: money is expected only for claims that count. */
    public static Map<String, Object> of(CaseFile file) {
        Map<String, Object> all = of((Record) file);
        put(all, "expected", file.coming());
        return all;
    }

    /** The template's view of a record. */
    public static Map<String, Object> of(Record value) {
        FactsOfKind kind = FactsOfKind.of(value);
        FactMap map = kind.empty();
        kind.each(value, (name, fact) -> view(fact).ifPresent(v -> map.put(name, v)));
        if (value instanceof Address address) {
            map.put("line", address.toString());
        }
        return map;
    }

    /** An empty map that knows the same facts, for a changed copy. */
    public static Map<String, Object> emptyLike(Map<?, ?> map) {
        return map instanceof FactMap facts ? facts.empty() : new LinkedHashMap<>();
    }

    /**
     * Adds an entry to the view of a record; an empty Optional leaves a name that can be asked for.
     */
    public static void put(Map<String, Object> map, String name, Object value) {
        if (map instanceof FactMap facts) {
            facts.expect(name);
        }
        view(value).ifPresent(v -> map.put(name, v));
    }

    private static Optional<Object> view(Object value) {
        if (value instanceof Optional<?> optional) {
            return optional.flatMap(TemplateModel::view);
        }
        if (value instanceof Collection<?> all) {
            List<Object> items = new ArrayList<>(all.size());
            all.forEach(item -> view(item).ifPresent(items::add));
            return Optional.of(Collections.unmodifiableList(items));
        }
        if (value instanceof Map<?, ?> entries) {
            Map<String, Object> map = new LinkedHashMap<>();
            entries.forEach((k, v) -> put(map, String.valueOf(k), v));
            return Optional.of(map);
        }
        if (value instanceof Record item && !PRINTED.contains(item.getClass())) {
            return Optional.of(printedInFull(item).<Object>map(s -> s).orElseGet(() -> of(item)));
        }
        return leaf(value);
    }

    private static Optional<Object> leaf(Object value) {
        if (value instanceof LocalDate day) {
            return Optional.of(Days.show(day));
        }
        if (value instanceof Enum<?> constant) {
            return Optional.of(FactsOfKind.word(constant));
        }
        if (value instanceof Boolean || value instanceof Number) {
            return Optional.of(value);
        }
        return value instanceof Pattern ? Optional.empty() : Optional.of(String.valueOf(value));
    }

    private static Optional<String> printedInFull(Record item) {
        if (item instanceof Phone phone) {
            return Optional.of(phone.full());
        }
        if (item instanceof Email email) {
            return Optional.of(email.full());
        }
        if (item instanceof Bsb bsb) {
            return Optional.of(bsb.full());
        }
        if (item instanceof AccountNumber account) {
            return Optional.of(account.full());
        }
        return item instanceof ExactMoney money
                ? Optional.of("$" + money.amount().toPlainString())
                : Optional.empty();
    }
}
