package paperbark.finding;

/** How much a {@link Finding} matters; ordered from the mildest to the gravest. */
public enum Severity {
    /** Worth knowing; nobody needs to act. */
    NOTE("note"),
    /** The paper is produced, but somebody must look. */
    CHECK("check"),
    /** The papers that the finding holds are not produced. */
    STOP("stop");

    private final String word;

    Severity(String word) {
        this.word = word;
    }

    /** The word shown to people, beside any colour: {@code note}, {@code check} or {@code stop}. */
    public String word() {
        return word;
    }
}
