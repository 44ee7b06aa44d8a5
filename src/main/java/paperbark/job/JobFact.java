package paperbark.job;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.firm.Buyer;
import paperbark.firm.Person;
import paperbark.firm.Seller;
import paperbark.sheet.Column;
import paperbark.value.Address;
import paperbark.value.Money;
import paperbark.value.Postcode;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/**
 * A fact of a job by which an earlier batch and a later one are compared. Bank details, contact
 * data and the ABN are none on purpose: the ledger is to hold no trace of them. What the firm's
 * tables add (licences, the product's row) is no fact of the job.
 */
public final class JobFact {
    /** Every fact that is compared, in the order of the fields. */
    public static final List<JobFact> ALL =
            Stream.concat(
                            Stream.of(
                                    new JobFact(Field.STAGE, j -> Optional.of(j.stage().name())),
                                    planned(Field.CREW, Visit::crew),
                                    planned(Field.VISIT_ORDER, Visit::order),
                                    planned(Field.VISIT_DATE, Visit::on),
                                    new JobFact(Field.INSTALLED_DATE, Job::installedOn),
                                    new JobFact(Field.SIGNED_DATE, Job::signedOn),
                                    new JobFact(Field.CORRECTS, Job::corrects),
                                    new JobFact(Field.OWNER_NAME, j -> j.owner().name()),
                                    new JobFact(Field.SECOND_OWNER, j -> j.owner().second()),
                                    new JobFact(Field.OWNER_GST, j -> j.owner().gstRegistered()),
                                    postal(Field.POSTAL_STREET, Address::street),
                                    postal(Field.POSTAL_SUBURB, Address::suburb),
                                    postal(Field.POSTAL_STATE, Address::state),
                                    postal(Field.POSTAL_POSTCODE, Address::postcode),
                                    site(Field.SITE_STREET, Address::street),
                                    site(Field.SITE_SUBURB, Address::suburb),
                                    site(Field.SITE_STATE, Address::state),
                                    site(Field.SITE_POSTCODE, Address::postcode),
                                    new JobFact(Field.SITE_POSITION, j -> j.site().position()),
                                    new JobFact(Field.SITE_BUSINESS, j -> j.site().business()),
                                    heater(Field.MAKER, Heater::makerName),
                                    heater(Field.MODEL, Heater::model),
                                    heater(Field.TANK_SERIAL, Heater::tankSerial),
                                    heater(Field.COLLECTOR_SERIALS, JobFact::collectors),
                                    heater(Field.HEAT_PUMP_SERIAL, Heater::heatPumpSerial),
                                    heater(Field.LITRES, Heater::litresSaid),
                                    heater(Field.COLLECTORS, Heater::collectorsSaid),
                                    heater(Field.NEW_SYSTEM, h -> Optional.of(!h.secondHand())),
                                    heater(
                                            Field.COMPLETE_SYSTEM,
                                            h -> Optional.of(h.completeSystem())),
                                    heater(Field.DECLARATIONS_DATE, Heater::declarationsOn),
                                    new JobFact(Field.PLUMBER, j -> j.trades().plumber()),
                                    new JobFact(Field.ELECTRICIAN, j -> j.trades().electrician()),
                                    new JobFact(Field.SELLER, j -> j.trades().seller()),
                                    papers(Field.PLUMBING_CERTIFICATE, Compliance::plumbingNumber),
                                    papers(Field.PLUMBING_CERTIFICATE_DATE, Compliance::plumbingOn),
                                    papers(
                                            Field.ELECTRICAL_CERTIFICATE,
                                            Compliance::electricalNumber),
                                    papers(
                                            Field.ELECTRICAL_CERTIFICATE_DATE,
                                            Compliance::electricalOn),
                                    old(Field.OLD_KIND, h -> Optional.of(h.kind().name())),
                                    old(Field.OLD_MAKER, OldHeater::maker),
                                    old(Field.OLD_MODEL, OldHeater::model),
                                    old(Field.OLD_SERIAL, OldHeater::serial),
                                    old(Field.OLD_DISABLED, OldHeater::disabledHow),
                                    old(Field.OLD_DISPOSAL, OldHeater::disposal),
                                    old(Field.OLD_REMOVED_DATE, OldHeater::removedOn),
                                    money(Field.FULL_PRICE, Payment::fullPrice),
                                    money(Field.CO_PAYMENT, Payment::coPayment),
                                    new JobFact(Field.BENEFIT_FORM, j -> j.payment().form()),
                                    planned(Field.OFFICE_NOTE, Visit::note)),
                            Arrays.stream(SchemeName.values()).flatMap(JobFact::claim))
                    .toList();

    private static final Set<Field> NO_BOX =
            Set.of(
                    Field.CORRECTS,
                    Field.POSTAL_STREET,
                    Field.POSTAL_SUBURB,
                    Field.POSTAL_STATE,
                    Field.POSTAL_POSTCODE);

    private final Field field;
    private final Function<Job, Optional<?>> reading;
    private final boolean plan;

    private JobFact(Field field, Function<Job, Optional<?>> reading) {
        this(field, reading, false);
    }

    private JobFact(Field field, Function<Job, Optional<?>> reading, boolean plan) {
        this.field = field;
        this.reading = reading;
        this.plan = plan;
    }

    /** Whether the visit is planned so or so matters only while it is to come. */
    private static JobFact planned(Field field, Function<Visit, Optional<?>> part) {
        return new JobFact(
                field,
                job -> job.stage() == Stage.BOOKED ? part.apply(job.visit()) : Optional.empty(),
                true);
    }

    /**
     * Whether it is told only while the visit is to come, so that two jobs are compared by it only
     * where their stage is the same.
     */
    public boolean isOfPlan() {
        return plan;
    }

    /** Letters go to the site where nothing else is said, which is no fact beside the site. */
    private static JobFact postal(Field field, Function<Address, Optional<?>> part) {
        return new JobFact(
                field,
                job ->
                        job.owner().postal().equals(job.site().address())
                                ? Optional.empty()
                                : part.apply(job.owner().postal()));
    }

    private static JobFact site(Field field, Function<Address, Optional<?>> part) {
        return new JobFact(field, job -> part.apply(job.site().address()));
    }

    private static JobFact heater(Field field, Function<Heater, Optional<?>> part) {
        return new JobFact(field, job -> part.apply(job.heater()));
    }

    private static JobFact papers(Field field, Function<Compliance, Optional<?>> part) {
        return new JobFact(field, job -> part.apply(job.compliance()));
    }

    private static JobFact old(Field field, Function<OldHeater, Optional<?>> part) {
        return new JobFact(field, job -> job.oldHeater().flatMap(part));
    }

    private static JobFact money(Field field, Function<Payment, Optional<?>> part) {
        return new JobFact(field, job -> part.apply(job.payment()));
    }

    private static Stream<JobFact> claim(SchemeName scheme) {
        return Arrays.stream(ClaimFact.values())
                .flatMap(
                        what ->
                                Field.find(scheme, what).stream()
                                        .map(
                                                field ->
                                                        new JobFact(
                                                                field,
                                                                j -> said(what, j.claim(scheme)))));
    }

    private static Optional<?> said(ClaimFact what, Claim claim) {
        return switch (what) {
            case CLAIM -> Optional.of(claim.claimed());
            case BUYER -> claim.buyer();
            case ZONE -> claim.declaredZone();
            case COUNT -> claim.declaredCount();
            case BENEFIT -> claim.benefit();
        };
    }

    /**
     * The facts that these columns tell.
     *
     * @throws IllegalArgumentException when one of them is compared by nothing
     */
    public static Set<JobFact> of(Field... fields) {
        return Arrays.stream(fields).map(JobFact::one).collect(Collectors.toSet());
    }

    private static JobFact one(Field field) {
        return ALL.stream()
                .filter(fact -> fact.field.equals(field))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(field.key() + " is no fact"));
    }

    /** What the register says about claiming under a scheme. */
    public static Set<JobFact> ofClaim(SchemeName scheme) {
        return of(
                Arrays.stream(ClaimFact.values())
                        .flatMap(what -> Field.find(scheme, what).stream())
                        .toArray(Field[]::new));
    }

    Field field() {
        return field;
    }

    /** Whether it is what the register says about claiming under some scheme. */
    boolean isOfClaim() {
        return Arrays.stream(SchemeName.values()).anyMatch(s -> ofClaim(s).contains(this));
    }

    /** The name under which the ledger stores its print: the field's own in the columns table. */
    public String name() {
        return field.key();
    }

    /**
     * What the job says, where it does; where and how it was written does not count.
     *
     * @return text that is the same exactly where the fact is
     */
    public Optional<String> in(Job job) {
        return reading.apply(job).map(JobFact::text).filter(text -> !text.isEmpty());
    }

    /**
     * Whether papers have an empty box where it is not known. The owner's post goes to the site
     * then, and without a remark on earlier claims a paper says that there are none.
     */
    public boolean leavesABox() {
        return !NO_BOX.contains(field);
    }

    /** What the firm calls it: its heading in the job's register, or else our words. */
    public String heading(Job job) {
        Column column = job.origin().columns().get(field);
        return column == null ? field.label() : column.heading();
    }

    @Override
    public String toString() {
        return name();
    }

    private static Optional<String> collectors(Heater heater) {
        return Optional.of(
                heater.collectorSerials().stream()
                        .map(Serial::key)
                        .collect(Collectors.joining("\n")));
    }

    // Of somebody in the firm's tables only who it is counts, not what the tables say of them.
    private static String text(Object value) {
        if (value instanceof Person person) {
            return person.name();
        }
        if (value instanceof Seller seller) {
            return seller.name();
        }
        if (value instanceof Buyer buyer) {
            return buyer.name();
        }
        if (value instanceof Serial serial) {
            return serial.key();
        }
        if (value instanceof Postcode postcode) {
            return postcode.digits();
        }
        if (value instanceof Money money) {
            return String.valueOf(money.cents());
        }
        if (value instanceof Enum<?> one) {
            return one.name();
        }
        // Text, whole numbers, days, yes and no.
        return value.toString();
    }
}
