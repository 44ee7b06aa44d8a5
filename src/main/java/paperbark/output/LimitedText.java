package paperbark.output;

import java.io.IOException;
import java.io.Writer;

/**
 * Gathers what a template prints, up to a size that no paper reaches; a template that never ends is
 * stopped there.
 */
final class LimitedText extends Writer {
    private final StringBuilder text = new StringBuilder();
    private final int longest;

    LimitedText(int longest) {
        this.longest = longest;
    }

    /** The template printed too much. */
    static final class TooLong extends IOException {
        private static final long serialVersionUID = 1L;

        TooLong(int longest) {
            super(
                    "The template prints more than %d million characters, as one that never ends would."
                            .formatted(longest / 1_000_000));
        }
    }

    @Override
    public void write(char[] characters, int from, int count) throws IOException {
        if (text.length() + count > longest) {
            throw new TooLong(longest);
        }
        text.append(characters, from, count);
    }

    @Override
    public void flush() {
        // Everything is in memory.
    }

    @Override
    public void close() {
        // Nothing is held open.
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
