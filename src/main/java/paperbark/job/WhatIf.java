package paperbark.job;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.firm.Words;
import paperbark.value.Days;
import paperbark.value.Parsed;
import paperbark.value.Postcode;
import paperbark.value.State;

/**
 * Other facts that somebody supposes for a job, each read as the register's own would be.
 *
 * @param day day of the installation, or of the visit of a booked job
 * @param postcode postcode of the site
 * @param state state of the site
 * @param maker maker of the heater
 * @param model model of the heater
 * @param old what was taken out
 */
public record WhatIf(
        Optional<LocalDate> day,
        Optional<Postcode> postcode,
        Optional<State> state,
        Optional<String> maker,
        Optional<String> model,
        Optional<OldKind> old) {
    /** The names, as a sentence lists them. */
    public static final String NAMES = "date, postcode, state, maker, model, old";

    private static final Pattern ONE = Pattern.compile("\\s*([\\p{L}-]+)\\s*=(.*)");
    // A comma within a value stays, as in "old=solar, electric boost,date=2026-11-20".
    private static final Pattern BETWEEN = Pattern.compile(",(?=\\s*[\\p{L}-]+\\s*=)");

    private enum Name {
        DATE,
        POSTCODE,
        STATE,
        MAKER,
        MODEL,
        OLD
    }

    /** A value that is none of its kind. */
    private static final class Wrong extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Wrong(String message) {
            super(message);
        }
    }

    /**
     * Reads words of the form {@code date=2027-01-04,postcode=3350}. A bad outcome says which name
     * or value is wrong and lists the names that there are.
     */
    public static Parsed<WhatIf> parse(List<String> words) {
        try {
            Map<Name, String> values = new EnumMap<>(Name.class);
            words.stream().flatMap(BETWEEN::splitAsStream).forEach(word -> take(word, values));
            return Parsed.ok(
                    new WhatIf(
                            value(values, Name.DATE, Days::parse),
                            value(values, Name.POSTCODE, Postcode::parse),
                            value(values, Name.STATE, State::parse),
                            value(values, Name.MAKER, Parsed::ok),
                            value(values, Name.MODEL, Parsed::ok),
                            value(values, Name.OLD, WhatIf::old)));
        } catch (Wrong wrong) {
            return Parsed.bad(wrong.getMessage(), "The names are " + NAMES + ".");
        }
    }

    private static Parsed<OldKind> old(String text) {
        return Words.SHIPPED.read(Field.OLD_KIND.key(), text, OldKind.values(), OldKind::word);
    }

    private static void take(String word, Map<Name, String> values) {
        Matcher form = ONE.matcher(word);
        if (!form.matches()) {
            throw new Wrong("\"%s\" is not of the form name=value.".formatted(word.strip()));
        }
        Name name = name(form.group(1));
        String value = form.group(2).strip();
        if (value.isEmpty()) {
            throw new Wrong("\"%s\" has no value.".formatted(form.group(1)));
        }
        if (values.put(name, value) != null) {
            throw new Wrong("\"%s\" is supposed twice.".formatted(form.group(1)));
        }
    }

    private static Name name(String text) {
        for (Name name : Name.values()) {
            if (name.name().equals(text.toUpperCase(Locale.ROOT))) {
                return name;
            }
        }
        throw new Wrong("\"%s\" is no fact that can be supposed.".formatted(text));
    }

    private static <T> Optional<T> value(
            Map<Name, String> values, Name name, Function<String, Parsed<T>> parser) {
        if (!values.containsKey(name)) {
            return Optional.empty();
        }
        String text = values.get(name);
        Parsed<T> parsed = parser.apply(text);
        if (parsed instanceof Parsed.Bad<T> bad) {
            throw new Wrong(
                    "%s=%s: %s %s"
                            .formatted(
                                    name.name().toLowerCase(Locale.ROOT),
                                    text,
                                    bad.fact(),
                                    bad.remedy()));
        }
        return parsed.toOptional();
    }

    /** Whether nothing is supposed. */
    public boolean isEmpty() {
        return equals(
                new WhatIf(
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
    }
}
