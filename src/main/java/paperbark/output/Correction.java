package paperbark.output;

import java.util.List;
import java.util.Optional;

/**
 * What an assignment says of claims that were made before for the same heater.
 *
 * @param claims those that the office knows of, each in words
 * @param reason what the register says that is corrected
 */
public record Correction(List<String> claims, Optional<String> reason) {
    /** Keeps the list from being changed. */
    public Correction {
        claims = List.copyOf(claims);
    }

    /** All of it in one line. */
    public String line() {
        return String.join("; ", claims)
                + (claims.isEmpty() || reason.isEmpty() ? "" : "; ")
                + reason.orElse("");
    }
}
