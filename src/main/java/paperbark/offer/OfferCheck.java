package paperbark.offer;

import java.util.Collection;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.firm.Buyer;
import paperbark.firm.FirmTables;
import paperbark.firm.Offer;
import paperbark.firm.PaidTo;
import paperbark.value.Days;
import paperbark.value.State;

/** Why a claim cannot take an offer. */
final class OfferCheck {
    private final ClaimForOffer claimed;
    private final FirmTables tables;

    OfferCheck(ClaimForOffer claimed, FirmTables tables) {
        this.claimed = claimed;
        this.tables = tables;
    }

    /** The reason; empty where the claim can take it. */
    Optional<LeftOut> leftOut(Offer offer) {
        boolean inForce = offer.inForce().contains(claimed.today());
        Optional<String> reason =
                inForce
                        ? size(offer, claimed)
                                .or(() -> place(offer))
                                .or(() -> payee(offer))
                                .or(() -> buyer(offer))
                        : Optional.of(notInForce(offer));
        return reason.map(why -> new LeftOut(offer, inForce, why));
    }

    private String notInForce(Offer offer) {
        return offer.inForce()
                .from()
                .filter(from -> from.isAfter(claimed.today()))
                .map(from -> "begins on " + Days.show(from))
                .orElseGet(() -> "ended on " + offer.inForce().to().map(Days::show).orElseThrow());
    }

    /** Whether the claim is too small or too large. */
    static Optional<String> size(Offer offer, ClaimForOffer claimed) {
        int count = claimed.certificates();
        boolean fits =
                count >= offer.minimum().orElse(0)
                        && count <= offer.maximum().orElse(Integer.MAX_VALUE);
        return fits ? Optional.empty() : Optional.of(limits(offer) + " in one claim");
    }

    static String limits(Offer offer) {
        String least = offer.minimum().map(m -> "at least " + m).orElse("");
        String most = offer.maximum().map(m -> "at most " + m).orElse("");
        String and = least.isEmpty() || most.isEmpty() ? "" : " and ";
        return "takes " + least + and + most;
    }

    private Optional<String> place(Offer offer) {
        Collection<Integer> zones = offer.terms().zones();
        if (!zones.isEmpty() && claimed.zone().filter(zones::contains).isEmpty()) {
            return Optional.of("takes only zone " + list(zones));
        }
        Collection<State> states = offer.terms().states();
        Optional<State> state = claimed.job().site().address().state();
        return states.isEmpty() || state.filter(states::contains).isPresent()
                ? Optional.empty()
                : Optional.of("takes only sites in " + list(states));
    }

    private Optional<String> payee(Offer offer) {
        PaidTo paidTo = offer.terms().paidTo();
        if (claimed.paysOwner() && paidTo == PaidTo.FIRM) {
            return Optional.of("pays the firm only, and the owner is to be paid");
        }
        return claimed.isDiscount() && paidTo == PaidTo.OWNER
                ? Optional.of("pays the owner only, and the owner had a discount")
                : Optional.empty();
    }

    private Optional<String> buyer(Offer offer) {
        Optional<Buyer> known = tables.buyer(offer.buyer());
        return known.isPresent() ? Optional.empty() : Optional.of("is not in the buyers table");
    }

    private static String list(Collection<?> all) {
        return all.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }
}
