package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.batch.EntryFile;
import paperbark.batch.ForgottenFiles;
import paperbark.disk.Rights;

/**
 * Which entry each file of a folder was found to tell, so that a file that is the same by name,
 * size, times and place on the disk need not be read again. It says nothing about the ledger: what
 * is remembered is held against the seals that the ledger has now.
 */
final class ProvedFiles {
    /** Its file, in the folder of batches. */
    static final String NAME = ".paperbark-proved";

    // A file's own time of change is the system's: who changes a file cannot set it back.
    private static final String STAMP = "unix:size,lastModifiedTime,ctime,ino";
    private static final String PLAIN_STAMP = "size,lastModifiedTime,creationTime";
    private static final List<String> TELLING =
            List.of(EntryFile.NAME, "manifest.json", ForgottenFiles.NAME, EntryFile.MADE_AGAIN);
    private static final String CELL = "\t";

    private final Map<String, Remembered> before;
    private final Map<String, Remembered> now = new TreeMap<>();
    private final Map<Path, String> stamps = new HashMap<>();

    /**
     * What a file or batch folder told.
     *
     * @param seq number of the entry
     * @param name of the entry
     * @param seal that the ledger had for it
     */
    record Told(long seq, String name, String seal) {}

    private record Remembered(String stamp, Told told) {
        String line(String where) {
            return String.join(
                    CELL, where, stamp, String.valueOf(told.seq()), told.name(), told.seal());
        }
    }

    private ProvedFiles(Map<String, Remembered> before) {
        this.before = before;
    }

    /** Remembers nothing, so that every file is read. */
    static ProvedFiles none() {
        return new ProvedFiles(Map.of());
    }

    /** What an earlier run noted; nothing where that cannot be read or is cut. */
    static ProvedFiles of(Office office) {
        try {
            String all = Files.readString(file(office));
            int end = all.indexOf('\n') + 1;
            String lines = all.substring(end);
            return all.substring(0, end).strip().equals(DigestUtils.sha256Hex(lines))
                    ? new ProvedFiles(
                            lines.lines()
                                    .map(line -> line.split(CELL, -1))
                                    .collect(Collectors.toMap(c -> c[0], ProvedFiles::read)))
                    : none();
        } catch (IOException | RuntimeException asIfNew) {
            return none();
        }
    }

    private static Remembered read(String[] cells) {
        return new Remembered(cells[1], new Told(Long.parseLong(cells[2]), cells[3], cells[4]));
    }

    /** What a file or batch folder told, if it is still the same. */
    Optional<Told> known(Path path) throws IOException {
        // Taken before the file is read: what is changed meanwhile is read again the next time.
        String stamp = stamp(path);
        stamps.put(path, stamp);
        return Optional.ofNullable(before.get(where(path)))
                .filter(r -> r.stamp().equals(stamp))
                .map(Remembered::told);
    }

    /** Notes what a file or batch folder was found to tell. */
    void remember(Path path, Told told) {
        if (stamps.containsKey(path)
                && !(where(path) + told.name()).matches("(?s).*[\\t\\r\\n].*")) {
            now.put(where(path), new Remembered(stamps.get(path), told));
        }
    }

    /** Writes it down for the next run; what cannot be written is proved again. */
    void write(Office office) {
        if (now.equals(before)) {
            return;
        }
        StringBuilder lines = new StringBuilder();
        now.forEach((where, remembered) -> lines.append(remembered.line(where)).append('\n'));
        try {
            Path file = file(office);
            byte[] all =
                    (DigestUtils.sha256Hex(lines.toString()) + "\n" + lines)
                            .getBytes(StandardCharsets.UTF_8);
            Files.write(file, all);
            Rights.ofFolderAround(file);
        } catch (IOException | RuntimeException again) {
            now.clear();
        }
    }

    private static Path file(Office office) {
        return office.packs().resolve(NAME);
    }

    private static String where(Path path) {
        return path.getParent().getFileName() + "/" + path.getFileName();
    }

    private static String stamp(Path path) throws IOException {
        if (Files.isDirectory(path)) {
            StringBuilder all = new StringBuilder();
            for (String name : TELLING) {
                all.append(ofFile(path.resolve(name))).append(';');
            }
            return all.toString();
        }
        return ofFile(path);
    }

    private static String ofFile(Path file) throws IOException {
        boolean isUnix = file.getFileSystem().supportedFileAttributeViews().contains("unix");
        try {
            return new TreeMap<>(
                            Files.readAttributes(
                                    file, isUnix ? STAMP : PLAIN_STAMP, LinkOption.NOFOLLOW_LINKS))
                    .toString();
        } catch (NoSuchFileException none) {
            return "";
        }
    }
}
