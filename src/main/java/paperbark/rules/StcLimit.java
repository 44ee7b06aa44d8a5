package paperbark.rules;

/** The single figures of the federal rules, by their names in {@code stc/limits.csv}. */
public enum StcLimit {
    /** First day on which an installation could earn STCs. */
    SCHEME_FIRST_DAY,
    /** Last day on which an installation can earn STCs. */
    SCHEME_LAST_DAY,
    /** Most litres of a heat pump. */
    HEAT_PUMP_LARGEST_LITRES,
    /** Most litres of a solar heater without declarations. */
    SOLAR_LARGEST_LITRES,
    /** Months from installation within which certificates are created. */
    CLAIM_MONTHS,
    /** Days after installation from which a claim is called urgent. */
    WARN_AFTER_DAYS,
    /** Years for which signed papers are kept. */
    KEEP_YEARS,
    /** Years that the register's figures stand for. */
    LISTING_YEARS,
    /** How fractions of a certificate are treated. */
    COUNT_ROUNDING;

    static final TableLayout<StcLimit, Setting> LAYOUT =
            Setting.layout("stc/limits.csv", StcLimit.class);
}
