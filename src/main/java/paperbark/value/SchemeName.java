package paperbark.value;

import java.util.Locale;
import java.util.Optional;

/** A certificate scheme, by the law's own name. */
public enum SchemeName {
    /** Small-scale technology certificates, federal. */
    STC("STC", "small-scale technology certificate", Optional.empty()),
    /** Victorian energy efficiency certificates. */
    VEEC("VEEC", "Victorian energy efficiency certificate", Optional.of(State.VIC));

    private final String word;
    private final String fullName;
    private final Optional<State> state;

    SchemeName(String word, String fullName, Optional<State> state) {
        this.word = word;
        this.fullName = fullName;
        this.state = state;
    }

    /** The abbreviation used in tables and on paper. */
    public String word() {
        return word;
    }

    /** The abbreviation as it stands in names of columns and folders, e.g. {@code stc}. */
    public String key() {
        return word.toLowerCase(Locale.ROOT);
    }

    /** The name in full, singular. */
    public String fullName() {
        return fullName;
    }

    /** The state whose law it is; empty for the Commonwealth's. */
    public Optional<State> state() {
        return state;
    }
}
