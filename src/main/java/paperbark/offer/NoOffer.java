package paperbark.offer;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Buyer;
import paperbark.job.Field;
import paperbark.value.Days;

/** Says why no offer could be taken. */
final class NoOffer {
    private final ClaimForOffer claimed;
    private final Field field;
    private final Optional<Buyer> fixed;

    NoOffer(ClaimForOffer claimed, Field field) {
        this.claimed = claimed;
        this.field = field;
        this.fixed = claimed.claim().buyer();
    }

    Finding finding(Comparison comparison) {
        List<LeftOut> wanted =
                comparison.leftOut().stream()
                        .filter(LeftOut::inForce)
                        .filter(out -> fixed.map(b -> isOf(out, b)).orElse(true))
                        .toList();
        return wanted.isEmpty() ? missing() : notMet(wanted);
    }

    private Finding missing() {
        return of(
                FindingCode.OFFER_MISSING,
                fixed.map(b -> b.name() + " has").orElse("There is")
                        + " no offer for "
                        + word()
                        + "s in force on "
                        + Days.show(claimed.today())
                        + ".",
                "Enter the current price in the offers table, or choose another buyer.");
    }

    private Finding notMet(List<LeftOut> wanted) {
        boolean size =
                wanted.stream().allMatch(out -> OfferCheck.size(out.offer(), claimed).isPresent());
        String fact =
                size
                        ? "in one claim " + each(wanted, out -> OfferCheck.limits(out.offer()))
                        : each(wanted, LeftOut::reason);
        return of(
                FindingCode.OFFER_NOT_MET,
                "The claim is for " + claimed.certificates() + " " + word() + "s; " + fact + ".",
                "Choose another buyer, or agree on this claim with the buyer.");
    }

    private static String each(List<LeftOut> all, Function<LeftOut, String> words) {
        return all.stream()
                .map(out -> out.offer().buyer() + " " + words.apply(out))
                .collect(Collectors.joining(", "));
    }

    private Finding of(FindingCode code, String fact, String remedy) {
        return Finding.of(code, claimed.job().origin().cell(field), fact, remedy)
                .forJob(claimed.job().reference());
    }

    private String word() {
        return claimed.scheme().word();
    }

    private static boolean isOf(LeftOut out, Buyer buyer) {
        return out.offer().buyer().equalsIgnoreCase(buyer.name());
    }
}
