package paperbark.office;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.disk.Computer;
import paperbark.disk.Disk;

/**
 * One program attends an office folder. The lock is the operating system's and falls with the
 * process, so none is ever left behind; the file itself is never deleted. On a share it is as good
 * as the share's own locks.
 */
public final class OfficeLock implements AutoCloseable {
    private final Office office;
    private final FileChannel channel;

    private OfficeLock(Office office, FileChannel channel) {
        this.office = office;
        this.channel = channel;
    }

    /** Another program attends the folder; the message says which and since when. */
    public static final class Busy extends Exception {
        private static final long serialVersionUID = 1L;

        Busy(Office office, String holder) {
            super("Another program attends the office " + office.root() + ": " + holder);
        }
    }

    /**
     * Takes the lock.
     *
     * @param now moment, for people only
     * @throws Busy when another program has it
     * @throws IOException when the file cannot be written
     */
    public static OfficeLock take(Office office, Instant now) throws Busy, IOException {
        FileChannel channel =
                FileChannel.open(
                        office.lock(), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            FileLock lock = channel.tryLock();
            if (lock == null) {
                throw new Busy(office, holder(office));
            }
            Disk.replace(office.lockInfo(), me(now).getBytes(StandardCharsets.UTF_8));
            return new OfficeLock(office, channel);
        } catch (OverlappingFileLockException e) {
            channel.close();
            throw new Busy(office, holder(office));
        } catch (Busy | IOException e) {
            channel.close();
            throw e;
        }
    }

    /** The folder that is locked. */
    Office office() {
        return office;
    }

    /**
     * An empty folder for what lies in files for a moment only, where killed runs leave nothing
     * that is not cleared away.
     *
     * @throws IOException when it cannot be made or cleared
     */
    public Path clearedTemporary() throws IOException {
        Disk.delete(office.temporary());
        Disk.makeFolders(office.temporary());
        return office.temporary();
    }

    private static String me(Instant now) {
        return "process "
                + ProcessHandle.current().pid()
                + Computer.named(" on ")
                + ", since "
                + now;
    }

    /**
     * Between taking the lock and saying so a note of an earlier, killed process may still lie
     * here.
     */
    private static String holder(Office office) throws IOException {
        String note = Files.exists(office.lockInfo()) ? Files.readString(office.lockInfo()) : "";
        Matcher process =
                Pattern.compile("process (\\d+)( on (.*))?, since .*").matcher(note.strip());
        boolean gone =
                process.matches()
                        && Computer.NAME.equals(
                                Optional.ofNullable(process.group(3)).orElse(Computer.NAME))
                        && ProcessHandle.of(Long.parseLong(process.group(1))).isEmpty();
        return note.isBlank() || gone ? "it has not said which one it is. Try again." : note;
    }

    @Override
    public void close() throws IOException {
        try {
            Files.deleteIfExists(office.lockInfo());
        } finally {
            channel.close();
        }
    }
}
