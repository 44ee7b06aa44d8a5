package paperbark.job;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Numbers and days of the certificates that licensed people issued in the state's own systems.
 *
 * @param plumbingNumber number of the plumbing compliance certificate
 * @param plumbingOn its day
 * @param electricalNumber number of the electrical safety certificate
 * @param electricalOn its day
 */
public record Compliance(
        Optional<String> plumbingNumber,
        Optional<LocalDate> plumbingOn,
        Optional<String> electricalNumber,
        Optional<LocalDate> electricalOn) {}
