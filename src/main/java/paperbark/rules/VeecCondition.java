package paperbark.rules;

/** The single figures of the Victorian rules, by their names in {@code veec/conditions.csv}. */
public enum VeecCondition {
    /** First day on which work could earn VEECs. */
    SCHEME_FIRST_DAY,
    /** Last day on which work can earn VEECs. */
    SCHEME_LAST_DAY,
    /** Months from the end of the year of the work within which certificates are created. */
    CLAIM_AFTER_YEAR_MONTHS,
    /** Days before the closing date from which a claim is called urgent. */
    CLOSING_WARN_DAYS,
    /** Least that the consumer pays for a product; 0 where there was no such condition. */
    CO_PAYMENT_LEAST_DOLLARS,
    /** Shortest warranty of a product; 0 where there was no such condition. */
    WARRANTY_LEAST_YEARS,
    /** Most litres under the domestic activities. */
    LARGEST_LITRES,
    /** How fractions of a tonne are treated. */
    COUNT_ROUNDING,
    /** Fewest certificates that are usual for a job. */
    USUAL_LEAST_CERTIFICATES,
    /** Most certificates that are usual for a job. */
    USUAL_MOST_CERTIFICATES,
    /** Years for which records are kept. */
    KEEP_YEARS;

    static final TableLayout<VeecCondition, Setting> LAYOUT =
            Setting.layout("veec/conditions.csv", VeecCondition.class);
}
