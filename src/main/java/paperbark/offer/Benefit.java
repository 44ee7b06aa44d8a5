package paperbark.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Entitlements;
import paperbark.firm.Buyer;
import paperbark.job.Job;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * What an owner has of the assignment under one scheme.
 *
 * @param scheme which certificates
 * @param certificates how many, where they could be worked out
 * @param buyer who takes them, where known
 * @param value the benefit in dollars, where the register tells it
 * @param ownerGst GST in the value, which an owner registered and in business owes
 * @param ours whether the firm itself takes them, so that the owner's tax invoice and the credit
 *     are its own
 */
public record Benefit(
        SchemeName scheme,
        Optional<Integer> certificates,
        Optional<String> buyer,
        Optional<Money> value,
        Optional<Money> ownerGst,
        boolean ours) {

    /** The benefits of a job, one a scheme that it claims under. */
    public static List<Benefit> of(
            Job job,
            Entitlements entitlements,
            List<Expected> expected,
            Optional<OwnerPrice> price) {
        List<Benefit> benefits = new ArrayList<>();
        for (SchemeName scheme : SchemeName.values()) {
            if (job.claim(scheme).claimed()) {
                Optional<Money> value = job.claim(scheme).benefit();
                Optional<Buyer> buyer =
                        expected.stream()
                                .filter(e -> e.scheme() == scheme)
                                .map(Expected::buyer)
                                .findFirst()
                                .or(() -> job.claim(scheme).buyer());
                benefits.add(
                        new Benefit(
                                scheme,
                                entitlements.of(scheme).flatMap(Entitlement::certificates),
                                buyer.map(Buyer::name),
                                value,
                                value.filter(v -> OwnerGst.isOwed(job))
                                        .flatMap(
                                                v ->
                                                        price.map(
                                                                p ->
                                                                        Gst.includedIn(
                                                                                v,
                                                                                p.gstDivisor()))),
                                buyer.map(Buyer::own).orElse(false)));
            }
        }
        return benefits;
    }
}
