package paperbark.output.pdf;

/**
 * What a part of a page is, as its marks say (ISO 32000-1, 14.6).
 *
 * @param text what begins the part, but for the number of its content
 * @param content its number on the page, by which the structure tree finds it; -1 for none
 */
record Mark(String text, int content) {
    /** Lines and shades: design and no more. */
    static final Mark LAYOUT = new Mark("/Artifact BMC\n", -1);

    /** Head and foot of a page. */
    static final Mark PAGINATION = new Mark("/Artifact<</Type/Pagination>>BDC\n", -1);

    /** Content that the tree knows. */
    static Mark of(String tag, int content) {
        return new Mark("/" + tag, content);
    }

    boolean isContent() {
        return content >= 0;
    }
}
