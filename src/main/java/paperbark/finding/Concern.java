package paperbark.finding;

/** What a stop keeps from being produced. A paper without a concern always goes out. */
public enum Concern {
    /** The whole file: no row of it can be used. */
    REGISTER,
    /** The whole row: no paper of the job can be made. */
    JOB,
    /** The paper that assigns small-scale technology certificates. */
    STC,
    /** The paper that assigns Victorian energy efficiency certificates. */
    VEEC,
    /** The maker's warranty registration. */
    WARRANTY,
    /** The record of the heater taken out. */
    OLD_HEATER
}
