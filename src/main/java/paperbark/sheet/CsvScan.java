package paperbark.sheet;

/**
 * What must be known of a CSV text before it is parsed. The parser lets quotation marks inside
 * unquoted fields pass, which RFC 4180 does not: they mostly mean that another one is lost.
 *
 * @param brokenLine 1-based line of the first quotation mark out of place, or where a quoted field
 *     begins that never ends; 0 when all is well
 * @param widest the most fields in one record
 */
record CsvScan(int brokenLine, int widest) {

    private enum At {
        START,
        PLAIN,
        QUOTED,
        MAYBE_CLOSED
    }

    static CsvScan of(String text, char delimiter) {
        At at = At.START;
        int line = 1;
        int openedOn = 0;
        int fields = 1;
        int widest = 1;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean ends = endsLine(text, i);
            if (at != At.QUOTED && (c == '\n' || c == '\r')) {
                at = At.START;
                widest = Math.max(widest, fields);
                fields = 1;
            } else if (at != At.QUOTED && c == delimiter) {
                at = At.START;
                fields++;
            } else if (c == '"' && at == At.PLAIN || c != '"' && at == At.MAYBE_CLOSED) {
                return new CsvScan(line, widest);
            } else if (c == '"') {
                openedOn = at == At.START ? line : openedOn;
                at = at == At.QUOTED ? At.MAYBE_CLOSED : At.QUOTED;
            } else if (at == At.START) {
                at = At.PLAIN;
            }
            line += ends ? 1 : 0;
        }
        return new CsvScan(at == At.QUOTED ? openedOn : 0, Math.max(widest, fields));
    }

    /** Line breaks of any kind between two positions. */
    static int lineBreaks(String text, int from, int to) {
        int breaks = 0;
        for (int i = from; i < to; i++) {
            breaks += endsLine(text, i) ? 1 : 0;
        }
        return breaks;
    }

    private static boolean endsLine(String text, int at) {
        char c = text.charAt(at);
        boolean pair = at + 1 < text.length() && text.charAt(at + 1) == '\n';
        return c == '\n' || (c == '\r' && !pair);
    }
}
