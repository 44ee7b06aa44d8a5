package paperbark.job;

import paperbark.value.SchemeName;

/** What a register can say of the claim under a scheme, one column each. */
public enum ClaimFact {
    CLAIM("claim", "Claim %ss"),
    BUYER("buyer", "%s buyer"),
    ZONE("zone", "%s zone"),
    COUNT("count", "%s count"),
    BENEFIT("benefit", "%s benefit");

    private final String key;
    private final String label;

    ClaimFact(String key, String label) {
        this.key = key;
        this.label = label;
    }

    /** The name in the columns table, e.g. {@code stc-claim}. */
    String key(SchemeName scheme) {
        return scheme.key() + "-" + key;
    }

    /** The words for people. */
    String label(SchemeName scheme) {
        return label.formatted(scheme.word());
    }
}
