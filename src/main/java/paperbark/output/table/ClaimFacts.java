package paperbark.output.table;

import java.util.List;
import paperbark.entitlement.Entitlement;
import paperbark.firm.Buyer;
import paperbark.offer.Standing;
import paperbark.output.CaseFile;
import paperbark.value.SchemeName;

/** What the tables say of a job's claim under a scheme. */
final class ClaimFacts {
    /** What there is to say of the tenth that a buyer pays on top. */
    static final String ON_TOP =
            "GST on top is paid against the tax invoice of an owner in business. It is no part of the"
                    + " firm's income. An owner who is paid has it with the payment. Where the owner took"
                    + " a discount instead, nothing that we read says who keeps it: it is booked to"
                    + " nobody here. Ask your tax adviser.";

    static final String NO_BUYER = "no buyer yet";

    private ClaimFacts() {}

    static String buyer(CaseFile file, SchemeName scheme) {
        return file.buyer(scheme).map(Buyer::name).orElse(NO_BUYER);
    }

    /** Certificates that count; a held claim has none. */
    static int certificates(CaseFile file, SchemeName scheme) {
        return file.claimable().stream()
                .filter(e -> e.scheme() == scheme)
                .findFirst()
                .flatMap(Entitlement::certificates)
                .orElse(0);
    }

    /** Whether a row of a table of claims tells of one that is held. */
    static boolean isHeld(Table table, List<TableCell> row) {
        return table.value(row, "standing").shown().equals(Standing.HELD.word());
    }

    /** Certificates of a scheme in the table of certificates, of held claims or of the others. */
    static long certificates(Table certificates, SchemeName scheme, boolean held) {
        return certificates
                .sum(
                        "certificates",
                        row ->
                                certificates.value(row, "scheme").shown().equals(scheme.word())
                                        && isHeld(certificates, row) == held)
                .longValueExact();
    }

    /** The same as a formula. */
    static String sumOfCertificates(SchemeName scheme, boolean held) {
        return "SUMIFS([Certificates:certificates],[Certificates:scheme],\"%s\",%s)"
                .formatted(scheme.word(), standing("Certificates", held));
    }

    /** The criterion for rows of held claims, or for all others. */
    static String standing(String table, boolean held) {
        return "[%s:standing],\"%s%s\"".formatted(table, held ? "" : "<>", Standing.HELD.word());
    }
}
