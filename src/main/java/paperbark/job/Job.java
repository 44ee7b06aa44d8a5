package paperbark.job;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.firm.Listing;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * One water heater at one site for one owner, as far as the register tells.
 *
 * @param origin where it was read
 * @param reference the firm's job number
 * @param stage how far it has come
 * @param visit when the crew goes
 * @param installedOn day on which the heater could first deliver hot water
 * @param signedOn day of the owner's signature on the assignment
 * @param corrects what an earlier paper got wrong, when this row corrects one
 * @param owner whoever owns the heater
 * @param site where it stands
 * @param heater what was installed
 * @param trades who worked and who sold
 * @param compliance certificates issued by licensed people
 * @param oldHeater what was taken out; empty where nothing is known
 * @param claims what it says of claiming, by scheme; every scheme has its entry
 * @param payment prices and accounts
 * @param unread fields whose cell could not be used; checks that need them stay silent
 */
@RecordBuilder
public record Job(
        Origin origin,
        String reference,
        Stage stage,
        Visit visit,
        Optional<LocalDate> installedOn,
        Optional<LocalDate> signedOn,
        Optional<String> corrects,
        Owner owner,
        Site site,
        Heater heater,
        Trades trades,
        Compliance compliance,
        Optional<OldHeater> oldHeater,
        Map<SchemeName, Claim> claims,
        Payment payment,
        Set<Field> unread) {

    /** Crew, then day, then place in the day's route; what is not known comes last. */
    public static final Comparator<Job> ROUTE =
            Comparator.comparing((Job job) -> job.visit().crew().orElse("\uffff"))
                    .thenComparing(job -> job.crewDay().orElse(LocalDate.MAX))
                    .thenComparing(job -> job.visit().order().orElse(Integer.MAX_VALUE));

    /** Keeps claims, in the order of the schemes, and fields from being changed. */
    public Job {
        Map<SchemeName, Claim> all = new EnumMap<>(SchemeName.class);
        for (SchemeName scheme : SchemeName.values()) {
            all.put(scheme, claims.getOrDefault(scheme, Claim.NONE));
        }
        claims = Collections.unmodifiableMap(all);
        unread = Set.copyOf(unread);
    }

    /** The same job under another number. */
    public Job withReference(String other) {
        return JobBuilder.builder(this).reference(other).build();
    }

    /**
     * The same job with these claims, from where they were read, and with cells of a further row
     * that could not be used.
     */
    Job with(Origin from, Map<SchemeName, Claim> others, Set<Field> unreadToo) {
        Set<Field> all = new HashSet<>(unread);
        all.addAll(unreadToo);
        return JobBuilder.builder(this).origin(from).claims(others).unread(all).build();
    }

    /** The claim under a scheme. */
    public Claim claim(SchemeName scheme) {
        return claims.get(scheme);
    }

    /** Whether certificates are to be assigned under any scheme. */
    public boolean hasClaims() {
        return claims.values().stream().anyMatch(Claim::claimed);
    }

    /** What the owner gets for the certificates of all schemes together. */
    public Money given() {
        return claims.values().stream().map(Claim::given).reduce(Money.ZERO, Money::plus);
    }

    /**
     * Whether the heater is in, as far as the register tells. A day of installation that cannot be
     * read tells it too.
     */
    public boolean isInstalled() {
        boolean dated = installedOn.isPresent() || unread.contains(Field.INSTALLED_DATE);
        return stage == Stage.INSTALLED || (stage == Stage.NO_CLAIM && dated);
    }

    /**
     * The day since which the heater is in. One that is still to come is none yet, whatever the
     * register says.
     */
    public Optional<LocalDate> doneOn(LocalDate today) {
        return isInstalled() ? installedOn.filter(day -> !day.isAfter(today)) : Optional.empty();
    }

    /**
     * The day that the job is counted on: of the installation, or while it is booked of the planned
     * visit. A plan says nothing of a heater that is in.
     */
    public Optional<LocalDate> countedOn(LocalDate today) {
        return isInstalled() ? doneOn(today) : ruleDay();
    }

    /** Whether the visit is still to come. */
    public boolean isBooked() {
        return stage != Stage.CANCELLED && !isInstalled();
    }

    /**
     * The day that counts for rules: of installation where known, otherwise of the planned visit.
     */
    public Optional<LocalDate> ruleDay() {
        return installedOn.or(visit::on);
    }

    /**
     * The day on which the crew has the job: of the visit, or where no visit is told of the
     * installation.
     */
    public Optional<LocalDate> crewDay() {
        return visit.on().or(() -> installedOn);
    }

    /** What the federal register says of the heater on the day that counts. */
    public Optional<Listing> listing() {
        return heater.product().flatMap(product -> ruleDay().flatMap(product::listing));
    }

    /** Whether something was taken out. */
    public boolean replacesHeater() {
        return oldHeater.map(old -> old.kind() != OldKind.NONE).orElse(false);
    }
}
