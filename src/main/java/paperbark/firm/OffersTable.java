package paperbark.firm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Place;
import paperbark.value.DateRange;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.SchemeName;
import paperbark.value.WholeNumber;

/** The table of offers. */
final class OffersTable {
    static final TableShape SHAPE =
            new TableShape(
                    "offers",
                    List.of(
                            "buyer",
                            "scheme",
                            "from",
                            "to",
                            "price_per_certificate",
                            "payment_days"),
                    List.of(
                            "gst_basis",
                            "fee_per_claim",
                            "fee_per_certificate",
                            "minimum",
                            "maximum",
                            "zones",
                            "states",
                            "paid_to",
                            "form"));

    private final List<Buyer> buyers;
    private final List<Offer> offers = new ArrayList<>();
    private final List<Place> places = new ArrayList<>();

    private OffersTable(List<Buyer> buyers) {
        this.buyers = buyers;
    }

    /** The offers, in order; offers of unknown buyers and overlapping ones are left out. */
    static List<Offer> read(OpenTable table, List<Buyer> buyers) {
        OffersTable offers = new OffersTable(buyers);
        table.rows().forEach(offers::add);
        return offers.offers;
    }

    private void add(TableRow row) {
        offer(row)
                .filter(offer -> isNew(offer, row))
                .ifPresent(
                        offer -> {
                            offers.add(offer);
                            places.add(row.place());
                        });
    }

    private Optional<Offer> offer(TableRow row) {
        Optional<String> buyer = row.neededText("buyer").map(name -> known(name, row));
        Optional<SchemeName> scheme =
                row.needed("scheme", CellText.oneOf(SchemeName.values(), SchemeName::word));
        DateRange inForce = row.range("from", "to");
        Optional<ExactMoney> price = row.needed("price_per_certificate", CellText::price);
        Optional<Money> fee = row.money("fee_per_claim");
        if (fee.map(Money::isNegative).orElse(false)) {
            row.wrong("fee_per_claim", "A fee is not negative.", "Type the fee without a minus.");
        }
        Optional<Integer> minimum = row.optional("minimum", WholeNumber::parse);
        Optional<Integer> maximum = row.optional("maximum", WholeNumber::parse);
        if (minimum.isPresent() && maximum.isPresent() && maximum.get() < minimum.get()) {
            row.wrong("maximum", "The maximum is below the minimum.", "Correct one of the two.");
        }
        Optional<Integer> days = row.needed("payment_days", WholeNumber::parse);
        OfferTerms terms = OfferTermsRow.read(row);
        return row.build(
                () ->
                        new Offer(
                                buyer.orElseThrow(),
                                scheme.orElseThrow(),
                                inForce,
                                price.orElseThrow(),
                                fee.orElse(Money.ZERO),
                                minimum,
                                maximum,
                                days.orElseThrow(),
                                terms,
                                row.number()));
    }

    private String known(String name, TableRow row) {
        String key = TakenNames.key(name);
        return buyers.stream()
                .map(Buyer::name)
                .filter(n -> TakenNames.key(n).equals(key))
                .findFirst()
                .orElseGet(
                        () -> {
                            row.wrong(
                                    "buyer",
                                    "No usable row of the buyers table has this name.",
                                    "Write the name as in the buyers table, or add the buyer there.");
                            return name;
                        });
    }

    /**
     * Offers of a buyer for different claims, such as those of other sizes, may run side by side.
     */
    private boolean isNew(Offer offer, TableRow row) {
        for (int i = 0; i < offers.size(); i++) {
            Offer other = offers.get(i);
            if (other.overlaps(offer)) {
                row.wrongRow(
                        "Row "
                                + other.row()
                                + " is an offer of the same buyer and scheme for some of the same days and claims.",
                        "End the earlier offer on the day before this one begins.",
                        List.of(places.get(i)));
                return false;
            }
        }
        return true;
    }
}
