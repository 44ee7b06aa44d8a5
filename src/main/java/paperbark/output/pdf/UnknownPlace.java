package paperbark.output.pdf;

/** What was drawn stands in the structure tree as no paper of ours does. */
public final class UnknownPlace extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnknownPlace() {
        super("papers that were not drawn have no place among those that were");
    }
}
