package paperbark.office;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;

/**
 * A file that people put by for a job.
 *
 * @param path where it lies
 * @param name the same below {@code photos/}, with {@code /} between folders
 * @param kind what it seems to be, by its ending
 * @param bytes its size
 */
public record JobFile(Path path, String name, Kind kind, long bytes) {

    /** What a file seems to be. */
    public enum Kind {
        /** A photograph or drawing. */
        PICTURE,
        /** A document in portable form, such as a certificate. */
        PDF,
        /** Anything else. */
        OTHER;

        private static final Set<String> PICTURES =
                Set.of(
                        "jpg", "jpeg", "png", "heic", "heif", "tif", "tiff", "webp", "gif", "bmp",
                        "dng");

        static Kind of(Path file) {
            String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
            String ending = name.substring(name.lastIndexOf('.') + 1);
            if (PICTURES.contains(ending)) {
                return PICTURE;
            }
            return ending.equals("pdf") ? PDF : OTHER;
        }
    }
}
