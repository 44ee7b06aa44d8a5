package paperbark.output;

import java.io.IOException;
import java.io.Writer;

/**
 * Gathers what a template prints, up to a size that no paper reaches; a template that never ends is
 * stopped there.
 */
final class LimitedText extends Writer {
    // A pack's longest paper has some 30,000 characters.
    private static final int LONGEST = 4_000_000;

    private final StringBuilder text = new StringBuilder();

    /** The template printed too much. */
    static final class TooLong extends IOException {
        private static final long serialVersionUID = 1L;

        TooLong() {
            super(
                    "The template prints more than 4 million characters, as one that never ends would.");
        }
    }

    @Override
    public void write(char[] characters, int from, int count) throws IOException {
        if (text.length() + count > LONGEST) {
            throw new TooLong();
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
