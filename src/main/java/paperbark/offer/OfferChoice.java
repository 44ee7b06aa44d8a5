package paperbark.offer;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import paperbark.entitlement.Entitlement;
import paperbark.finding.Finding;
import paperbark.firm.Buyer;
import paperbark.firm.FirmTables;
import paperbark.firm.Offer;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.rules.Rulebook;

/**
 * Chooses the buyer for a claim: the one fixed in the register, otherwise by the firm's policy
 * among the offers in force on the day of the run that the claim can take.
 */
public final class OfferChoice {
    private final FirmTables tables;
    private final Rulebook rulebook;
    private final LocalDate today;

    /** A choice among the firm's offers in force on the given day. */
    public OfferChoice(FirmTables tables, Rulebook rulebook, LocalDate today) {
        this.tables = tables;
        this.rulebook = rulebook;
        this.today = today;
    }

    /**
     * What came of it.
     *
     * @param comparison all offers side by side; empty where there is no count or the buyer's cell
     *     could not be read
     * @param expected the money expected; empty where no offer can be taken
     * @param findings what was noticed
     */
    public record Chosen(
            Optional<Comparison> comparison, Optional<Expected> expected, List<Finding> findings) {

        private static final Chosen NOTHING =
                new Chosen(Optional.empty(), Optional.empty(), List.of());

        /** Keeps the findings from being changed. */
        public Chosen {
            findings = List.copyOf(findings);
        }
    }

    /** Chooses for one claim of a job. */
    public Chosen choose(Job job, Entitlement entitlement) {
        ClaimForOffer claimed =
                ClaimForOffer.of(
                        job, entitlement, tables.firm(), Gst.divisor(job, rulebook, today), today);
        Field buyerField = Field.of(entitlement.scheme(), ClaimFact.BUYER);
        if (claimed.certificates() == 0 || job.unread().contains(buyerField)) {
            return Chosen.NOTHING;
        }
        Comparison comparison = compare(claimed);
        if (comparison.chosen().isEmpty()) {
            Finding none = new NoOffer(claimed, buyerField).finding(comparison);
            return new Chosen(Optional.of(comparison), Optional.empty(), List.of(none));
        }
        Optional<Expected> expected =
                comparison
                        .chosen()
                        .flatMap(
                                taken ->
                                        tables.buyer(taken.offer().buyer())
                                                .map(
                                                        buyer ->
                                                                Expected.of(
                                                                        buyer,
                                                                        taken,
                                                                        comparison.runnerUp())));
        return new Chosen(Optional.of(comparison), expected, List.of());
    }

    private Comparison compare(ClaimForOffer claimed) {
        List<Offer> all =
                tables.offers().stream().filter(o -> o.scheme() == claimed.scheme()).toList();
        OfferCheck fit = new OfferCheck(claimed, tables);
        QuoteSheet sheet = new QuoteSheet(claimed, tables);
        List<LeftOut> leftOut = all.stream().flatMap(o -> fit.leftOut(o).stream()).toList();
        List<Quote> ranked =
                all.stream()
                        .filter(o -> fit.leftOut(o).isEmpty())
                        .map(sheet::of)
                        .sorted(Quote.BEST_FIRST)
                        .toList();
        Optional<Buyer> fixed = claimed.claim().buyer();
        OfferPick pick = OfferPick.of(ranked, fixed, tables.firm().money());
        return new Comparison(
                claimed.scheme(),
                claimed.certificates(),
                ranked,
                pick.chosen(),
                pick.runnerUp(),
                pick.how(),
                fixed.isPresent(),
                leftOut);
    }
}
