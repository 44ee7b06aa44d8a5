package paperbark.sheet;

import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;

/**
 * What came of reading something: the result where there is one, and what was noticed.
 *
 * @param <T> the kind of result
 * @param result empty when a stop among the findings says why
 * @param findings in the order in which they were met
 */
public record Reading<T>(Optional<T> result, List<Finding> findings) {

    /** Keeps the findings from being changed. */
    public Reading {
        findings = List.copyOf(findings);
    }

    /** A result with what was noticed on the way. */
    public static <T> Reading<T> of(T result, List<Finding> findings) {
        return new Reading<>(Optional.of(result), findings);
    }

    /** No result, for the reasons given. */
    public static <T> Reading<T> refused(List<Finding> findings) {
        return new Reading<>(Optional.empty(), findings);
    }
}
