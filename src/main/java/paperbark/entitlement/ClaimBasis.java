package paperbark.entitlement;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.job.Field;
import paperbark.job.JobFact;
import paperbark.value.SchemeName;

/** The facts that claims under every scheme hang on. */
final class ClaimBasis {
    private static final Set<JobFact> COMMON =
            JobFact.of(
                    Field.STAGE,
                    Field.INSTALLED_DATE,
                    Field.SITE_STREET,
                    Field.SITE_SUBURB,
                    Field.SITE_STATE,
                    Field.SITE_POSTCODE,
                    Field.SITE_POSITION,
                    Field.SITE_BUSINESS,
                    Field.MAKER,
                    Field.MODEL,
                    Field.TANK_SERIAL,
                    Field.COLLECTOR_SERIALS,
                    Field.HEAT_PUMP_SERIAL,
                    Field.NEW_SYSTEM,
                    Field.BENEFIT_FORM);

    private ClaimBasis() {}

    /** These, what the register says about claiming under the scheme, and more. */
    static Set<JobFact> of(SchemeName scheme, Field... more) {
        return Stream.of(COMMON, JobFact.ofClaim(scheme), JobFact.of(more))
                .flatMap(Set::stream)
                .collect(Collectors.toUnmodifiableSet());
    }
}
