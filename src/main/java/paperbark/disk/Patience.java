package paperbark.disk;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * Tries a step again on Windows, where a file that a viewer, a virus scanner or an index has open
 * for a moment can be neither renamed nor replaced. Elsewhere an open file hinders nobody, and the
 * step is tried once.
 */
final class Patience {
    private static final int TRIES = 10;
    private static final int PAUSE_MILLISECONDS = 200;

    private Patience() {}

    /** What is tried. */
    @FunctionalInterface
    interface Step {
        void run() throws IOException;
    }

    /**
     * Runs a step until it succeeds, for some two seconds.
     *
     * @param at where the file lies
     * @throws IOException the step's own after the last try, or at once when waiting does not help
     */
    static void with(Path at, Step step) throws IOException {
        int tries = Disk.isPosix(at) ? 1 : TRIES;
        for (int left = tries - 1; ; left--) {
            try {
                step.run();
                return;
            } catch (FileSystemException e) {
                if (left == 0 || !mayPass(e)) {
                    throw e;
                }
                pause(e);
            }
        }
    }

    private static boolean mayPass(FileSystemException e) {
        return !(e instanceof NoSuchFileException
                || e instanceof FileAlreadyExistsException
                || e instanceof AtomicMoveNotSupportedException);
    }

    private static void pause(IOException because) throws IOException {
        try {
            Thread.sleep(PAUSE_MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw because;
        }
    }
}
