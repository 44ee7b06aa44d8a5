package paperbark.office;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Set;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Tells whether something changed that the drafts are made of and that neither ledger nor
 * photographs tell of: the firm's tables and the letters' templates. These are few, so that it may
 * be asked at every look.
 */
final class SendStamp {
    private static final int DEEPEST = 8;

    private SendStamp() {}

    /** Text that differs when something changed; what cannot be read counts as nothing. */
    static String of(Office office) {
        StringBuilder seen = new StringBuilder();
        look(office.tables(), seen);
        office.templates().ifPresent(t -> look(t.resolve("mail"), seen));
        return DigestUtils.sha256Hex(seen.toString());
    }

    private static void look(Path root, StringBuilder seen) {
        if (!Files.exists(root)) {
            return;
        }
        try {
            Files.walkFileTree(
                    root.toRealPath(),
                    Set.of(),
                    DEEPEST,
                    new SimpleFileVisitor<Path>() {
                        @Override
                        public FileVisitResult preVisitDirectory(
                                Path folder, BasicFileAttributes about) {
                            return note(folder, about);
                        }

                        @Override
                        public FileVisitResult visitFile(Path file, BasicFileAttributes about) {
                            return note(file, about);
                        }

                        @Override
                        public FileVisitResult visitFileFailed(Path file, IOException failure) {
                            return FileVisitResult.CONTINUE;
                        }

                        private FileVisitResult note(Path path, BasicFileAttributes about) {
                            seen.append(path)
                                    .append(about.lastModifiedTime().toMillis())
                                    .append(about.size());
                            return FileVisitResult.CONTINUE;
                        }
                    });
        } catch (IOException gone) {
            // Somebody moves it just now; the next look sees it.
            seen.append(gone.getClass().getName());
        }
    }
}
