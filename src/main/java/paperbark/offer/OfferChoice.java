package paperbark.offer;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.entitlement.Entitlement;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Buyer;
import paperbark.firm.FirmTables;
import paperbark.firm.Offer;
import paperbark.firm.SchemeName;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.value.Days;
import paperbark.value.Money;
import paperbark.value.Rounding;

/**
 * Chooses the buyer for a claim: the one fixed in the register, otherwise the offer in force on the
 * day of the run that brings most after its fee; of equals the one that pays sooner.
 */
public final class OfferChoice {
    private final FirmTables tables;
    private final LocalDate today;

    /** A choice among the firm's offers in force on the given day. */
    public OfferChoice(FirmTables tables, LocalDate today) {
        this.tables = tables;
        this.today = today;
    }

    /**
     * What came of it.
     *
     * @param expected the money expected; empty where no offer can be taken or there is no count
     * @param findings what was noticed
     */
    public record Chosen(Optional<Expected> expected, List<Finding> findings) {

        /** Keeps the findings from being changed. */
        public Chosen {
            findings = List.copyOf(findings);
        }
    }

    /** Chooses for one claim of a job. */
    public Chosen choose(Job job, Entitlement entitlement) {
        int count = entitlement.certificates().orElse(0);
        SchemeName scheme = entitlement.scheme();
        Field buyerField =
                switch (scheme) {
                    case STC -> Field.STC_BUYER;
                    case VEEC -> Field.VEEC_BUYER;
                };
        if (count == 0 || job.unread().contains(buyerField)) {
            return new Chosen(Optional.empty(), List.of());
        }
        List<Offer> current =
                tables.offers().stream()
                        .filter(o -> o.scheme() == scheme && o.inForce().contains(today))
                        .toList();
        List<Ranked> ranked =
                current.stream()
                        .filter(o -> meets(o, count))
                        .map(o -> new Ranked(o, count))
                        .sorted(Ranked.BEST_FIRST)
                        .toList();
        Optional<Buyer> fixed = job.claim(scheme).buyer();
        Optional<Ranked> taken =
                fixed.isPresent()
                        ? ranked.stream().filter(r -> sameBuyer(r.offer(), fixed.get())).findFirst()
                        : ranked.stream()
                                .filter(r -> tables.buyer(r.offer().buyer()).isPresent())
                                .findFirst();
        List<Finding> findings = new ArrayList<>();
        if (taken.isEmpty()) {
            findings.add(none(job, scheme, buyerField, current, count));
            return new Chosen(Optional.empty(), findings);
        }
        Optional<Ranked> runnerUp =
                ranked.stream()
                        .filter(r -> !r.offer().buyer().equals(taken.get().offer().buyer()))
                        .findFirst();
        return new Chosen(expected(job, entitlement, taken.get(), runnerUp), findings);
    }

    private Optional<Expected> expected(
            Job job, Entitlement entitlement, Ranked taken, Optional<Ranked> runnerUp) {
        LocalDate lodged = job.ruleDay().filter(day -> day.isAfter(today)).orElse(today);
        return tables.buyer(taken.offer().buyer())
                .map(
                        buyer ->
                                new Expected(
                                        entitlement.scheme(),
                                        buyer,
                                        taken.offer(),
                                        taken.count(),
                                        taken.gross(),
                                        taken.offer().feePerClaim(),
                                        taken.net(),
                                        lodged.plusDays(taken.offer().paymentDays()),
                                        runnerUp.map(Ranked::offer),
                                        runnerUp.map(Ranked::net)));
    }

    private Finding none(Job job, SchemeName scheme, Field field, List<Offer> current, int count) {
        Optional<Buyer> fixed = job.claim(scheme).buyer();
        List<Offer> wanted =
                current.stream().filter(o -> fixed.map(b -> sameBuyer(o, b)).orElse(true)).toList();
        String who = fixed.map(b -> b.name() + " has").orElse("There is");
        if (wanted.isEmpty()) {
            return Finding.of(
                            FindingCode.OFFER_MISSING,
                            job.origin().cell(field),
                            who
                                    + " no offer for "
                                    + scheme.word()
                                    + "s in force on "
                                    + Days.show(today)
                                    + ".",
                            "Enter the current price in the offers table, or choose another buyer.")
                    .forJob(job.reference());
        }
        return Finding.of(
                        FindingCode.OFFER_NOT_MET,
                        job.origin().cell(field),
                        "The claim is for "
                                + count
                                + " "
                                + scheme.word()
                                + "s; in one claim "
                                + wanted.stream()
                                        .map(OfferChoice::limits)
                                        .collect(Collectors.joining(", "))
                                + ".",
                        "Choose another buyer, or agree on this claim with the buyer.")
                .forJob(job.reference());
    }

    private static boolean meets(Offer offer, int count) {
        return count >= offer.minimum().orElse(0)
                && count <= offer.maximum().orElse(Integer.MAX_VALUE);
    }

    private static String limits(Offer offer) {
        String least = offer.minimum().map(m -> "at least " + m).orElse("");
        String most = offer.maximum().map(m -> "at most " + m).orElse("");
        String and = least.isEmpty() || most.isEmpty() ? "" : " and ";
        return offer.buyer() + " takes " + least + and + most;
    }

    private static boolean sameBuyer(Offer offer, Buyer buyer) {
        return offer.buyer().equalsIgnoreCase(buyer.name());
    }

    /** An offer with what it brings for a number of certificates. */
    private record Ranked(Offer offer, int count, Money gross, Money net) {
        static final Comparator<Ranked> BEST_FIRST =
                Comparator.comparing(Ranked::net)
                        .reversed()
                        .thenComparing(r -> r.offer().paymentDays())
                        .thenComparing(r -> r.offer().buyer());

        Ranked(Offer offer, int count) {
            this(offer, count, gross(offer, count), gross(offer, count).minus(offer.feePerClaim()));
        }

        private static Money gross(Offer offer, int count) {
            return offer.pricePerCertificate()
                    .times(BigDecimal.valueOf(count))
                    .round(Rounding.GST_ACT);
        }
    }
}
