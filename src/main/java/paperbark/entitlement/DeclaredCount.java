package paperbark.entitlement;

import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.job.Claim;
import paperbark.job.Field;

/**
 * Compares the number of certificates in the register with the number worked out.
 *
 * @param claim what the register claims
 * @param field the column of the number
 * @param word the scheme's certificates, singular, e.g. {@code STC}
 */
record DeclaredCount(Claim claim, Field field, String word) {

    /**
     * Reports a difference.
     *
     * @param count the number worked out
     * @param highest the highest number that another reading of the rules would give; the same as
     *     {@code count} where the rules are clear
     */
    void compare(int count, int highest, Working working) {
        Optional<Integer> declared = claim.declaredCount();
        if (declared.isEmpty()) {
            if (highest > count) {
                mayBeHigher(count, highest, working);
            }
            return;
        }
        int said = declared.get();
        if (said > highest) {
            working.report(
                    working.at(
                                    field,
                                    FindingCode.COUNT_TOO_HIGH,
                                    "The register claims %d %ss; the rules give %d."
                                            .formatted(said, word, count),
                                    "Claim %d, or correct the facts that the number comes from."
                                            .formatted(count))
                            .seeing(Integer.toString(said)));
        } else if (said > count) {
            mayBeHigher(count, said, working);
        } else if (said < count) {
            working.report(
                    working.at(
                                    field,
                                    FindingCode.COUNT_TOO_LOW,
                                    "The register claims %d %ss; the rules give %d."
                                            .formatted(said, word, count),
                                    "Find out which number is right; \"lower count\" in the firm's table says which one is claimed.")
                            .seeing(Integer.toString(said)));
        }
    }

    private void mayBeHigher(int count, int higher, Working working) {
        working.report(
                working.at(
                                field,
                                FindingCode.COUNT_MAY_BE_HIGHER,
                                "The rules give %d %ss, or %d if the official method rounds only once."
                                        .formatted(count, word, higher),
                                "Claim %d, or look the number up in the scheme's own calculator."
                                        .formatted(count))
                        .seeing(claim.declaredCount().map(String::valueOf).orElse("")));
    }
}
