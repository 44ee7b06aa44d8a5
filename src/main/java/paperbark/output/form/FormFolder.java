package paperbark.output.form;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.output.Paper;

/**
 * Finds forms by name: {@code forms/<name>.pdf} in the firm's template folder or, where it has
 * none, among the shipped ones. Each is read once.
 */
final class FormFolder {
    static final String FOLDER = Paper.FORMS + "/";

    // Real forms have a few hundred kilobytes; far beyond that something else was dropped there.
    static final int LARGEST = 20_000_000;

    private final Optional<Path> firmFolder;
    private final Map<String, Optional<FormFile>> read = new ConcurrentHashMap<>();

    FormFolder(Optional<Path> firmFolder) {
        this.firmFolder = firmFolder;
    }

    /** The form of that name; the name comes from a table, so it may be anything. */
    Optional<FormFile> form(String name) {
        return name.matches("[\\w-]{1,40}")
                ? read.computeIfAbsent(name, this::read)
                : Optional.empty();
    }

    /** SHA-256 of each form and mapping table read so far, by name. */
    Map<String, String> used() {
        Map<String, String> used = new TreeMap<>();
        for (Optional<FormFile> found : read.values()) {
            found.ifPresent(
                    form -> {
                        used.put(form.pdfName(), DigestUtils.sha256Hex(form.pdf()));
                        used.put(form.tableName(), DigestUtils.sha256Hex(form.table()));
                    });
        }
        return used;
    }

    private Optional<FormFile> read(String name) {
        try {
            Optional<byte[]> pdf = own(name + ".pdf");
            // A table belongs to its form, but a firm may fill a shipped form in its own way.
            Optional<byte[]> table = own(name + ".csv");
            if (pdf.isEmpty()) {
                pdf = shipped(name + ".pdf");
                table = table.isPresent() ? table : shipped(name + ".csv");
            }
            byte[] rows = table.orElse(new byte[0]);
            return pdf.map(bytes -> new FormFile(name, bytes, rows));
        } catch (NotRead e) {
            return Optional.of(
                    new FormFile(name, new byte[0], new byte[0], Optional.of(e.getMessage())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A file that lies there and is not read, for a reason worth telling. */
    private static final class NotRead extends IOException {
        private static final long serialVersionUID = 1L;

        NotRead(String fact) {
            super(fact);
        }
    }

    private Optional<byte[]> own(String file) throws IOException {
        if (firmFolder.isEmpty()) {
            return Optional.empty();
        }
        Path own = firmFolder.get().resolve(FOLDER + file);
        if (!Files.isRegularFile(own)) {
            return Optional.empty();
        }
        if (!own.toRealPath().startsWith(firmFolder.get().toRealPath())) {
            throw new NotRead(
                    "The file " + file + " is a link that leads out of the template folder.");
        }
        if (Files.size(own) > LARGEST) {
            throw new NotRead(tooLarge(file, Files.size(own)));
        }
        return Optional.of(Files.readAllBytes(own));
    }

    static String tooLarge(String file, long bytes) {
        return String.format(
                Locale.ROOT, "The file %s has %,d bytes; the limit is %,d.", file, bytes, LARGEST);
    }

    private static Optional<byte[]> shipped(String file) throws IOException {
        try (InputStream in = FormFolder.class.getResourceAsStream("/templates/" + FOLDER + file)) {
            return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
        }
    }
}
