package paperbark.output.form;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
    private static final long LARGEST = 20L * 1024 * 1024;

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
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Optional<byte[]> own(String file) throws IOException {
        if (firmFolder.isEmpty()) {
            return Optional.empty();
        }
        Path own = firmFolder.get().resolve(FOLDER + file);
        boolean usable =
                Files.isRegularFile(own)
                        && own.toRealPath().startsWith(firmFolder.get().toRealPath())
                        && Files.size(own) <= LARGEST;
        return usable ? Optional.of(Files.readAllBytes(own)) : Optional.empty();
    }

    private static Optional<byte[]> shipped(String file) throws IOException {
        try (InputStream in = FormFolder.class.getResourceAsStream("/templates/" + FOLDER + file)) {
            return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
        }
    }
}
