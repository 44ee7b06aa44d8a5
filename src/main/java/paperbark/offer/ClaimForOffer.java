package paperbark.offer;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.entitlement.Entitlement;
import paperbark.firm.Firm;
import paperbark.job.BenefitForm;
import paperbark.job.Claim;
import paperbark.job.Job;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * What an offer must know of a claim.
 *
 * @param job the job
 * @param scheme under which scheme
 * @param certificates how many
 * @param zone zone of the site under the scheme, where known
 * @param firm the installing firm
 * @param gstDivisor 11 means that an eleventh of a price is GST; empty where no rule is in force
 * @param today day of the run
 */
record ClaimForOffer(
        Job job,
        SchemeName scheme,
        int certificates,
        Optional<Integer> zone,
        Firm firm,
        Optional<Integer> gstDivisor,
        LocalDate today) {

    static ClaimForOffer of(
            Job job,
            Entitlement entitlement,
            Firm firm,
            Optional<Integer> gstDivisor,
            LocalDate today) {
        return new ClaimForOffer(
                job,
                entitlement.scheme(),
                entitlement.certificates().orElse(0),
                entitlement.zone(),
                firm,
                gstDivisor,
                today);
    }

    /** What the owner is to have, in dollars. */
    Optional<Money> benefit() {
        return claim().benefit();
    }

    Claim claim() {
        return job.claim(scheme);
    }

    boolean paysOwner() {
        return job.payment().form().equals(Optional.of(BenefitForm.PAYMENT));
    }

    boolean isDiscount() {
        return job.payment().form().equals(Optional.of(BenefitForm.DISCOUNT));
    }

    /** Whether the owner owes GST on the assignment, as far as the register tells. */
    boolean isTaxable() {
        return OwnerGst.isOwed(job) && gstDivisor.isPresent();
    }

    /** The day on which it can be lodged at the earliest. */
    LocalDate lodged() {
        return job.ruleDay().filter(day -> day.isAfter(today)).orElse(today);
    }
}
