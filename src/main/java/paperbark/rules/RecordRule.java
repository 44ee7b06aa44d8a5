package paperbark.rules;

/** How long records are kept, by the names in {@code au/records.csv}. */
public enum RecordRule {
    /** Records of tax and GST, from the end of the transaction. */
    TAX_KEEP_YEARS,
    /** Financial records of a company. */
    COMPANY_KEEP_YEARS,
    /** The contractor's copies of compliance certificates, by the state with the longest time. */
    CERTIFICATE_KEEP_YEARS,
    /** The file of a job, from its completion, where no warranty lasts longer. */
    JOB_FILE_KEEP_YEARS;

    static final TableLayout<RecordRule, Setting> LAYOUT =
            Setting.layout("au/records.csv", RecordRule.class);
}
