package paperbark.office;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import paperbark.value.Trade;

/**
 * A file that people put by for a job.
 *
 * @param path where it lies
 * @param name the same below {@code photos/}, with {@code /} between folders
 * @param kind what it seems to be, by its ending
 * @param bytes its size
 */
public record JobFile(Path path, String name, Kind kind, long bytes) {
    // Common practice, no source: how people call such files.
    private static final Set<String> CERTIFICATE =
            Set.of(
                    "compliance",
                    "certificate",
                    "certificates",
                    "cert",
                    "certs",
                    "coc",
                    "coes",
                    "ecoc",
                    "ccew");
    private static final Set<String> RECEIPT =
            Set.of("receipt", "receipts", "docket", "scrap", "disposal");

    /** A folder of pictures that a person has compared with day and site. */
    static final String CHECKED = "checked";

    // Pictures of what was there before may be older than the installation.
    private static final Set<String> BEFORE = Set.of("before", "old", "quote");

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

    /** Whether its name or a folder's says that it is a certificate of compliance. */
    public boolean isCertificate() {
        return words().anyMatch(CERTIFICATE::contains);
    }

    /** Whether its name or a folder's says that it is a receipt, such as that for the scrap. */
    public boolean isReceipt() {
        return !isCertificate() && words().anyMatch(RECEIPT::contains);
    }

    /** Whether it is a picture and neither certificate nor receipt. */
    public boolean isPhotograph() {
        return kind == Kind.PICTURE && !isCertificate() && !isReceipt();
    }

    /** What it seems to be, in a word. */
    String what() {
        if (isCertificate()) {
            return "Certificate";
        }
        if (isReceipt()) {
            return "Receipt";
        }
        return kind == Kind.PICTURE ? "Picture" : "Document";
    }

    /** The trade that its name or a folder's tells of. */
    public Optional<Trade> trade() {
        List<String> words = words().toList();
        if (words.stream().anyMatch(w -> w.startsWith("plumb") || w.startsWith("gas"))) {
            return Optional.of(Trade.PLUMBING);
        }
        return words.stream().anyMatch(w -> w.startsWith("elec"))
                ? Optional.of(Trade.ELECTRICAL)
                : Optional.empty();
    }

    /** Whether its name or a folder's says that it shows what was there before the work. */
    boolean isOfBefore() {
        return words().anyMatch(BEFORE::contains);
    }

    /** Whether a person has put it where nothing is asked of it any more. */
    boolean isChecked() {
        return Arrays.stream(name.split("/"))
                .limit(Math.max(0, name.split("/").length - 1))
                .anyMatch(CHECKED::equalsIgnoreCase);
    }

    private Stream<String> words() {
        return Arrays.stream(name.toLowerCase(Locale.ROOT).split("[^\\p{L}]+"));
    }
}
