package paperbark.batch;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.disk.Disk;
import paperbark.output.BatchInfo;
import paperbark.output.paper.PrintRun;
import paperbark.output.paper.RunPack;
import paperbark.value.Nearest;

/** A print run of some jobs out of a batch that was published. */
public final class Reprint {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path batch;
    private final JsonNode manifest;
    private final Map<String, Path> packs = new LinkedHashMap<>();

    private Reprint(Path batch, JsonNode manifest) {
        this.batch = batch;
        this.manifest = manifest;
        for (JsonNode job : manifest.path("jobs")) {
            packs.put(job.path("job").asText(), batch.resolve(job.path("pack").asText()));
        }
    }

    /**
     * Opens a published batch.
     *
     * @return empty where the folder is none
     * @throws IOException when its manifest cannot be read
     */
    public static Optional<Reprint> of(Path batch) throws IOException {
        Path manifest = batch.resolve(Manifest.NAME);
        return Files.isRegularFile(manifest)
                ? Optional.of(new Reprint(batch, JSON.readTree(Files.readAllBytes(manifest))))
                : Optional.empty();
    }

    /** Whether the batch has the job and its pack still lies in it. */
    public boolean has(String job) {
        return packs.containsKey(job) && Files.isRegularFile(packs.get(job));
    }

    /** The job whose number looks most like this one. */
    public Optional<String> nearest(String job) {
        return Nearest.to(job, packs.keySet().stream().filter(this::has).toList());
    }

    /**
     * Writes the run.
     *
     * @param jobs that the batch has, in the order in which they are printed
     * @throws IOException when a pack cannot be read or the run not be written
     */
    public void write(List<String> jobs, Path file) throws IOException {
        List<RunPack> run = new ArrayList<>();
        for (String job : jobs) {
            run.add(
                    new RunPack(
                            packs.get(job),
                            job,
                            "Job " + (run.size() + 1) + " of " + jobs.size(),
                            "Jobs"));
        }
        JsonNode sources = manifest.path("sources");
        BatchInfo info =
                new BatchInfo(
                        manifest.path("batch").asText(batch.getFileName().toString()),
                        "",
                        LocalDate.parse(sources.path("preparedOn").asText()),
                        sources.path("program").asText());
        Disk.write(file, out -> PrintRun.write(run, Optional.empty(), Optional.empty(), info, out));
    }
}
