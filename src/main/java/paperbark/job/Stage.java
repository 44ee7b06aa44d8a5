package paperbark.job;

/** How far a job has come. */
public enum Stage {
    /** The visit is still to come: papers go out with boxes to write in. */
    BOOKED("booked"),
    /** The heater is in and all facts are known. */
    INSTALLED("installed");

    private final String word;

    Stage(String word) {
        this.word = word;
    }

    /** The word used in registers and on paper. */
    public String word() {
        return word;
    }
}
