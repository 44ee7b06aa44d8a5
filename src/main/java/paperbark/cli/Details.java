package paperbark.cli;

import java.io.PrintWriter;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;

/**
 * What {@code --debug} adds: the failures behind findings and messages, which are told in words
 * otherwise, with the program's own names and lines.
 */
final class Details extends Handler {
    private static final Logger LOG = Logger.getLogger("paperbark");

    private final PrintWriter err;

    private Details(PrintWriter err) {
        this.err = err;
    }

    /** Shows them from now on. */
    static Details shownOn(PrintWriter err) {
        Details details = new Details(err);
        LOG.setLevel(Level.ALL);
        LOG.setUseParentHandlers(false);
        LOG.addHandler(details);
        return details;
    }

    @Override
    public void publish(LogRecord told) {
        err.println("debug: " + told.getMessage());
        if (told.getThrown() != null) {
            told.getThrown().printStackTrace(err);
        }
    }

    @Override
    public void flush() {
        err.flush();
    }

    /** Shows them no more. */
    @Override
    public void close() {
        LOG.removeHandler(this);
        LOG.setLevel(null);
        LOG.setUseParentHandlers(true);
    }
}
