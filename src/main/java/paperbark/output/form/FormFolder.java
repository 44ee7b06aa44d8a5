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
            Optional<byte[]> pdf = bytes(name + ".pdf");
            return pdf.isEmpty()
                    ? Optional.empty()
                    : Optional.of(
                            new FormFile(
                                    name, pdf.get(), bytes(name + ".csv").orElse(new byte[0])));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Optional<byte[]> bytes(String file) throws IOException {
        if (firmFolder.isPresent()) {
            Path own = firmFolder.get().resolve(FOLDER + file);
            if (Files.isRegularFile(own)
                    && own.toRealPath().startsWith(firmFolder.get().toRealPath())
                    && Files.size(own) <= LARGEST) {
                return Optional.of(Files.readAllBytes(own));
            }
        }
        try (InputStream shipped =
                FormFolder.class.getResourceAsStream("/templates/" + FOLDER + file)) {
            return shipped == null ? Optional.empty() : Optional.of(shipped.readAllBytes());
        }
    }
}
