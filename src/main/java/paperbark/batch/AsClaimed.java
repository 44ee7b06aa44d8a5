package paperbark.batch;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.EntitlementBuilder;
import paperbark.entitlement.Entitlements;
import paperbark.entitlement.Step;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Buyer;
import paperbark.firm.FirmTables;
import paperbark.job.BenefitForm;
import paperbark.job.Claim;
import paperbark.job.ClaimBuilder;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobBuilder;
import paperbark.job.JobFact;
import paperbark.job.Payment;
import paperbark.ledger.ClaimState;
import paperbark.ledger.JobHistory;
import paperbark.ledger.UnderWay;
import paperbark.output.journal.Booked;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * A job whose claims stand as the buyer has them, where its row says otherwise now and a stop asks
 * to agree with the buyer first. Papers, sheets and journal are made of this, so that they say what
 * the ledger says. What the ledger does not keep, a discount, is read from the journal that booked
 * it.
 *
 * @param job with buyer, number and benefit of such claims as they were claimed, and with the day
 *     of installation where the row has none that was
 * @param claims these claims, by scheme
 * @param kept what the row says otherwise and is told as it was
 */
record AsClaimed(Job job, Map<SchemeName, ClaimState> claims, Set<JobFact> kept) {

    /**
     * What is to be told of a job.
     *
     * @param noticed what was noticed about it
     * @param booked its last entry in a journal, asked only where a claim is to be told as it was
     * @param today the day of the batch
     */
    static AsClaimed of(
            Job row,
            JobHistory history,
            List<Finding> noticed,
            FirmTables tables,
            Function<String, Optional<Booked>> booked,
            LocalDate today) {
        List<UnderWay> stopped =
                history.underWay().stream()
                        .filter(u -> isStopped(noticed, u.claim().scheme()))
                        .toList();
        if (stopped.isEmpty()) {
            return new AsClaimed(row, Map.of(), Set.of());
        }
        Making making = new Making(row, tables, booked.apply(row.reference()));
        stopped.forEach(making::restore);
        if (row.isInstalled() && row.doneOn(today).isEmpty()) {
            making.restoreDay(stopped.get(0).claim());
        }
        return making.made();
    }

    private static boolean isStopped(List<Finding> noticed, SchemeName scheme) {
        return noticed.stream()
                .anyMatch(
                        f ->
                                f.code() == FindingCode.CLAIM_UNDER_WAY
                                        && f.stops()
                                        && f.holds().contains(Concern.claim(scheme)));
    }

    /** The job as offers for a claim see it: what a buyer has is no other's to take. */
    Job offered(SchemeName scheme, FirmTables tables) {
        Optional<Buyer> has =
                Optional.ofNullable(claims.get(scheme)).flatMap(c -> tables.buyer(c.buyer()));
        if (has.isEmpty()) {
            return job;
        }
        Map<SchemeName, Claim> fixed = new EnumMap<>(job.claims());
        fixed.put(scheme, ClaimBuilder.builder(job.claim(scheme)).buyer(has).build());
        return JobBuilder.builder(job).claims(fixed).build();
    }

    /** What the job earns, with the number that was claimed. */
    Entitlements earned(Entitlements now) {
        return new Entitlements(now.all().stream().map(this::earned).toList());
    }

    private Entitlement earned(Entitlement now) {
        Optional<Integer> then =
                Optional.ofNullable(claims.get(now.scheme())).map(ClaimState::certificates);
        if (then.isEmpty() || now.certificates().equals(then)) {
            return now;
        }
        List<Step> steps = new ArrayList<>(now.steps());
        steps.add(new Step(Entitlement.WITH_BUYER, "", String.valueOf(then.get()), List.of()));
        return EntitlementBuilder.builder(now).certificates(then).steps(steps).build();
    }

    /** Puts back claim by claim what the row says otherwise. */
    private static final class Making {
        private final Job row;
        private final FirmTables tables;
        private final Optional<Booked> booked;
        private final Map<SchemeName, Claim> claims;
        private final Map<SchemeName, ClaimState> then = new EnumMap<>(SchemeName.class);
        private final Set<JobFact> kept = new HashSet<>();
        private Payment payment;
        private Optional<LocalDate> installedOn;

        Making(Job row, FirmTables tables, Optional<Booked> booked) {
            this.row = row;
            this.tables = tables;
            this.booked = booked;
            this.claims = new EnumMap<>(row.claims());
            this.payment = row.payment();
            this.installedOn = row.installedOn();
        }

        void restore(UnderWay underWay) {
            ClaimState claim = underWay.claim();
            SchemeName scheme = claim.scheme();
            Set<JobFact> changed = underWay.changed().orElse(Set.copyOf(JobFact.ALL));
            then.put(scheme, claim);
            ClaimBuilder restored = ClaimBuilder.builder(claims.get(scheme));
            Field buyer = Field.of(scheme, ClaimFact.BUYER);
            if (isIn(changed, buyer)) {
                restored.buyer(tables.buyer(claim.buyer()).or(() -> claims.get(scheme).buyer()));
                keep(buyer);
            }
            Field count = Field.of(scheme, ClaimFact.COUNT);
            if (isIn(changed, count)) {
                restored.declaredCount(Optional.of(claim.certificates()));
                keep(count);
            }
            if (isIn(changed, Field.BENEFIT_FORM)) {
                payment = with(payment.coPayment(), Optional.of(form(claim)));
                keep(Field.BENEFIT_FORM);
            }
            Field benefit = Field.of(scheme, ClaimFact.BENEFIT);
            if (isIn(changed, benefit) || isIn(changed, Field.BENEFIT_FORM)) {
                Optional<Money> given = given(claim);
                restored.benefit(given);
                keep(benefit);
                if (isIn(changed, Field.CO_PAYMENT) && !isIn(changed, Field.FULL_PRICE)) {
                    payAgain(claims.get(scheme).benefit(), given);
                }
            }
            claims.put(scheme, restored.build());
        }

        /** A heater with such a claim is in; of a day that nobody knows there would be no sale. */
        void restoreDay(ClaimState claim) {
            installedOn = Optional.of(claim.installedOn());
            keep(Field.INSTALLED_DATE);
        }

        AsClaimed made() {
            return new AsClaimed(
                    JobBuilder.builder(row)
                            .claims(claims)
                            .payment(payment)
                            .installedOn(installedOn)
                            .build(),
                    Map.copyOf(then),
                    Set.copyOf(kept));
        }

        private static BenefitForm form(ClaimState claim) {
            return claim.toOwner().isZero() ? BenefitForm.DISCOUNT : BenefitForm.PAYMENT;
        }

        /** Nothing where it was a discount and no journal is here that tells it. */
        private Optional<Money> given(ClaimState claim) {
            return claim.toOwner().isZero()
                    ? booked.flatMap(b -> b.discount(claim.scheme()))
                    : Optional.of(claim.toOwner());
        }

        /** What the owner pays is more by what a discount is less. */
        private void payAgain(Optional<Money> said, Optional<Money> given) {
            if (payment.isDiscount() && said.isPresent() && given.isPresent()) {
                payment =
                        with(
                                payment.coPayment()
                                        .map(paid -> paid.plus(said.get()).minus(given.get()))
                                        .filter(paid -> !paid.isNegative()),
                                payment.form());
                keep(Field.CO_PAYMENT);
            }
        }

        private Payment with(Optional<Money> coPayment, Optional<BenefitForm> form) {
            return new Payment(
                    payment.fullPrice(),
                    coPayment,
                    form,
                    payment.accountName(),
                    payment.bsb(),
                    payment.account());
        }

        private void keep(Field field) {
            kept.addAll(JobFact.of(field));
        }

        private static boolean isIn(Set<JobFact> changed, Field field) {
            return changed.containsAll(JobFact.of(field));
        }
    }
}
