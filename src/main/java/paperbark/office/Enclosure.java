package paperbark.office;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.output.LetterView;
import paperbark.output.paper.PaperCopy;

/**
 * A file that goes with a letter: a file of the office as it is, or one paper cut out of a pack.
 *
 * @param as how the letter tells of it
 * @param source the file, or the pack
 * @param first the paper's first page in the pack, from 1; 0 for a file as it is
 * @param pages how many pages the paper has; 0 for a file as it is
 * @param stamp what changes when the file does
 * @param withoutAccounts whether it stays at home where it shows an account number
 */
record Enclosure(
        LetterView.Enclosed as,
        Path source,
        int first,
        int pages,
        String stamp,
        boolean withoutAccounts) {

    /** A file as it is. */
    static Enclosure file(LetterView.Enclosed as, Path file) throws IOException {
        return new Enclosure(as, file, 0, 0, stamp(file), false);
    }

    /** A paper cut out of a pack. */
    static Enclosure cut(
            LetterView.Enclosed as, Path pack, int first, int pages, boolean withoutAccounts)
            throws IOException {
        return new Enclosure(as, pack, first, pages, stamp(pack), withoutAccounts);
    }

    private static String stamp(Path file) throws IOException {
        return Files.size(file) + " " + Files.getLastModifiedTime(file).toMillis();
    }

    /** What changes when its bytes do, wherever it lies. */
    String key() throws IOException {
        try (InputStream in = Files.newInputStream(source)) {
            return String.join(
                    " ",
                    as.toString(),
                    String.valueOf(first),
                    String.valueOf(pages),
                    String.valueOf(withoutAccounts),
                    DigestUtils.sha256Hex(in));
        }
    }

    /** Its bytes. */
    byte[] content() throws IOException {
        return pages == 0 ? Files.readAllBytes(source) : PaperCopy.of(source, first, pages);
    }

    /** What it is, for mail programs; by its name's ending alone. */
    String type() {
        String name = as.file().toLowerCase(Locale.ROOT);
        return switch (name.substring(name.lastIndexOf('.') + 1)) {
            case "pdf" -> "application/pdf";
            case "jpg", "jpeg" -> "image/jpeg";
            case "png" -> "image/png";
            case "gif" -> "image/gif";
            case "heic", "heif" -> "image/heic";
            case "tif", "tiff" -> "image/tiff";
            case "webp" -> "image/webp";
            default -> "application/octet-stream";
        };
    }
}
