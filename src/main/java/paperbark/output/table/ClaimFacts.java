package paperbark.output.table;

import paperbark.entitlement.Entitlement;
import paperbark.firm.Buyer;
import paperbark.offer.Expected;
import paperbark.output.CaseFile;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.value.SchemeName;

/** What the tables say of a job's claim under a scheme. */
final class ClaimFacts {
    static final String NO_BUYER = "no buyer yet";

    private ClaimFacts() {}

    static boolean isHeld(CaseFile file, SchemeName scheme) {
        PaperKind kind = PaperKind.of(scheme);
        return file.papers().stream().anyMatch(p -> p.kind() == kind && p.isBlocked())
                || file.papers().stream().allMatch(Paper::isBlocked);
    }

    static String buyer(CaseFile file, SchemeName scheme) {
        return file.expected(scheme)
                .map(Expected::buyer)
                .or(() -> file.job().claim(scheme).buyer())
                .map(Buyer::name)
                .orElse(NO_BUYER);
    }

    static int certificates(CaseFile file, SchemeName scheme) {
        return file.entitlements().of(scheme).flatMap(Entitlement::certificates).orElse(0);
    }
}
