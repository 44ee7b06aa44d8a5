package paperbark.output.paper;

/** A paper takes more pages than any has. */
final class TooManyPages extends RuntimeException {
    private static final long serialVersionUID = 1L;

    TooManyPages(int pages, int most) {
        super("takes " + pages + " pages, where a paper has " + most + " at most");
    }

    /** Where the layout was stopped before anyone could count. */
    TooManyPages(int most) {
        super("takes far more pages than the " + most + " that a paper has at most");
    }
}
