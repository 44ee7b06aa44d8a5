package paperbark.job;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import paperbark.sheet.ColumnNames;
import paperbark.value.Nearest;
import paperbark.value.Parsed;

/** The words that offices use in columns with a fixed choice, beside our own. */
final class Words {
    static final Map<String, Stage> STAGES =
            with(
                    Stage.values(),
                    Stage::word,
                    Map.of(
                            "done",
                            Stage.INSTALLED,
                            "complete",
                            Stage.INSTALLED,
                            "completed",
                            Stage.INSTALLED,
                            "scheduled",
                            Stage.BOOKED));

    static final Map<String, OldKind> OLD_KINDS =
            with(
                    OldKind.values(),
                    OldKind::word,
                    Map.of(
                            "electric", OldKind.ELECTRIC_STORAGE,
                            "gas", OldKind.GAS_STORAGE,
                            "gas continuous flow", OldKind.GAS_INSTANT,
                            "instant gas", OldKind.GAS_INSTANT,
                            "solar electric", OldKind.SOLAR_ELECTRIC,
                            "solar gas", OldKind.SOLAR_GAS,
                            "wood", OldKind.SOLID_FUEL,
                            "none", OldKind.NONE,
                            "new building", OldKind.NONE,
                            "new home", OldKind.NONE));

    static final Map<String, BenefitForm> BENEFITS =
            with(
                    BenefitForm.values(),
                    BenefitForm::word,
                    Map.of(
                            "discount", BenefitForm.DISCOUNT,
                            "payment", BenefitForm.PAYMENT,
                            "pay owner", BenefitForm.PAYMENT,
                            "cash", BenefitForm.PAYMENT));

    /** A system is new unless the register says otherwise. */
    static final Map<String, Boolean> NEW =
            Map.of(
                    "yes",
                    true,
                    "new",
                    true,
                    "y",
                    true,
                    "no",
                    false,
                    "n",
                    false,
                    "used",
                    false,
                    "second-hand",
                    false,
                    "reinstalled",
                    false);

    /** A system is whole unless the register says otherwise. */
    static final Map<String, Boolean> COMPLETE =
            Map.of(
                    "yes",
                    true,
                    "complete",
                    true,
                    "y",
                    true,
                    "whole",
                    true,
                    "no",
                    false,
                    "n",
                    false,
                    "tank only",
                    false,
                    "collector only",
                    false);

    private Words() {}

    /** One of several words, whatever its case and punctuation. */
    static <T> Parsed<T> read(String text, Map<String, T> words) {
        String wanted = ColumnNames.normal(text);
        return words.entrySet().stream()
                .filter(e -> ColumnNames.normal(e.getKey()).equals(wanted))
                .findFirst()
                .map(e -> Parsed.ok(e.getValue()))
                .orElseGet(
                        () ->
                                Parsed.bad(
                                        "The word is none of those that this column takes.",
                                        useOneOf(text, words.keySet())));
    }

    private static String useOneOf(String text, Set<String> words) {
        String lower = text.toLowerCase(Locale.ROOT);
        // Single letters and a sheet's true and false are understood, but nobody need learn them.
        List<String> shown =
                words.stream()
                        .filter(w -> w.length() > 1 && !List.of("true", "false").contains(w))
                        .sorted()
                        .toList();
        String all = String.join(", ", shown);
        return Nearest.to(lower, shown)
                .map(n -> "Type \"" + n + "\" if that is meant; the words are " + all + ".")
                .orElse("Type one of these words: " + all + ".");
    }

    private static <T> Map<String, T> with(
            T[] values, Function<T, String> word, Map<String, T> more) {
        Map<String, T> all = new HashMap<>(more);
        for (T value : values) {
            if (!word.apply(value).isEmpty()) {
                all.put(word.apply(value), value);
            }
        }
        return Map.copyOf(all);
    }
}
