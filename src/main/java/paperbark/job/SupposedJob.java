package paperbark.job;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.firm.FirmTables;
import paperbark.firm.Product;
import paperbark.rules.Rulebook;
import paperbark.value.Address;
import paperbark.value.Parsed;
import paperbark.value.Postcode;
import paperbark.value.SchemeName;
import paperbark.value.State;

/**
 * A job with other facts supposed, to see what it would earn then. Only what certificates come from
 * changes; people, prices and papers stay as they are. What the register says of the supposed facts
 * (zone, number of certificates, litres, collectors) is left out, for it speaks of the real ones.
 */
public final class SupposedJob {
    private final Job job;
    private final WhatIf whatIf;
    private final FirmTables tables;
    private final Set<Field> supposed = new HashSet<>();

    private SupposedJob(Job job, WhatIf whatIf, FirmTables tables) {
        this.job = job;
        this.whatIf = whatIf;
        this.tables = tables;
    }

    /**
     * The job as supposed; a maker or model that the firm's tables do not know is refused.
     *
     * @param job the real one
     * @param whatIf the other facts
     * @param tables for makers and models
     * @param rulebook for the state that goes with a postcode
     */
    public static Parsed<Job> of(Job job, WhatIf whatIf, FirmTables tables, Rulebook rulebook) {
        return new SupposedJob(job, whatIf, tables).suppose(rulebook);
    }

    private Parsed<Job> suppose(Rulebook rulebook) {
        if (whatIf.maker().isEmpty() && whatIf.model().isEmpty()) {
            return Parsed.ok(with(heater(Optional.empty()), rulebook));
        }
        return new SupposedProduct(job.heater(), whatIf, tables)
                .find()
                .map(product -> with(supposed(product), rulebook));
    }

    private Job with(Heater heater, Rulebook rulebook) {
        whatIf.day().ifPresent(day -> supposed.add(dayField()));
        Address address = address(rulebook);
        Optional<OldHeater> old = oldHeater();
        Set<Field> unread = new HashSet<>(job.unread());
        unread.removeAll(supposed);
        boolean visit = dayField() == Field.VISIT_DATE;
        return JobBuilder.builder(job)
                .origin(job.origin().supposing(supposed))
                .visit(
                        new Visit(
                                visit ? whatIf.day().or(job.visit()::on) : job.visit().on(),
                                job.visit().crew(),
                                job.visit().order(),
                                job.visit().note()))
                .installedOn(visit ? job.installedOn() : whatIf.day().or(job::installedOn))
                .signedOn(moved(job.signedOn()))
                .site(new Site(address, job.site().position(), job.site().business()))
                .heater(heater)
                .oldHeater(old)
                .claims(undeclared(job.claims()))
                .unread(unread)
                .build();
    }

    private Field dayField() {
        return job.isBooked() && job.installedOn().isEmpty()
                ? Field.VISIT_DATE
                : Field.INSTALLED_DATE;
    }

    /** The other days of the job move with its day, as they would if the whole job were moved. */
    private Optional<LocalDate> moved(Optional<LocalDate> other) {
        if (whatIf.day().isEmpty() || job.ruleDay().isEmpty()) {
            return other;
        }
        long days = ChronoUnit.DAYS.between(job.ruleDay().get(), whatIf.day().get());
        return other.map(day -> day.plusDays(days));
    }

    private Address address(Rulebook rulebook) {
        Address real = job.site().address();
        whatIf.postcode().ifPresent(postcode -> supposed.add(Field.SITE_POSTCODE));
        Optional<State> state =
                whatIf.state().or(() -> whatIf.postcode().flatMap(p -> otherState(p, rulebook)));
        state.ifPresent(s -> supposed.add(Field.SITE_STATE));
        return new Address(
                real.street(),
                real.suburb(),
                state.or(real::state),
                whatIf.postcode().or(real::postcode));
    }

    /** The state that the postcode lies in, where that cannot be the job's. */
    private Optional<State> otherState(Postcode postcode, Rulebook rulebook) {
        List<State> states =
                whatIf.day()
                        .or(job::ruleDay)
                        .flatMap(day -> rulebook.postcodeStates().on(day, postcode))
                        .map(row -> row.row().states())
                        .orElse(List.of());
        boolean fits = job.site().address().state().filter(states::contains).isPresent();
        return fits ? Optional.empty() : states.stream().findFirst();
    }

    private Optional<OldHeater> oldHeater() {
        Optional<LocalDate> removedOn = job.oldHeater().flatMap(OldHeater::removedOn);
        if (!moved(removedOn).equals(removedOn)) {
            supposed.add(Field.OLD_REMOVED_DATE);
        }
        whatIf.old().ifPresent(kind -> supposed.add(Field.OLD_KIND));
        OldHeater real = job.oldHeater().orElse(OldHeater.UNKNOWN);
        OldHeater old =
                OldHeaterBuilder.builder(real)
                        .kind(whatIf.old().orElse(real.kind()))
                        .removedOn(moved(removedOn))
                        .build();
        return old.equals(OldHeater.UNKNOWN) ? Optional.empty() : Optional.of(old);
    }

    private Heater supposed(Product product) {
        if (!tables.maker(product.maker()).equals(job.heater().maker())) {
            supposed.add(Field.MAKER);
        }
        supposed.add(Field.MODEL);
        return heater(Optional.of(product));
    }

    private Heater heater(Optional<Product> other) {
        Heater real = job.heater();
        Optional<String> maker = other.map(Product::maker);
        return HeaterBuilder.builder(real)
                .makerName(maker.or(real::makerName))
                .model(other.map(Product::model).or(real::model))
                .maker(maker.flatMap(tables::maker).or(real::maker))
                .product(other.or(real::product))
                .declarationsOn(moved(real.declarationsOn()))
                .litresSaid(Optional.empty())
                .collectorsSaid(Optional.empty())
                .build();
    }

    private static Map<SchemeName, Claim> undeclared(Map<SchemeName, Claim> claims) {
        Map<SchemeName, Claim> all = new EnumMap<>(claims);
        all.replaceAll((scheme, claim) -> undeclared(claim));
        return all;
    }

    private static Claim undeclared(Claim claim) {
        return ClaimBuilder.builder(claim)
                .declaredZone(Optional.empty())
                .declaredCount(Optional.empty())
                .build();
    }
}
