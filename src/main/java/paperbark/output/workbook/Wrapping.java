package paperbark.output.workbook;

/** How many lines a text takes, because not every reader of a workbook finds out for itself. */
final class Wrapping {
    private Wrapping() {}

    /** Lines of the text when words are wrapped at that many average characters; at least one. */
    static int lines(String text, int widthCharacters) {
        return text.lines().mapToInt(line -> wrapped(line, Math.max(1, widthCharacters))).sum()
                + (text.isEmpty() ? 1 : 0);
    }

    private static int wrapped(String line, int width) {
        int lines = 1;
        int used = 0;
        for (String word : line.split(" ")) {
            int length = word.length();
            if (used > 0 && used + 1 + length > width) {
                lines++;
                used = 0;
            }
            used += (used > 0 ? 1 : 0) + length;
            if (used > width) {
                lines += (used - 1) / width;
                used = (used - 1) % width + 1;
            }
        }
        return lines;
    }
}
