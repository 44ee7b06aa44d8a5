package paperbark.value;

import java.util.Locale;

/** A state or territory. */
public enum State {
    NSW("New South Wales"),
    ACT("Australian Capital Territory"),
    VIC("Victoria"),
    QLD("Queensland"),
    SA("South Australia"),
    WA("Western Australia"),
    TAS("Tasmania"),
    NT("Northern Territory");

    private final String fullName;

    State(String fullName) {
        this.fullName = fullName;
    }

    /** The name in full. */
    public String fullName() {
        return fullName;
    }

    /** Reads the usual abbreviation or the full name, in any case. */
    public static Parsed<State> parse(String text) {
        String upper = text.strip().toUpperCase(Locale.ROOT).replace(".", "");
        for (State state : values()) {
            if (state.name().equals(upper)
                    || state.fullName.toUpperCase(Locale.ROOT).equals(upper)) {
                return Parsed.ok(state);
            }
        }
        return Parsed.bad(
                "No state or territory has this name.",
                "Type one of NSW, ACT, VIC, QLD, SA, WA, TAS, NT.");
    }
}
