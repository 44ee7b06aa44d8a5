package paperbark.batch;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;

/** The last days of each job that a published batch knew. */
public final class LastDays {
    private static final ObjectMapper JSON = new ObjectMapper();

    private LastDays() {}

    /**
     * By job number, what is to be done by when; nothing where the folder is gone or was made by an
     * earlier program.
     *
     * @throws IOException when the manifest cannot be read
     */
    public static Map<String, Map<String, LocalDate>> of(Path batchFolder) throws IOException {
        Map<String, Map<String, LocalDate>> all = new LinkedHashMap<>();
        Path manifest = batchFolder.resolve(Manifest.NAME);
        if (!Files.isRegularFile(manifest)) {
            return all;
        }
        for (JsonNode job : JSON.readTree(Files.readAllBytes(manifest)).path("jobs")) {
            Map<String, LocalDate> days = new LinkedHashMap<>();
            job.path("lastDays")
                    .properties()
                    .forEach(d -> days.put(d.getKey(), LocalDate.parse(d.getValue().asText())));
            all.put(job.path("job").asText(), days);
        }
        return all;
    }
}
