package paperbark.scan;

/** A pile cannot be read; the message is a sentence for people. */
public final class UnreadablePile extends java.io.IOException {
    private static final long serialVersionUID = 1L;

    private final String remedy;

    UnreadablePile(String fact, String remedy) {
        super(fact);
        this.remedy = remedy;
    }

    /** What to do, one sentence. */
    public String remedy() {
        return remedy;
    }
}
