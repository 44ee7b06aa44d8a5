package paperbark.output.workbook;

/** How many lines a text takes, because not every reader of a workbook finds out for itself. */
final class Wrapping {
    private Wrapping() {}

    /** Lines of the text when words are wrapped at that many average characters; at least one. */
    static int lines(String text, int widthCharacters) {
        if (text.length() <= widthCharacters && text.indexOf('\n') < 0 && text.indexOf('\r') < 0) {
            return 1;
        }
        return text.lines().mapToInt(line -> wrapped(line, Math.max(1, widthCharacters))).sum()
                + (text.isEmpty() ? 1 : 0);
    }

    private static int wrapped(String line, int width) {
        int lines = 1;
        int used = 0;
        // Lines break after a space or a hyphen; a space at the end of a line takes no room.
        for (String piece : line.split("(?<=[ -])")) {
            int length = piece.stripTrailing().length();
            if (used > 0 && used + length > width) {
                lines++;
                used = 0;
            }
            if (length > width) {
                lines += (length - 1) / width;
                used = (length - 1) % width + 1;
            } else {
                used += piece.length();
            }
        }
        return lines;
    }
}
