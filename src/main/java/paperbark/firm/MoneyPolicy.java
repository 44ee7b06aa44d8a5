package paperbark.firm;

import java.math.BigDecimal;
import java.util.Optional;
import paperbark.value.Money;

/**
 * How the firm wants its money worked out.
 *
 * @param choice how it picks among offers
 * @param preferredBuyer the buyer that it would rather deal with
 * @param preferredMargin dollars by which another must be better before it is taken instead
 * @param costOfMoney what waiting costs, percent a year; zero where waiting costs nothing
 * @param gstRounding how GST is rounded on an invoice with several supplies
 * @param lowerCount which number of certificates is claimed where the register names a lower one
 */
public record MoneyPolicy(
        OfferPolicy choice,
        Optional<String> preferredBuyer,
        Money preferredMargin,
        BigDecimal costOfMoney,
        GstRounding gstRounding,
        CountPolicy lowerCount) {
    /** Highest net, no cost of waiting, the total invoice rule, what the rules give. */
    public static final MoneyPolicy USUAL =
            new MoneyPolicy(
                    OfferPolicy.HIGHEST_NET,
                    Optional.empty(),
                    Money.ZERO,
                    BigDecimal.ZERO,
                    GstRounding.TOTAL_INVOICE,
                    CountPolicy.RULES);
}
