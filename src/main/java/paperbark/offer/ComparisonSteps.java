package paperbark.offer;

import java.util.ArrayList;
import java.util.List;
import paperbark.entitlement.Step;
import paperbark.value.Money;

/** Writes a comparison of offers down so that a clerk can redo it by hand. */
final class ComparisonSteps {
    private ComparisonSteps() {}

    static List<Step> of(Comparison comparison) {
        List<Step> steps = new ArrayList<>();
        for (Quote quote : comparison.ranked()) {
            steps.add(
                    new Step(
                            quote.offer().buyer(),
                            sum(quote),
                            quote.worth() + " in " + quote.days() + " days",
                            List.of()));
        }
        for (LeftOut out : comparison.leftOut()) {
            if (out.inForce()) {
                steps.add(new Step(out.offer().buyer(), out.reason(), "left out", List.of()));
            }
        }
        comparison
                .chosen()
                .ifPresent(
                        chosen ->
                                steps.add(
                                        new Step(
                                                "Offer taken",
                                                reason(comparison),
                                                chosen.offer().buyer(),
                                                List.of())));
        return steps;
    }

    /** The sum from the price to what the offer is worth, with its numbers. */
    static String sum(Quote quote) {
        Split split = quote.split();
        StringBuilder sum =
                new StringBuilder(
                        "%d x %s = %s"
                                .formatted(
                                        quote.certificates(),
                                        quote.offer().pricePerCertificate().shown(),
                                        quote.gross()));
        add(sum, " - %s fee", quote.fee());
        add(sum, " - %s to the owner", split.toOwner().minus(split.ofTop()));
        add(sum, " - %s GST on what exceeds the discount", split.firmGst());
        add(sum, " - %s for waiting", quote.waiting());
        sum.append(" = ").append(quote.worth()).append(" to the firm");
        add(sum, "; %s GST on top is not the firm's: ask your tax adviser", quote.gst());
        return sum.toString();
    }

    private static void add(StringBuilder sum, String words, Money amount) {
        if (!amount.isZero()) {
            sum.append(words.formatted(amount));
        }
    }

    private static String reason(Comparison comparison) {
        String cost =
                comparison.costOfChoice().isZero()
                        ? ""
                        : "; the best offer is worth " + comparison.costOfChoice() + " more";
        String next =
                comparison
                        .runnerUp()
                        .map(
                                r ->
                                        "; next "
                                                + r.offer().buyer()
                                                + ", difference "
                                                + comparison.difference().orElseThrow())
                        .orElse("");
        return comparison.how() + next + cost;
    }
}
