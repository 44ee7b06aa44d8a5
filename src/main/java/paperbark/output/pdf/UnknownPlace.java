package paperbark.output.pdf;

/** What is known of papers does not fit those that were drawn with them. */
public final class UnknownPlace extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnknownPlace() {
        super("what is known of papers does not fit what was drawn");
    }
}
