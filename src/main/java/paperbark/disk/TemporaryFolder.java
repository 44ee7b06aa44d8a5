package paperbark.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A user's own folder for what lies in files for a moment only: what a killed process left there
 * (pages of packs, the database's library) the next one finds and deletes.
 */
public final class TemporaryFolder {
    // No command but watch, which has a folder of its own, runs for so long.
    private static final Duration LONGEST_RUN = Duration.ofDays(1);

    private TemporaryFolder() {}

    /**
     * The folder, made and cleared of what is old.
     *
     * @param around the system's folder for temporary files
     * @return empty when there is something else of that name, perhaps another user's
     */
    public static Optional<Path> of(Path around, String user, Instant now) throws IOException {
        Path folder = around.resolve("paperbark-" + FileNames.slug(user));
        if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            Files.createDirectory(folder);
            Rights.keepPrivate(folder);
        }
        boolean own =
                Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
                        && Files.getOwner(folder).getName().replaceFirst(".*\\\\", "").equals(user);
        if (!own) {
            return Optional.empty();
        }
        List<Path> all;
        try (Stream<Path> files = Files.list(folder)) {
            all = files.filter(Files::isRegularFile).toList();
        }
        for (Path file : all) {
            if (Files.getLastModifiedTime(file).toInstant().plus(LONGEST_RUN).isBefore(now)) {
                Files.deleteIfExists(file);
            }
        }
        return Optional.of(folder);
    }
}
