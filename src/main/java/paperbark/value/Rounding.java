package paperbark.value;

import java.math.RoundingMode;

/** The ways in which amounts may be rounded, each with the reason it exists. */
public enum Rounding {
    /**
     * To the nearest cent, half a cent up. Source: A New Tax System (Goods and Services Tax) Act
     * 1999 s 9-90 (read in full for the facts used here).
     */
    GST_ACT(RoundingMode.HALF_UP),
    /** To the nearest cent, half a cent up: prices, fees and the cost of waiting, by usage. */
    NEAREST_CENT(RoundingMode.HALF_UP);

    private final RoundingMode mode;

    Rounding(RoundingMode mode) {
        this.mode = mode;
    }

    /** The arithmetic mode. */
    public RoundingMode mode() {
        return mode;
    }
}
