package paperbark.output;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.entitlement.Scheme;
import paperbark.entitlement.Schemes;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.JobFact;
import paperbark.value.SchemeName;

/**
 * Which facts of a job the shipped templates of each paper print. A paper that is not listed prints
 * all of them.
 */
final class PaperFacts {
    private static final Set<JobFact> SITE =
            JobFact.of(
                    Field.OWNER_NAME,
                    Field.SECOND_OWNER,
                    Field.SITE_STREET,
                    Field.SITE_SUBURB,
                    Field.SITE_STATE,
                    Field.SITE_POSTCODE);
    private static final Set<JobFact> POST =
            JobFact.of(
                    Field.POSTAL_STREET,
                    Field.POSTAL_SUBURB,
                    Field.POSTAL_STATE,
                    Field.POSTAL_POSTCODE);
    private static final Set<JobFact> HEATER =
            JobFact.of(Field.MAKER, Field.MODEL, Field.TANK_SERIAL, Field.INSTALLED_DATE);
    private static final Set<JobFact> PARTS =
            JobFact.of(Field.COLLECTOR_SERIALS, Field.HEAT_PUMP_SERIAL, Field.PLUMBER);
    private static final Set<JobFact> OLD_HEATER =
            JobFact.of(
                    Field.OLD_KIND,
                    Field.OLD_MAKER,
                    Field.OLD_MODEL,
                    Field.OLD_SERIAL,
                    Field.OLD_DISABLED,
                    Field.OLD_DISPOSAL,
                    Field.OLD_REMOVED_DATE);
    private static final Set<JobFact> ASSIGNMENT =
            JobFact.of(
                    Field.OWNER_GST,
                    Field.SITE_BUSINESS,
                    Field.CORRECTS,
                    Field.BENEFIT_FORM,
                    Field.PLUMBER);
    private static final Set<JobFact> CERTIFICATES =
            JobFact.of(
                    Field.PLUMBING_CERTIFICATE,
                    Field.PLUMBING_CERTIFICATE_DATE,
                    Field.ELECTRICAL_CERTIFICATE,
                    Field.ELECTRICAL_CERTIFICATE_DATE);
    private static final Set<JobFact> PRICE = JobFact.of(Field.FULL_PRICE, Field.BENEFIT_FORM);
    private static final Map<PaperKind, Set<JobFact>> PRINTED = printed();

    private PaperFacts() {}

    private static Map<PaperKind, Set<JobFact>> printed() {
        Map<PaperKind, Set<JobFact>> all = new HashMap<>();
        all.put(
                PaperKind.WARRANTY,
                union(
                        List.of(
                                SITE,
                                POST,
                                HEATER,
                                PARTS,
                                JobFact.of(Field.SITE_POSITION, Field.SELLER))));
        Set<JobFact> claims = new HashSet<>();
        Set<JobFact> asked = new HashSet<>();
        for (SchemeName scheme : SchemeName.values()) {
            claims.addAll(claim(scheme));
            asked.addAll(JobFact.of(Field.of(scheme, ClaimFact.CLAIM)));
        }
        for (SchemeName scheme : SchemeName.values()) {
            Scheme of = Schemes.KNOWN.of(scheme);
            all.put(
                    PaperKind.of(scheme),
                    union(
                            List.of(
                                    SITE,
                                    POST,
                                    HEATER,
                                    ASSIGNMENT,
                                    CERTIFICATES,
                                    claim(scheme),
                                    of.alsoPrinted(),
                                    of.tellsOfOthers() ? asked : Set.of())));
        }
        all.put(
                PaperKind.BENEFIT,
                union(
                        List.of(
                                SITE,
                                PRICE,
                                claims,
                                JobFact.of(
                                        Field.OWNER_GST,
                                        Field.SITE_BUSINESS,
                                        Field.MAKER,
                                        Field.MODEL,
                                        Field.INSTALLED_DATE))));
        all.put(PaperKind.OLD_HEATER, union(List.of(SITE, OLD_HEATER, JobFact.of(Field.PLUMBER))));
        all.put(
                PaperKind.DECLARATIONS,
                union(List.of(SITE, HEATER, JobFact.of(Field.SITE_BUSINESS))));
        // It tells who gets which data, and lies with the statement of benefit.
        all.put(
                PaperKind.HANDOVER,
                union(List.of(SITE, HEATER, PARTS, CERTIFICATES, all.get(PaperKind.BENEFIT))));
        return all;
    }

    private static Set<JobFact> union(List<Set<JobFact>> sets) {
        return sets.stream().flatMap(Set::stream).collect(Collectors.toSet());
    }

    /** The zone is printed as it is worked out; the count may be the register's own. */
    private static Set<JobFact> claim(SchemeName scheme) {
        return JobFact.of(
                Stream.of(ClaimFact.CLAIM, ClaimFact.BUYER, ClaimFact.COUNT, ClaimFact.BENEFIT)
                        .flatMap(what -> Field.find(scheme, what).stream())
                        .toArray(Field[]::new));
    }

    static Set<JobFact> of(PaperKind kind) {
        // An owner's copy prints what the assignment does.
        return PRINTED.getOrDefault(
                kind.scheme().map(PaperKind::of).orElse(kind), new HashSet<>(JobFact.ALL));
    }
}
