package paperbark.batch;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.disk.Hashes;
import paperbark.disk.Staging;
import paperbark.finding.RuleRef;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.Deadline;
import paperbark.rules.Rulebook;
import paperbark.rules.TableFile;

/**
 * What went into a batch and what came out, so that anyone can prove later which rules and
 * templates made a paper. Nothing in it depends on the time of the run but the day.
 *
 * @param batch name of the batch
 * @param sources what went in
 * @param counts jobs, packs and certificates
 * @param findings how many of each severity
 * @param jobs what each job earned
 * @param templates every template used, shipped or the firm's
 * @param rules the rule rows used
 * @param outputs every other file of the batch folder with its size and SHA-256
 */
record Manifest(
        String batch,
        Sources sources,
        Counts counts,
        Map<String, Long> findings,
        List<JobLine> jobs,
        Map<String, String> templates,
        List<RuleRef> rules,
        Map<String, Staging.Written> outputs) {
    static final String NAME = "manifest.json";
    private static final ObjectMapper JSON =
            new ObjectMapper()
                    .enable(SerializationFeature.INDENT_OUTPUT)
                    .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

    /**
     * What went in, by file name and SHA-256.
     *
     * @param program version of Paperbark
     * @param preparedOn day of the run, ISO form
     * @param siteSheets whether installed jobs got a site sheet too
     * @param csv whether the workbook's sheets were written as CSV files too
     * @param byCrew whether each crew got a print run of its own for each day
     * @param fillable whether live site sheets were asked for besides what the firm's table says
     * @param register the register
     * @param tables the firm's tables
     * @param templates the firm's own templates
     * @param rules every rule table, shipped or the firm's
     */
    record Sources(
            String program,
            String preparedOn,
            boolean siteSheets,
            boolean csv,
            boolean byCrew,
            boolean fillable,
            Map<String, String> register,
            Map<String, String> tables,
            Map<String, String> templates,
            Map<String, String> rules) {

        /** The sources of a request. */
        static Sources of(Request request, Rulebook rulebook) throws IOException {
            return new Sources(
                    request.run().version(),
                    request.run().today().toString(),
                    request.extras().siteSheets(),
                    request.extras().csv(),
                    request.extras().byCrew(),
                    request.extras().fillable(),
                    Hashes.ofAll(request.register().file()),
                    Hashes.ofAll(request.firm().tables()),
                    request.firm().templates().isPresent()
                            ? Hashes.ofAll(request.firm().templates().get())
                            : Map.of(),
                    rulebook.tables().stream()
                            .collect(
                                    Collectors.toMap(
                                            TableFile::label,
                                            TableFile::sha256,
                                            (a, b) -> a,
                                            TreeMap::new)));
        }
    }

    /**
     * What one job earned, and what of it is still to be done by when.
     *
     * @param lastDays ISO days by what is to be done: compliance papers not on file, and closing
     *     dates
     */
    record JobLine(
            String job,
            String pack,
            boolean held,
            Map<String, Integer> certificates,
            Map<String, String> lastDays) {

        private static JobLine of(CaseFile file) {
            Map<String, Integer> certificates =
                    file.claimable().stream()
                            .filter(e -> e.certificates().isPresent())
                            .collect(
                                    Collectors.toMap(
                                            e -> e.scheme().word(),
                                            e -> e.certificates().orElse(0),
                                            Integer::sum,
                                            TreeMap::new));
            return new JobLine(
                    file.job().reference(),
                    "packs/" + file.packFile(),
                    file.isHeld(),
                    certificates,
                    daysOf(file));
        }
    }

    private static Map<String, String> daysOf(CaseFile file) {
        return file.job().isInstalled()
                ? file.deadlines().stream()
                        .collect(
                                Collectors.toMap(
                                        Deadline::what,
                                        d -> d.lastDay().toString(),
                                        (a, b) -> a,
                                        TreeMap::new))
                : Map.of();
    }

    /** The manifest of a batch whose other files are written. */
    static Manifest of(
            Sources sources,
            BatchView view,
            Map<String, String> templates,
            Map<String, Staging.Written> outputs) {
        Map<String, Long> findings =
                view.findings().stream()
                        .collect(
                                Collectors.groupingBy(
                                        f -> f.severity().word(),
                                        TreeMap::new,
                                        Collectors.counting()));
        List<JobLine> jobs = view.cases().stream().map(JobLine::of).toList();
        return new Manifest(
                view.info().id(),
                sources,
                Counts.of(view, view.cases().size()),
                findings,
                jobs,
                templates,
                view.rules(),
                new TreeMap<>(outputs));
    }

    /** Writes it as indented JSON with a final newline. */
    void write(Staging staging) throws IOException {
        staging.write(
                NAME, (JSON.writeValueAsString(this) + "\n").getBytes(StandardCharsets.UTF_8));
    }

    /** Whether the file is the manifest of a batch made from exactly these sources. */
    static boolean isOf(Path file, Sources sources) {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try {
            JsonNode published = JSON.readTree(Files.readAllBytes(file));
            return JSON.valueToTree(sources).equals(published.get("sources"))
                    && isWhole(file.getParent(), published.path("outputs"));
        } catch (IOException e) {
            // Not a manifest of ours, so another name is taken.
            return false;
        }
    }

    /**
     * Whether the file is the manifest of a batch that these sources would only repeat: the same
     * register, tables, templates and rules, whatever the day and the register's name.
     */
    static boolean repeats(Path file, Sources sources) {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try {
            JsonNode before = JSON.readTree(Files.readAllBytes(file)).path("sources");
            JsonNode now = JSON.valueToTree(sources);
            return Stream.of(
                                    "program",
                                    "siteSheets",
                                    "byCrew",
                                    "fillable",
                                    "tables",
                                    "templates",
                                    "rules")
                            .allMatch(part -> now.path(part).equals(before.path(part)))
                    && hashes(now.path("register")).equals(hashes(before.path("register")));
        } catch (IOException e) {
            // Not a manifest of ours.
            return false;
        }
    }

    private static List<String> hashes(JsonNode files) {
        List<String> hashes = new ArrayList<>();
        files.forEach(hash -> hashes.add(hash.asText()));
        return hashes;
    }

    /** Whether every file that the manifest names still lies beside it, in its size. */
    private static boolean isWhole(Path batch, JsonNode outputs) throws IOException {
        for (Iterator<String> names = outputs.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            Path output = batch.resolve(name);
            if (!Files.isRegularFile(output)
                    || Files.size(output) != outputs.get(name).path("bytes").asLong()) {
                return false;
            }
        }
        return outputs.size() > 0;
    }
}
