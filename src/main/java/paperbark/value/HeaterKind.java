package paperbark.value;

/** The kinds of new water heater. */
public enum HeaterKind {
    /** Solar with flat collector panels. */
    SOLAR_FLAT("flat plate solar", true),
    /** Solar with evacuated tubes. */
    SOLAR_TUBES("evacuated tube solar", true),
    /** Air-source heat pump with tank and heat pump in one body. */
    HEAT_PUMP("heat pump", false),
    /** Air-source heat pump standing apart from its tank. */
    SPLIT_HEAT_PUMP("split heat pump", false);

    private final String word;
    private final boolean solar;

    HeaterKind(String word, boolean solar) {
        this.word = word;
        this.solar = solar;
    }

    /** The words used in tables and on paper. */
    public String word() {
        return word;
    }

    /** Whether it is heated by the sun; otherwise it is an air-source heat pump. */
    public boolean isSolar() {
        return solar;
    }
}
