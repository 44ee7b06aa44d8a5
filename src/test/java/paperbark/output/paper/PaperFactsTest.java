package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import paperbark.batch.Cases;
import paperbark.batch.Inputs;
import paperbark.batch.Request;
import paperbark.batch.SampleWeek;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.job.Register;
import paperbark.output.CaseFile;
import paperbark.output.Correction;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.value.SchemeName;

/**
 * A paper whose facts did not change is not printed again, so the list of its facts must name all
 * that its templates print.
 */
class PaperFactsTest {
    /** A column, what it says, and what it says another time. */
    private static final String[][] COLUMNS = {
        {"Assignment signed on", "16/11/2026", "17/11/2026"},
        {"Corrects", "", "T-0 serial misread"},
        {"Installed on", "16/11/2026", "15/11/2026"},
        {"Owner", "Ada Amberwood", "Ada Amberwod"},
        {"Second owner", "Bea Boxthorn", "Bea Boxthrn"},
        {"Owner registered for GST", "no", "yes"},
        {"Postal street", "7 Kettle Row", "9 Kettle Row"},
        {"Postal suburb", "Ballarat", "Ballarat East"},
        {"Postal state", "VIC", "NSW"},
        {"Postal postcode", "3350", "3351"},
        {"Site street", "4 Teaspoon Lane", "6 Teaspoon Lane"},
        {"Site suburb", "Ballan", "Bungaree"},
        {"Site state", "VIC", "NSW"},
        {"Site postcode", "3342", "3352"},
        {"Position on site", "roof", "wall"},
        {"Business premises", "no", "yes"},
        {"Maker", "", "other"},
        {"Model", "", "other"},
        {"Tank serial", "2610040004512101", "2610040004512118"},
        {"Collector serials", "C-101; C-102", "C-101; C-103"},
        {"Heat pump serial", "HP-771", "HP-772"},
        {"Litres", "270", "271"},
        {"Tubes or panels", "22", "30"},
        {"New", "yes", "no"},
        {"Complete system", "yes", "no"},
        {"Large-system declarations on", "16/11/2026", "15/11/2026"},
        {"Plumber", "Wanda Wattle", "Perry Paperbark"},
        {"Electrician", "Tilly Teatree", "Mina Mulga"},
        {"Seller", "Mudlark Merchants", "Saltmarsh Hot Water Pty Ltd"},
        {"Plumbing certificate", "DEMO-1", "DEMO-2"},
        {"Plumbing certificate date", "17/11/2026", "18/11/2026"},
        {"Electrical certificate", "DEMO-E1", "DEMO-E2"},
        {"Electrical certificate date", "16/11/2026", "17/11/2026"},
        {"Old heater", "gas storage", "electric storage"},
        {"Old maker", "Boobook", "Bowerbird"},
        {"Old model", "BG 135", "BG 136"},
        {"Old serial", "OS-1", "OS-2"},
        {"Old heater disabled how", "drained", "holed"},
        {"Old heater disposal", "scrap yard", "recycler"},
        {"Old heater removed on", "16/11/2026", "15/11/2026"},
        {"Claim STCs", "yes", "no"},
        {"STC buyer", "Kestrel Certificates", "Pipit and Wren"},
        {"STC benefit", "504.00", "505.00"},
        {"Claim VEECs", "yes", "no"},
        {"VEEC buyer", "Kestrel Certificates", "Pipit and Wren"},
        {"VEEC benefit", "300.00", "301.00"},
        {"Full price", "4620.00", "4621.00"},
        {"Co-payment", "350.00", "351.00"},
        {"Benefit form", "payment to the owner", "discount on the price"},
    };

    private static final Map<PaperKind, List<String>> VARIANTS =
            Map.of(
                    PaperKind.WARRANTY,
                    List.of("default", "ternlight"),
                    PaperKind.of(SchemeName.STC),
                    List.of("default", "kestrel"),
                    PaperKind.of(SchemeName.VEEC),
                    List.of("default"),
                    PaperKind.DECLARATIONS,
                    List.of("default"),
                    PaperKind.BENEFIT,
                    List.of("default"),
                    PaperKind.OLD_HEATER,
                    List.of("default"),
                    PaperKind.HANDOVER,
                    List.of("default"));

    private static final TemplateEngine ENGINE =
            new TemplateEngine(Optional.of(Path.of("templates")));
    private static final Logo NO_LOGO = Logo.of(Optional.empty(), RunLimit.USUAL);

    private static Job job(int changed, String maker, String model, String other) {
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < COLUMNS.length; i++) {
            String cell = COLUMNS[i][i == changed ? 2 : 1];
            cells.add(
                    switch (COLUMNS[i][0]) {
                        case "Maker" -> cell.isEmpty() ? maker : "Another Maker";
                        case "Model" -> cell.isEmpty() ? model : other;
                        case "Heat pump serial" -> maker.equals("Dunlin") ? cell : "";
                        default -> cell;
                    });
        }
        String heads = Stream.of(COLUMNS).map(c -> c[0]).collect(Collectors.joining(","));
        return Register.job(heads + "\n" + String.join(",", cells) + "\n");
    }

    /** The text of each paper. The writer is the same for all, since it reads the case once. */
    private static Map<Paper, String> texts(CaseFile file) {
        PaperWriter writer = new PaperWriter(ENGINE, ENGINE, file, NO_LOGO, Optional.empty());
        Map<Paper, String> texts = new HashMap<>();
        VARIANTS.forEach(
                (kind, variants) ->
                        variants.forEach(
                                variant -> {
                                    Paper paper = new Paper(kind, variant, List.of());
                                    texts.put(paper, text(writer, file, paper));
                                }));
        return texts;
    }

    private static String text(PaperWriter writer, CaseFile file, Paper paper) {
        Optional<Correction> correction =
                file.job()
                        .corrects()
                        .filter(c -> paper.kind().scheme().isPresent())
                        .map(c -> new Correction(List.of(), Optional.of(c)));
        return writer.write(paper.after(Optional.empty(), Optional.empty(), correction))
                .content()
                .getDocumentElement()
                .getTextContent();
    }

    @Test
    void whatChangesThePaperIsAmongItsFactsOrFigures() throws Exception {
        Request request = SampleWeek.request(SampleWeek.CSV, Path.of("target"));
        Inputs inputs = Inputs.read(request).result().orElseThrow();
        Cases cases = new Cases(inputs, "facts", request);
        List<String> unlisted = new ArrayList<>();
        Map<PaperKind, Set<JobFact>> seen = new HashMap<>();
        for (String[] heater :
                List.of(
                        new String[] {"Dunlin", "D270-A", "D430-C"},
                        new String[] {"Ternlight", "TL-F8-800", "TL-E30-315"})) {
            CaseFile before = cases.of(job(-1, heater[0], heater[1], heater[2]), "T-1.pdf");
            Map<Paper, String> then = texts(before);
            for (int i = 0; i < COLUMNS.length; i++) {
                CaseFile after = cases.of(job(i, heater[0], heater[1], heater[2]), "T-1.pdf");
                Set<JobFact> changed =
                        JobFact.ALL.stream()
                                .filter(f -> !f.in(before.job()).equals(f.in(after.job())))
                                .collect(Collectors.toSet());
                Map<Paper, String> now = texts(after);
                then.forEach(
                        (paper, text) -> {
                            if (!text.equals(now.get(paper))) {
                                PaperKind kind = paper.kind();
                                seen.computeIfAbsent(kind, k -> new HashSet<>()).addAll(changed);
                                if (changed.stream().noneMatch(kind.facts()::contains)
                                        && paper.says(before).equals(paper.says(after))) {
                                    unlisted.add(kind + "/" + paper.variant() + ": " + changed);
                                }
                            }
                        });
            }
        }
        assertThat(unlisted).isEmpty();
        assertThat(neverPrinted(seen)).isEmpty();
    }

    /** The handover may be printed once more than it must: its statement of benefit lies apart. */
    private static Set<String> neverPrinted(Map<PaperKind, Set<JobFact>> seen) {
        Set<String> never = new TreeSet<>();
        VARIANTS.keySet().stream()
                .filter(kind -> kind != PaperKind.HANDOVER)
                .forEach(
                        kind ->
                                kind.facts().stream()
                                        .filter(f -> !seen.get(kind).contains(f))
                                        // The register's own number stands only where the rules
                                        // give none, or the firm says so.
                                        .filter(f -> !f.toString().endsWith("-count"))
                                        .forEach(f -> never.add(kind + ": " + f)));
        return never;
    }
}
