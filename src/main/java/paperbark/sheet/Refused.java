package paperbark.sheet;

import java.util.List;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** The file as a whole is refused; never leaves this package. */
final class Refused extends Exception {
    private final transient List<Finding> findings;

    Refused(List<Finding> findings) {
        super(findings.get(0).fact());
        this.findings = List.copyOf(findings);
    }

    static Refused because(FindingCode code, Place place, String fact, String remedy) {
        return new Refused(List.of(Finding.of(code, place, fact, remedy)));
    }

    List<Finding> findings() {
        return findings;
    }
}
