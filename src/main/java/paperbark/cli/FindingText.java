package paperbark.cli;

import java.io.PrintWriter;
import paperbark.finding.Finding;

/**
 * Tells a finding on the terminal.
 *
 * @param out where to
 * @param why whether to say why it matters and which rule spoke
 */
record FindingText(PrintWriter out, boolean why) {

    /** Tells one, with an empty line behind it. */
    void print(Finding finding) {
        String job = finding.job().map(j -> " " + j).orElse("");
        out.println(
                finding.severity().word()
                        + job
                        + ": "
                        + finding.where()
                        + "  ["
                        + finding.code().code()
                        + "]");
        String seen = finding.seenOnTerminal().isEmpty() ? "" : "\"" + finding.seen() + "\": ";
        out.println("  " + seen + finding.fact());
        if (!finding.remedy().isEmpty()) {
            out.println("  Do: " + finding.remedy());
        }
        if (why) {
            out.println("  Why: " + finding.why());
            finding.rule().ifPresent(rule -> out.println("  Rule: " + rule.inWords()));
        }
        out.println();
    }
}
