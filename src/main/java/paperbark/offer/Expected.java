package paperbark.offer;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.firm.Buyer;
import paperbark.firm.Offer;
import paperbark.firm.SchemeName;
import paperbark.value.Money;

/**
 * Money expected for one claim.
 *
 * @param scheme which certificates
 * @param buyer who pays
 * @param offer the offer taken
 * @param certificates how many
 * @param gross price of all certificates, without GST
 * @param fee kept back by the buyer
 * @param net gross less fee
 * @param due day of payment when lodged on the day of the run
 * @param runnerUp the next best offer, where there is one
 * @param runnerUpNet what it would bring
 */
public record Expected(
        SchemeName scheme,
        Buyer buyer,
        Offer offer,
        int certificates,
        Money gross,
        Money fee,
        Money net,
        LocalDate due,
        Optional<Offer> runnerUp,
        Optional<Money> runnerUpNet) {}
