package paperbark.batch;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import paperbark.disk.Disk;
import paperbark.disk.Hashes;

/** The papers of a batch whose folder is lost, made once more from its register. */
public final class LostBatch {
    private static final ObjectMapper JSON =
            new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private LostBatch() {}

    /**
     * The folder that was made.
     *
     * @param folder the folder
     * @param asItWas whether all of it is as it was, to the byte
     */
    public record Made(Path folder, boolean asItWas) {}

    /**
     * Makes the folder. Nothing goes into the ledger of the request, which is to be as it was
     * before the batch.
     *
     * @param entry what the ledger has of the batch
     * @return empty when what came out is not that batch
     */
    public static Optional<Made> make(Request request, EntryFile entry) throws IOException {
        Outcome outcome = new Batch((what, done, of) -> {}).prepare(request);
        Optional<Path> folder =
                outcome.published()
                        .filter(f -> f.getFileName().toString().equals(entry.entry().name()));
        if (folder.isEmpty()) {
            return Optional.empty();
        }
        Path batch = folder.get();
        byte[] told = new EntryFile(entry.ledger(), entry.entry().withDetail("")).toJson();
        Disk.replace(batch.resolve(EntryFile.NAME), told);
        Path manifest = batch.resolve(Manifest.NAME);
        // Salts are made anew in each run, so the entry is the one thing that has to be put back.
        ObjectNode all = (ObjectNode) JSON.readTree(manifest.toFile());
        ObjectNode output = (ObjectNode) all.path("outputs").path(EntryFile.NAME);
        output.put("bytes", told.length).put("sha256", Hashes.sha256(told));
        byte[] content = (JSON.writeValueAsString(all) + "\n").getBytes(StandardCharsets.UTF_8);
        Disk.replace(manifest, content);
        String first = entry.entry().detailSha256();
        boolean asItWas = Hashes.sha256(content).equals(first);
        if (!asItWas) {
            Disk.replace(
                    batch.resolve(EntryFile.MADE_AGAIN),
                    (first
                                    + "\nThis batch was lost and made again with other tables, templates or"
                                    + " another version of the program than at first, or after a job of it"
                                    + " was forgotten. The line above is for the program.\n")
                            .getBytes(StandardCharsets.UTF_8));
        }
        return Optional.of(new Made(batch, asItWas));
    }
}
