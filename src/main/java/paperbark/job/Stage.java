package paperbark.job;

/** How far a job has come. */
public enum Stage {
    /** The visit is still to come: papers go out with boxes to write in. */
    BOOKED("booked"),
    /** The heater is in and all facts are known. */
    INSTALLED("installed"),
    /** Work that earns nothing, such as a replacement under warranty: papers, but no claim. */
    NO_CLAIM("no claim"),
    /** Nothing is done for it, and nothing is claimed. */
    CANCELLED("cancelled");

    private final String word;

    Stage(String word) {
        this.word = word;
    }

    /** Whether work of this stage can earn certificates. */
    public boolean claims() {
        return this == BOOKED || this == INSTALLED;
    }

    /** The word used in registers and on paper. */
    public String word() {
        return word;
    }
}
