package paperbark.fault;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * What was done to the disk, in order, a line each, in the file named by {@code
 * -Dpaperbark.trace=FILE}; without it nothing is noted.
 */
public enum Trace {
    /** A file was written, and may be in memory only. */
    WRITE,
    /** A file, or a folder's list of names, is on the disk. */
    FORCE,
    /** A file or folder got another name. */
    MOVE,
    /** The ledger took a batch in. */
    COMMIT,
    /** The process waits at a step. */
    PAUSE;

    private static final long MOMENT = 10_000_000;
    private static final String FILE = System.getProperty("paperbark.trace", "");

    /** Notes that it was done to these paths. */
    public void of(Path... paths) {
        if (FILE.isEmpty()) {
            return;
        }
        StringBuilder line = new StringBuilder();
        for (Path path : paths) {
            line.append('\t').append(path.normalize());
        }
        add(line.toString());
    }

    /** Notes it and waits until the file with the note is gone; another may have been begun. */
    void untilTakenAway(String step) {
        add("\t" + step);
        while (isThere(name() + "\t" + step)) {
            LockSupport.parkNanos(MOMENT);
        }
    }

    private static boolean isThere(String line) {
        try {
            return Files.readAllLines(Path.of(FILE)).contains(line);
        } catch (NoSuchFileException gone) {
            return false;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void add(String what) {
        String line = name() + what;
        synchronized (Trace.class) {
            try {
                Files.write(
                        Path.of(FILE),
                        List.of(line),
                        StandardOpenOption.CREATE,
                        StandardOpenOption.APPEND);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
