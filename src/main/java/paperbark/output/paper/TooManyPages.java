package paperbark.output.paper;

/** A paper takes more pages than any has. */
final class TooManyPages extends RuntimeException {
    private static final long serialVersionUID = 1L;

    TooManyPages(int pages, int most) {
        super("takes " + pages + " pages, where a paper has " + most + " at most");
    }
}
