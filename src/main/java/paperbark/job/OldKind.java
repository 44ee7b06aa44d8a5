package paperbark.job;

/** What heated the water before. */
public enum OldKind {
    ELECTRIC_STORAGE("electric storage"),
    ELECTRIC_INSTANT("electric instantaneous"),
    GAS_STORAGE("gas storage"),
    GAS_INSTANT("gas instantaneous"),
    SOLAR_ELECTRIC("solar, electric boost"),
    SOLAR_GAS("solar, gas boost"),
    HEAT_PUMP("heat pump"),
    SOLID_FUEL("solid fuel"),
    NONE("none (new building)"),
    /** Something was there, but the register does not say what. */
    UNTOLD("");

    private final String word;

    OldKind(String word) {
        this.word = word;
    }

    /** The words used in registers and on paper. */
    public String word() {
        return word;
    }
}
