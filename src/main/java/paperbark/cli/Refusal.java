package paperbark.cli;

import java.util.List;
import paperbark.finding.Finding;

/** Says why a form cannot be used. */
final class Refusal {
    private Refusal() {}

    /** Prints the findings; true when there are any. */
    static boolean told(Main.World world, List<Finding> findings) {
        for (Finding finding : findings) {
            world.err()
                    .println(
                            finding.severity().word()
                                    + ": "
                                    + finding.where()
                                    + "  ["
                                    + finding.code().code()
                                    + "]");
            world.err().println("  " + finding.fact());
            world.err().println("  Do: " + finding.remedy());
        }
        return !findings.isEmpty();
    }
}
