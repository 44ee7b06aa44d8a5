package paperbark.rules;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Finds the bytes of the shipped tables and of the firm's.
 *
 * @param folder the firm's folder, where it has one
 * @param program the bytes of a shipped file by its name below {@code rules/}
 */
record RuleFiles(Optional<Path> folder, Function<String, Optional<byte[]>> program) {

    /**
     * A file's content.
     *
     * @param file name and checksum
     * @param text its text; empty where it is not UTF-8
     */
    record Content(TableFile file, Optional<String> text) {}

    /** The bytes of a shipped file as they stand in the program. */
    static Optional<byte[]> inProgram(String name) {
        try (InputStream in = RuleFiles.class.getResourceAsStream("/rules/" + name)) {
            return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Optional<Content> shipped(String name) {
        return program.apply(name).map(bytes -> content(name, bytes, false));
    }

    Optional<Content> firms(String name) {
        Optional<Path> file = folder.map(f -> f.resolve(name)).filter(Files::isRegularFile);
        try {
            return file.isEmpty()
                    ? Optional.empty()
                    : Optional.of(content(name, Files.readAllBytes(file.get()), true));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The names of all CSV files in the firm's folder, with forward slashes, sorted. */
    List<String> firmsNames() {
        if (folder.filter(Files::isDirectory).isEmpty()) {
            return List.of();
        }
        try (Stream<Path> files = Files.walk(folder.get())) {
            return files.filter(Files::isRegularFile)
                    .map(f -> folder.get().relativize(f).toString().replace('\\', '/'))
                    .filter(name -> name.endsWith(".csv"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Content content(String name, byte[] bytes, boolean firms) {
        Optional<String> text;
        try {
            String all =
                    StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
            text = Optional.of(all.startsWith("\uFEFF") ? all.substring(1) : all);
        } catch (CharacterCodingException e) {
            text = Optional.empty();
        }
        return new Content(new TableFile(name, sha256(bytes), firms), text);
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java has SHA-256", e);
        }
    }
}
