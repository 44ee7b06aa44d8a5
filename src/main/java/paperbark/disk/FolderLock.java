package paperbark.disk;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * One run with a ledger publishes into a folder at a time: what lies there hidden and is in the
 * ledger is finished by the next run, which must not happen to a run that is at work still. The
 * lock is the operating system's and falls with the process; the file itself is never deleted.
 */
public final class FolderLock implements AutoCloseable {
    /** Name of the file whose lock it is. */
    public static final String NAME = ".lock";

    private final Path folder;
    private final FileChannel channel;

    private FolderLock(Path folder, FileChannel channel) {
        this.folder = folder;
        this.channel = channel;
    }

    /** Another run is at work in the folder. */
    public static final class BusyException extends IOException {
        private static final long serialVersionUID = 1L;

        BusyException(Path folder) {
            super(
                    "Another program is preparing a register into "
                            + folder
                            + ". Wait until it has ended, then prepare this one.");
        }
    }

    /**
     * Takes the lock of a folder, which is made where it is missing.
     *
     * @throws BusyException when another run has it
     */
    public static FolderLock take(Path folder) throws IOException {
        Disk.makeFolders(folder);
        return tryTake(folder).orElseThrow(() -> new BusyException(folder));
    }

    /** The lock of a folder that is there; empty when another run has it. */
    public static Optional<FolderLock> tryTake(Path folder) throws IOException {
        FileChannel channel =
                FileChannel.open(
                        folder.resolve(NAME), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            if (channel.tryLock() != null) {
                return Optional.of(new FolderLock(folder.toRealPath(), channel));
            }
        } catch (OverlappingFileLockException taken) {
            // Another run of this process has it.
        } catch (IOException e) {
            channel.close();
            throw e;
        }
        channel.close();
        return Optional.empty();
    }

    /** Whether it is this folder's. */
    public boolean isOf(Path other) throws IOException {
        return Files.isDirectory(other) && folder.equals(other.toRealPath());
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
