package paperbark.cli;

import java.io.PrintWriter;
import java.util.List;
import paperbark.finding.Finding;
import paperbark.finding.Told;

/**
 * Tells a finding on the terminal.
 *
 * @param out where to
 * @param why whether to say why it matters and which rule spoke
 */
record FindingText(PrintWriter out, boolean why) {

    /** Tells one, with an empty line behind it. */
    void print(Finding finding) {
        print(new Told(List.of(finding)));
    }

    /** Tells a cause with its rows and jobs, with an empty line behind it. */
    void print(Told told) {
        Finding finding = told.first();
        out.println(heading(told));
        out.println("  " + seen(finding) + told.fact());
        if (told.isFolded() && !told.jobs().isEmpty()) {
            out.println("  Jobs: " + String.join(", ", told.jobs()));
        }
        if (!finding.remedy().isEmpty()) {
            out.println("  Do: " + finding.remedy());
        }
        if (why) {
            out.println("  Why: " + finding.why());
            finding.rule().ifPresent(rule -> out.println("  Rule: " + rule.inWords()));
        }
        out.println();
    }

    /** Tells where and what on one line, without an empty line behind it. */
    void printShort(Told told) {
        out.println(heading(told) + " " + seen(told.first()) + told.fact());
    }

    private static String heading(Told told) {
        Finding finding = told.first();
        String about =
                told.isFolded()
                        ? ", " + told.rows().size() + " rows"
                        : finding.job().map(j -> " " + j).orElse("");
        return finding.severity().word()
                + about
                + ": "
                + told.where()
                + "  ["
                + finding.code().code()
                + "]";
    }

    private static String seen(Finding finding) {
        return finding.seenOnTerminal().isEmpty() ? "" : "\"" + finding.seen() + "\": ";
    }
}
