package paperbark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import paperbark.finding.Concern;
import paperbark.value.Boost;
import paperbark.value.HeaterKind;

/**
 * A fact that a paper asks for and the register does not tell. For a booked job it is a box to
 * write in on site; for an installed job somebody has forgotten it.
 *
 * @param field which fact
 * @param who usually knows it: {@code plumber}, {@code electrician}, {@code owner} or {@code
 *     office}
 */
public record Missing(Field field, String who) {
    private static final String PLUMBER = "plumber";
    private static final String ELECTRICIAN = "electrician";
    private static final String OWNER = "owner";
    private static final String OFFICE = "office";

    /**
     * The facts missing of a job, in the order of the fields. Facts that could not be read are not
     * among them.
     */
    public static List<Missing> of(Job job) {
        Gatherer missing = new Gatherer(job);
        boolean claims = job.hasClaims();
        missing.unless(job.installedOn().isPresent(), Field.INSTALLED_DATE, PLUMBER);
        missing.unless(job.owner().name().isPresent(), Field.OWNER_NAME, OFFICE);
        missing.unless(job.owner().phone().isPresent(), Field.OWNER_PHONE, OWNER);
        missing.unless(job.owner().email().isPresent(), Field.OWNER_EMAIL, OWNER);
        missing.unless(job.site().address().street().isPresent(), Field.SITE_STREET, OFFICE);
        missing.unless(job.site().address().postcode().isPresent(), Field.SITE_POSTCODE, OFFICE);
        missing.unless(job.heater().model().isPresent(), Field.MODEL, OFFICE);
        missing.unless(job.heater().tankSerial().isPresent(), Field.TANK_SERIAL, PLUMBER);
        heater(job, missing);
        missing.unless(job.trades().plumber().isPresent(), Field.PLUMBER, OFFICE);
        missing.unless(job.trades().seller().isPresent(), Field.SELLER, OFFICE);
        missing.unless(
                !claims || job.compliance().plumbingNumber().isPresent(),
                Field.PLUMBING_CERTIFICATE,
                PLUMBER);
        boolean wired =
                job.heater()
                        .product()
                        .map(p -> p.boost() != Boost.GAS || !p.isSolar())
                        .orElse(false);
        missing.unless(
                !claims || !wired || job.compliance().electricalNumber().isPresent(),
                Field.ELECTRICAL_CERTIFICATE,
                ELECTRICIAN);
        oldHeater(job, missing);
        missing.unless(!claims || job.payment().form().isPresent(), Field.BENEFIT_FORM, OFFICE);
        return List.copyOf(missing.found);
    }

    private static void heater(Job job, Gatherer missing) {
        job.heater()
                .product()
                .ifPresent(
                        product -> {
                            boolean collectors =
                                    !product.isSolar()
                                            || !job.heater().collectorSerials().isEmpty();
                            missing.unless(collectors, Field.COLLECTOR_SERIALS, PLUMBER);
                            boolean split = product.kind() == HeaterKind.SPLIT_HEAT_PUMP;
                            missing.unless(
                                    !split || job.heater().heatPumpSerial().isPresent(),
                                    Field.HEAT_PUMP_SERIAL,
                                    PLUMBER);
                        });
    }

    private static void oldHeater(Job job, Gatherer missing) {
        missing.unless(
                job.oldHeater().map(old -> old.kind() != OldKind.UNTOLD).orElse(false),
                Field.OLD_KIND,
                PLUMBER);
        if (job.replacesHeater()) {
            OldHeater old = job.oldHeater().orElseThrow();
            missing.unless(old.maker().isPresent(), Field.OLD_MAKER, PLUMBER);
            missing.unless(old.model().isPresent(), Field.OLD_MODEL, PLUMBER);
            missing.unless(old.disabledHow().isPresent(), Field.OLD_DISABLED, PLUMBER);
            missing.unless(old.disposal().isPresent(), Field.OLD_DISPOSAL, PLUMBER);
        }
    }

    /** Whether it can be known before the visit: what office and owner know, and nobody on site. */
    public boolean isKnownBeforehand() {
        return who.equals(OFFICE) || who.equals(OWNER);
    }

    /** Whether a stop speaks of the missing fact, so that a check would only repeat it. */
    boolean isToldElsewhere(Job job) {
        if (Set.of(Field.OLD_KIND, Field.OLD_DISABLED, Field.OLD_DISPOSAL).contains(field)) {
            return job.claims().entrySet().stream()
                    .filter(claim -> claim.getValue().claimed())
                    .anyMatch(claim -> field.feeds().contains(Concern.claim(claim.getKey())));
        }
        return field == Field.INSTALLED_DATE || field == Field.PLUMBING_CERTIFICATE;
    }

    /** The papers that print the fact, of those that a stop can hold. */
    public List<Concern> papers() {
        return field.feeds().stream().sorted().toList();
    }

    /** Gathers what is absent without having been refused already. */
    private static final class Gatherer {
        private final Job job;
        private final List<Missing> found = new ArrayList<>();

        Gatherer(Job job) {
            this.job = job;
        }

        void unless(boolean known, Field field, String who) {
            if (!known && !job.unread().contains(field)) {
                found.add(new Missing(field, who));
            }
        }
    }
}
