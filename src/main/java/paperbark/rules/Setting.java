package paperbark.rules;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;
import paperbark.rules.RuleRow.WrongCell;
import paperbark.value.Days;

/**
 * The value of a single setting. Its name ends with its unit, and the unit says what it must be: a
 * day, a way of rounding, dollars, or else a whole number.
 *
 * @param value as written, proven to be readable
 */
public record Setting(String value) {

    /** A whole number. */
    public int whole() {
        return Integer.parseInt(value);
    }

    /** An amount or other decimal number. */
    public BigDecimal decimal() {
        return new BigDecimal(value);
    }

    /** A day. */
    public LocalDate day() {
        return Days.parse(value).toOptional().orElseThrow();
    }

    /** A way of rounding. */
    public CountRounding rounding() {
        return CountRounding.of(value).orElseThrow();
    }

    static <E extends Enum<E>> TableLayout<E, Setting> layout(String name, Class<E> settings) {
        List<String> words = Stream.of(settings.getEnumConstants()).map(Setting::key).toList();
        Function<RuleRow, Setting> read =
                row -> {
                    String setting = row.word("setting", words);
                    return proven(row, setting.substring(setting.lastIndexOf('_') + 1));
                };
        return TableLayout.of(name, List.of("setting", "value"), read, Setting::key);
    }

    static String key(Enum<?> setting) {
        return setting.name().toLowerCase(Locale.ROOT);
    }

    private static Setting proven(RuleRow row, String unit) {
        String value = row.text("value");
        switch (unit) {
            case "day" -> require(Days.parse(value).toOptional().isPresent(), value, "a day");
            case "rounding" ->
                    require(CountRounding.of(value).isPresent(), value, "down or half-up");
            case "dollars" -> row.decimal("value");
            default -> row.whole("value");
        }
        return new Setting(value);
    }

    private static void require(boolean right, String value, String what) {
        if (!right) {
            throw new WrongCell("value \"" + value + "\" is not " + what);
        }
    }
}
