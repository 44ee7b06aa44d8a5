package paperbark.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
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
import paperbark.finding.Told;
import paperbark.value.SchemeName;

/** Tells the outcome of a run on the terminal. */
final class Report {
    // More of one code scroll the others off the screen: they are a line each, at the end.
    private static final int IN_FULL_OF_A_CODE = 20;

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
        List<Told> rest = new ArrayList<>();
        for (Told told : Told.of(outcome.findings())) {
            FindingCode code = told.first().code();
            if (told.first().severity() == Severity.NOTE && !explain) {
                hidden.merge(code, told.all().size(), Integer::sum);
            } else if (shown.merge(code, 1, Integer::sum) > IN_FULL_OF_A_CODE && !explain) {
                rest.add(told);
            } else {
                text.print(told);
            }
        }
        rest.forEach(text::printShort);
        if (!rest.isEmpty()) {
            out.println();
        }
        if (!hidden.isEmpty()) {
            String notes =
                    hidden.entrySet().stream()
                            .map(e -> e.getValue() + " " + e.getKey().code())
                            .collect(Collectors.joining(", "));
            out.println(
                    "Not shown here: "
                            + notes
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
                                    : "")
                            + (outcome.counts().leftOut() > 0
                                    ? ", rows left out as no jobs: " + outcome.counts().leftOut()
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
