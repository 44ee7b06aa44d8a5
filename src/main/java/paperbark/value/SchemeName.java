package paperbark.value;

/** A certificate scheme, by the law's own name. */
public enum SchemeName {
    /** Small-scale technology certificates, federal. */
    STC("STC", "small-scale technology certificate"),
    /** Victorian energy efficiency certificates. */
    VEEC("VEEC", "Victorian energy efficiency certificate");

    private final String word;
    private final String fullName;

    SchemeName(String word, String fullName) {
        this.word = word;
        this.fullName = fullName;
    }

    /** The abbreviation used in tables and on paper. */
    public String word() {
        return word;
    }

    /** The name in full, singular. */
    public String fullName() {
        return fullName;
    }
}
