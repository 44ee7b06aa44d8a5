package paperbark.rules;

/**
 * A table file that went into the rulebook.
 *
 * @param name file name below {@code rules/}, e.g. {@code stc/years.csv}
 * @param sha256 checksum of its bytes, 64 lower-case hexadecimal digits
 * @param firms whether it is the firm's own; otherwise it was shipped
 */
public record TableFile(String name, String sha256, boolean firms) {

    /** Enough digits of the checksum to tell one version of the table from another. */
    String version() {
        return sha256.substring(0, 8);
    }

    /** The name as findings and paper show it. */
    public String label() {
        return label(name, firms);
    }

    static String label(String name, boolean firms) {
        return firms ? name + " (the firm's)" : name;
    }
}
