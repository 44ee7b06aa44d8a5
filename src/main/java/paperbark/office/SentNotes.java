package paperbark.office;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import paperbark.disk.Disk;

/**
 * Remembers which drafts were made of what, so that one that a person took away, because it was
 * sent, comes back only when something in it changed. Several drafts may be noted at once.
 */
final class SentNotes {
    private static final String NAME = ".drafts.json";
    private static final ObjectMapper JSON =
            new ObjectMapper()
                    .enable(SerializationFeature.INDENT_OUTPUT)
                    .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

    private final Path file;
    private final Map<String, String> keys;

    private SentNotes(Path file, Map<String, String> keys) {
        this.file = file;
        this.keys = keys;
    }

    /** Those of an office; none where they cannot be understood. */
    static SentNotes of(Office office) throws IOException {
        Path file = office.send().resolve(NAME);
        Map<String, String> keys = new TreeMap<>();
        if (Files.isRegularFile(file)) {
            try {
                keys.putAll(
                        JSON.readValue(
                                Files.readAllBytes(file),
                                new TypeReference<Map<String, String>>() {}));
            } catch (JacksonException damaged) {
                // Then every draft is made once more, which harms nobody.
                keys.clear();
            }
        }
        return new SentNotes(file, keys);
    }

    /** The drafts that were made, by their paths. */
    Set<String> paths() {
        return Set.copyOf(keys.keySet());
    }

    /** Whether nothing was touched since the draft was made or compared, which is cheap to tell. */
    synchronized boolean hasStamp(String path, String stamp) {
        return keys.getOrDefault(path, "").startsWith(stamp + " ");
    }

    /** Whether the draft was made of exactly this. */
    synchronized boolean hasKey(String path, String key) {
        return keys.getOrDefault(path, "").endsWith(" " + key);
    }

    /** Notes what a draft was made of. */
    synchronized void put(String path, String stamp, String key) {
        keys.put(path, stamp + " " + key);
    }

    /** Forgets all but these. */
    void keep(Set<String> paths) {
        keys.keySet().retainAll(paths);
    }

    /** Forgets one, so that it is made again if it is due. */
    synchronized void drop(String path) {
        keys.remove(path);
    }

    /** Writes them down. */
    void write() throws IOException {
        byte[] content = JSON.writeValueAsBytes(keys);
        if (!Files.exists(file) || !Arrays.equals(Files.readAllBytes(file), content)) {
            Disk.replace(file, content);
        }
    }
}
