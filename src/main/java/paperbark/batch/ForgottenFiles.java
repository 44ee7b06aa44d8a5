package paperbark.batch;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import paperbark.disk.Disk;

/**
 * What of a batch folder is no longer as its manifest says, because jobs were forgotten or an
 * earlier program's prints emptied: each file's new SHA-256, or empty text where it was deleted.
 */
public record ForgottenFiles(Map<String, String> files) {
    /** Its name in a batch folder. */
    public static final String NAME = "forgotten.json";

    private static final ObjectMapper JSON =
            new ObjectMapper()
                    .enable(SerializationFeature.INDENT_OUTPUT)
                    .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

    /** The list in a batch folder; an empty one where nothing was forgotten. */
    public static ForgottenFiles in(Path batch) throws IOException {
        Path file = batch.resolve(NAME);
        return Files.isRegularFile(file)
                ? JSON.readValue(Files.readAllBytes(file), ForgottenFiles.class)
                : new ForgottenFiles(Map.of());
    }

    /** Whether a file is as it was left when something was taken out of it. */
    public boolean allows(String name, String sha256) {
        return sha256.equals(files.get(name));
    }

    /** The list with more files. */
    public ForgottenFiles with(Map<String, String> more) {
        Map<String, String> all = new TreeMap<>(files);
        all.putAll(more);
        return new ForgottenFiles(all);
    }

    /** Writes the list into the batch folder. */
    public void into(Path batch) throws IOException {
        Disk.replace(
                batch.resolve(NAME),
                (JSON.writeValueAsString(this) + "\n").getBytes(StandardCharsets.UTF_8));
    }
}
