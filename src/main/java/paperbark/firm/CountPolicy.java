package paperbark.firm;

/** Which number of certificates is claimed where the register names a lower one than the rules. */
public enum CountPolicy {
    /** The number that the rules give. */
    RULES("rules"),
    /** The lower number of the register. */
    REGISTER("register");

    private final String word;

    CountPolicy(String word) {
        this.word = word;
    }

    /** The word used in the firm's table. */
    public String word() {
        return word;
    }
}
