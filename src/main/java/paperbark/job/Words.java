package paperbark.job;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

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
