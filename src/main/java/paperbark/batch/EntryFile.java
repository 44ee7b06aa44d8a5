package paperbark.batch;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import paperbark.disk.Hashes;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.LedgerId;

/**
 * An entry of a ledger in a file of its own, so that the ledger can be made anew from them.
 *
 * @param ledger which ledger
 * @param entry what was entered
 */
public record EntryFile(LedgerId ledger, EntryRecord entry) {
    /** Its name in a batch folder, where the manifest names it too. */
    public static final String NAME = "ledger.json";

    /**
     * A file in a batch folder that was lost and made again otherwise than it was; it holds the
     * hash of the manifest that the ledger knows.
     */
    public static final String MADE_AGAIN = "made-again.txt";

    private static final ObjectMapper JSON =
            new ObjectMapper()
                    .enable(SerializationFeature.INDENT_OUTPUT)
                    .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

    /** As indented JSON. */
    public byte[] toJson() throws IOException {
        return (JSON.writeValueAsString(this) + "\n").getBytes(StandardCharsets.UTF_8);
    }

    /**
     * The entry of a published batch; its own manifest vouches for it, or the list of what was
     * changed since because a job was forgotten.
     *
     * @param batch the batch folder
     * @return empty when there is none, or none as the manifest says
     */
    public static Optional<EntryFile> ofBatch(Path batch) throws IOException {
        Path file = batch.resolve(NAME);
        Path manifest = batch.resolve("manifest.json");
        if (!Files.isRegularFile(file) || !Files.isRegularFile(manifest)) {
            return Optional.empty();
        }
        try {
            JsonNode said = JSON.readTree(Files.readAllBytes(manifest)).path("outputs").path(NAME);
            String hash = Hashes.sha256(file);
            if (!said.path("sha256").asText().equals(hash)
                    && !ForgottenFiles.in(batch).allows(NAME, hash)) {
                return Optional.empty();
            }
        } catch (com.fasterxml.jackson.core.JacksonException notOurs) {
            return Optional.empty();
        }
        Path first = batch.resolve(MADE_AGAIN);
        String hash =
                Files.isRegularFile(first)
                        ? Files.readAllLines(first).get(0)
                        : Hashes.sha256(manifest);
        return read(file).map(f -> new EntryFile(f.ledger(), f.entry().withDetail(hash)));
    }

    /**
     * The entry in a file.
     *
     * @return empty when it cannot be understood
     */
    public static Optional<EntryFile> read(Path file) throws IOException {
        byte[] content = Files.readAllBytes(file);
        try {
            return Optional.of(JSON.readValue(content, EntryFile.class));
        } catch (com.fasterxml.jackson.core.JacksonException damaged) {
            return Optional.empty();
        }
    }
}
