package paperbark.output.paper;

/**
 * The pages of a paper in its pack, without the blank back that may follow.
 *
 * @param first its first page, from 0
 * @param count how many, at least 1
 */
record Extent(int first, int count) {
    /** Whether the page, counted from 0, is one of them. */
    boolean has(int page) {
        return page >= first && page < first + count;
    }

    /** The page after the last. */
    int end() {
        return first + count;
    }

    /** Which of the paper's pages the page is, e.g. {@code 2 of 3}. */
    String words(int page) {
        return page - first + 1 + " of " + count;
    }
}
