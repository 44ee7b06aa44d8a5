package paperbark.answer;

import java.util.List;
import paperbark.offer.Comparison;

/**
 * The offers for the certificates of a scheme, each with its sum, and the one taken.
 *
 * @param scheme the scheme's word
 * @param steps the working, in order
 */
public record OffersWorking(String scheme, List<SchemeWorking.Line> steps) {

    /** Keeps the steps from being changed. */
    public OffersWorking {
        steps = List.copyOf(steps);
    }

    static OffersWorking of(Comparison comparison) {
        return new OffersWorking(
                comparison.scheme().word(),
                comparison.steps().stream()
                        .map(
                                s ->
                                        new SchemeWorking.Line(
                                                s.label(), s.working(), s.result(), s.rules()))
                        .toList());
    }
}
