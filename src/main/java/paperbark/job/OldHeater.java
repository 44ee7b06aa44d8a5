package paperbark.job;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.util.Optional;

/**
 * The heater taken out.
 *
 * @param kind what it was
 * @param maker name on its plate
 * @param model model on its plate
 * @param serial serial on its plate, where readable
 * @param disabledHow how it was put out of use for good
 * @param disposal where it went
 * @param removedOn day on which it was put out of use
 */
@RecordBuilder
public record OldHeater(
        OldKind kind,
        Optional<String> maker,
        Optional<String> model,
        Optional<String> serial,
        Optional<String> disabledHow,
        Optional<String> disposal,
        Optional<LocalDate> removedOn) {
    /** Nothing known. */
    static final OldHeater UNKNOWN =
            new OldHeater(
                    OldKind.UNTOLD,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty());

    /** Whether the sun heated it. */
    public boolean isSolar() {
        return kind == OldKind.SOLAR_ELECTRIC || kind == OldKind.SOLAR_GAS;
    }

    /** Whether it was wired: an electric heater or booster, or a heat pump. */
    public boolean isElectric() {
        return switch (kind) {
            case ELECTRIC_STORAGE, ELECTRIC_INSTANT, SOLAR_ELECTRIC, HEAT_PUMP -> true;
            default -> false;
        };
    }

    /** Whether it burnt gas. */
    public boolean isGas() {
        return switch (kind) {
            case GAS_STORAGE, GAS_INSTANT, SOLAR_GAS -> true;
            default -> false;
        };
    }

    /** Whether it was a heat pump. */
    public boolean isHeatPump() {
        return kind == OldKind.HEAT_PUMP;
    }

    /** Whether it burnt wood or coal. */
    public boolean isSolidFuel() {
        return kind == OldKind.SOLID_FUEL;
    }
}
