package paperbark.cli;

import java.io.PrintWriter;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import paperbark.answer.Json;
import paperbark.answer.OutcomeLines;
import paperbark.batch.Ending;
import paperbark.batch.Outcome;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.value.SchemeName;

/** Tells the outcome of a run on the terminal. */
final class Report {
    // More of one code scroll the others off the screen; the marked-up register lists them all.
    private static final int SHOWN_OF_A_CODE = 20;

    private final PrintWriter out;
    private final boolean json;
    private final boolean explain;

    /** Prints JSON, or words that may explain themselves. */
    Report(PrintWriter out, boolean json, boolean explain) {
        this.out = out;
        this.json = json;
        this.explain = explain;
    }

    void print(Outcome outcome) {
        if (json) {
            out.println(Json.of(OutcomeLines.of(outcome)));
            return;
        }
        findings(outcome);
        summary(outcome);
    }

    private void findings(Outcome outcome) {
        FindingText text = new FindingText(out, explain);
        Map<FindingCode, Integer> shown = new EnumMap<>(FindingCode.class);
        Map<FindingCode, Integer> hidden = new EnumMap<>(FindingCode.class);
        for (Finding finding : outcome.findings()) {
            boolean quiet = finding.severity() == Severity.NOTE && !explain;
            if (quiet
                    || (shown.merge(finding.code(), 1, Integer::sum) > SHOWN_OF_A_CODE
                            && !explain)) {
                hidden.merge(finding.code(), 1, Integer::sum);
            } else {
                text.print(finding);
            }
        }
        if (!hidden.isEmpty()) {
            String rest =
                    hidden.entrySet().stream()
                            .map(e -> e.getValue() + " " + e.getKey().code())
                            .collect(Collectors.joining(", "));
            out.println(
                    "Not shown here: "
                            + rest
                            + (outcome.published().isPresent()
                                    ? ". Use --explain, or look into the marked-up register."
                                    : ". Use --explain to see them."));
            out.println();
        }
    }

    private void summary(Outcome outcome) {
        out.println(outcome.ending().sentence());
        if (outcome.ending() == Ending.DONE || outcome.ending() == Ending.HELD) {
            out.println(
                    "Jobs:         "
                            + outcome.counts().jobs()
                            + ", held: "
                            + outcome.counts().heldJobs()
                            + (outcome.counts().cancelled() > 0
                                    ? ", cancelled: " + outcome.counts().cancelled()
                                    : ""));
            if (outcome.counts().packs() > 0) {
                out.println("Packs:        " + outcome.counts().packs());
            }
            out.println("Certificates: " + certificates(outcome.counts().certificates()));
            if (!outcome.counts().heldCertificates().isEmpty()) {
                out.println("Held back:    " + certificates(outcome.counts().heldCertificates()));
            }
        }
        if (outcome.ending() != Ending.ALREADY) {
            out.println("Findings:     " + bySeverity(outcome.findings()));
        }
        outcome.published().ifPresent(path -> out.println("Result:       " + path));
    }

    private static String certificates(Map<SchemeName, Integer> counts) {
        String all =
                counts.entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(
                                e ->
                                        e.getValue()
                                                + " "
                                                + e.getKey().word()
                                                + (e.getValue() == 1 ? "" : "s"))
                        .collect(Collectors.joining(", "));
        return all.isEmpty() ? "none" : all;
    }

    private static String bySeverity(List<Finding> findings) {
        Map<Severity, Integer> counts = new HashMap<>();
        findings.forEach(f -> counts.merge(f.severity(), 1, Integer::sum));
        return List.of(Severity.STOP, Severity.CHECK, Severity.NOTE).stream()
                .map(s -> counts.getOrDefault(s, 0) + " " + s.word())
                .collect(Collectors.joining(", "));
    }
}
