package paperbark.answer;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Map;
import paperbark.batch.Outcome;
import paperbark.finding.Finding;
import paperbark.finding.Place;

/** The outcome of a run for other programs. */
public final class FindingsJson {
    private static final ObjectMapper JSON =
            new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private FindingsJson() {}

    /**
     * One JSON object: {@code ending}, {@code exitCode}, {@code published}, {@code jobs}, {@code
     * packs}, {@code heldJobs}, {@code certificates} by scheme and {@code findings}, each with
     * code, severity, place, job, value, fact, remedy, why, holds and rule.
     */
    public static String of(Outcome outcome) {
        ObjectNode root = object();
        root.put("ending", outcome.ending().name().toLowerCase(Locale.ROOT));
        root.put("exitCode", outcome.ending().exitCode());
        outcome.published().ifPresent(path -> root.put("published", path.toString()));
        root.put("jobs", outcome.counts().jobs());
        root.put("packs", outcome.counts().packs());
        root.put("heldJobs", outcome.counts().heldJobs());
        ObjectNode certificates = root.putObject("certificates");
        outcome.counts().certificates().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(e -> certificates.put(e.getKey().word(), e.getValue()));
        ArrayNode findings = root.putArray("findings");
        outcome.findings().forEach(f -> findings.add(node(f)));
        return text(root);
    }

    /** An empty object. */
    static ObjectNode object() {
        return JSON.createObjectNode();
    }

    /** The object as indented text. */
    static String text(ObjectNode root) {
        try {
            return JSON.writeValueAsString(root);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A finding. */
    static ObjectNode node(Finding finding) {
        ObjectNode node = JSON.createObjectNode();
        node.put("code", finding.code().code());
        node.put("severity", finding.severity().word());
        finding.job().ifPresent(job -> node.put("job", job));
        place(node, finding.place());
        node.put("value", finding.seenOnTerminal());
        node.put("fact", finding.fact());
        node.put("remedy", finding.remedy());
        node.put("why", finding.why());
        ArrayNode holds = node.putArray("holds");
        finding.holds().stream()
                .sorted()
                .forEach(c -> holds.add(c.toString().toLowerCase(Locale.ROOT)));
        finding.rule()
                .ifPresent(
                        rule ->
                                node.put(
                                        "rule",
                                        rule.table()
                                                + " row "
                                                + rule.row()
                                                + ": "
                                                + rule.inWords()));
        ArrayNode also = node.putArray("also");
        finding.also().forEach(p -> also.add(p.inWords()));
        return node;
    }

    private static void place(ObjectNode node, Place place) {
        node.put("file", place.file());
        node.put("sheet", place.sheetName());
        node.put("row", place.rowNumber());
        node.put("column", place.columnHeading());
        node.put("cell", place.cellAddress());
        if (place instanceof Place.InTemplate template) {
            node.put("line", template.line());
            node.put("character", template.column());
        }
    }
}
