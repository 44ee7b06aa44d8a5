package paperbark.job;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.firm.Product;
import paperbark.firm.Products;
import paperbark.sheet.Column;
import paperbark.value.Address;
import paperbark.value.Money;
import paperbark.value.Postcode;
import paperbark.value.SchemeName;
import paperbark.value.Serial;
import paperbark.value.State;

/**
 * Builds jobs for tests. A new one is complete and clean; each {@code with} changes it in place:
 *
 * <pre>{@code
 * Job job = Jobs.installed().withPostcode("3342").withInstalledOn("2026-11-20").job();
 * }</pre>
 */
public final class Jobs {
    /**
     * File, sheet and row of every job built here; the columns stand in the order of the fields.
     */
    public static final Origin ORIGIN =
            new Origin("week.xlsx", "Week 47", 14, columns(), false, Set.of());

    private static final Claim CLAIMED = claim(true, Optional.empty(), Optional.empty());

    private String reference = "SB-1032";
    private Stage stage = Stage.INSTALLED;
    private Optional<LocalDate> visitOn = Optional.of(LocalDate.of(2026, 11, 20));
    private Optional<LocalDate> installedOn = visitOn;
    private Optional<LocalDate> signedOn = visitOn;
    private Optional<State> state = Optional.of(State.VIC);
    private Optional<Postcode> postcode = Optional.of(new Postcode("3342"));
    private Optional<Product> product = Optional.of(Products.heatPump().product());
    private boolean secondHand;
    private boolean complete = true;
    private Optional<LocalDate> declarationsOn = Optional.empty();
    private Optional<OldHeater> oldHeater = Optional.of(old(OldKind.ELECTRIC_STORAGE));
    private final Map<SchemeName, Claim> claims = new EnumMap<>(SchemeName.class);
    private Optional<Money> coPayment = Optional.of(Money.of("350.00"));
    private Optional<String> corrects = Optional.empty();
    private final Set<Field> unread = new HashSet<>();

    private Jobs() {
        claims.put(SchemeName.STC, CLAIMED);
        claims.put(SchemeName.VEEC, CLAIMED);
    }

    /** The cell of a field as the working names it, e.g. {@code cell F14}. */
    public static String cell(Field field) {
        return "cell " + ORIGIN.cell(field).cellAddress();
    }

    /**
     * A heat pump put in at Ballan (3342, zone 4) on 20 Nov 2026 in place of an electric storage
     * heater, with STCs and VEECs claimed.
     */
    public static Jobs installed() {
        return new Jobs();
    }

    /** The same with the visit planned for 20 Nov 2026 and nothing known of the work. */
    public static Jobs booked() {
        Jobs jobs = new Jobs();
        jobs.stage = Stage.BOOKED;
        jobs.installedOn = Optional.empty();
        jobs.signedOn = Optional.empty();
        jobs.oldHeater = Optional.of(bare(OldKind.ELECTRIC_STORAGE));
        jobs.coPayment = Optional.empty();
        return jobs;
    }

    /** Another job number. */
    public Jobs withReference(String number) {
        reference = number;
        return this;
    }

    /** Installed on that day, ISO form; the visit was planned for it as well. */
    public Jobs withInstalledOn(String day) {
        return withInstalledOn(LocalDate.parse(day));
    }

    /** Installed on that day; the visit was planned for it as well. */
    public Jobs withInstalledOn(LocalDate day) {
        installedOn = Optional.of(day);
        visitOn = installedOn;
        return this;
    }

    /** Visit planned for that day, ISO form. */
    public Jobs withVisitOn(String day) {
        visitOn = Optional.of(LocalDate.parse(day));
        return this;
    }

    /** Neither installed nor planned on any known day. */
    public Jobs withoutDays() {
        installedOn = Optional.empty();
        visitOn = Optional.empty();
        return this;
    }

    /** Assignment signed on that day, ISO form. */
    public Jobs withSignedOn(String day) {
        signedOn = Optional.of(LocalDate.parse(day));
        return this;
    }

    /** Site in that state. */
    public Jobs withState(State where) {
        state = Optional.of(where);
        return this;
    }

    /** Site with that postcode. */
    public Jobs withPostcode(String digits) {
        postcode = Optional.of(new Postcode(digits));
        return this;
    }

    /** Site without a usable postcode. */
    public Jobs withoutPostcode() {
        postcode = Optional.empty();
        return this;
    }

    /** Another heater. */
    public Jobs withProduct(Products products) {
        product = Optional.of(products.product());
        return this;
    }

    /** A heater that the products table does not know. */
    public Jobs withoutProduct() {
        product = Optional.empty();
        return this;
    }

    /** A heater that was used before. */
    public Jobs withSecondHand() {
        secondHand = true;
        return this;
    }

    /** A part of a system. */
    public Jobs withIncompleteSystem() {
        complete = false;
        return this;
    }

    /** Declarations for a large solar heater made on that day, ISO form. */
    public Jobs withDeclarationsOn(String day) {
        declarationsOn = Optional.of(LocalDate.parse(day));
        return this;
    }

    /** That kind taken out, with how it was disabled and where it went. */
    public Jobs withOldHeater(OldKind kind) {
        oldHeater = Optional.of(old(kind));
        return this;
    }

    /** That kind taken out, with nothing else said. */
    public Jobs withBareOldHeater(OldKind kind) {
        oldHeater = Optional.of(bare(kind));
        return this;
    }

    /** Old heater put out of use on that day, ISO form. */
    public Jobs withOldRemovedOn(String day) {
        oldHeater =
                oldHeater.map(
                        o ->
                                new OldHeater(
                                        o.kind(),
                                        o.maker(),
                                        o.model(),
                                        o.serial(),
                                        o.disabledHow(),
                                        o.disposal(),
                                        Optional.of(LocalDate.parse(day))));
        return this;
    }

    /** Old heater put out of use in that way and gone there. */
    public Jobs withOldHeaterEnd(Optional<String> disabledHow, Optional<String> disposal) {
        oldHeater =
                oldHeater.map(
                        o ->
                                new OldHeater(
                                        o.kind(),
                                        o.maker(),
                                        o.model(),
                                        o.serial(),
                                        disabledHow,
                                        disposal,
                                        o.removedOn()));
        return this;
    }

    /** Nothing known of an old heater. */
    public Jobs withoutOldHeater() {
        oldHeater = Optional.empty();
        return this;
    }

    /** The scheme claimed with that number of certificates. */
    public Jobs withCount(SchemeName scheme, int declared) {
        claims.put(scheme, claim(true, Optional.empty(), Optional.of(declared)));
        return this;
    }

    /** STCs claimed with that zone. */
    public Jobs withStcZone(int declared) {
        claims.put(SchemeName.STC, claim(true, Optional.of(declared), Optional.empty()));
        return this;
    }

    /** The scheme not claimed. */
    public Jobs withoutClaim(SchemeName scheme) {
        claims.put(scheme, claim(false, Optional.empty(), Optional.empty()));
        return this;
    }

    /** Co-payment of the owner in dollars. */
    public Jobs withCoPayment(String dollars) {
        coPayment = Optional.of(Money.of(dollars));
        return this;
    }

    /** No co-payment noted. */
    public Jobs withoutCoPayment() {
        coPayment = Optional.empty();
        return this;
    }

    /** What an earlier paper got wrong. */
    public Jobs withCorrects(String what) {
        corrects = Optional.of(what);
        return this;
    }

    /** Fields whose cells could not be used. */
    public Jobs withUnread(Field... fields) {
        unread.addAll(Arrays.asList(fields));
        return this;
    }

    /** The job. */
    public Job job() {
        return new Job(
                ORIGIN,
                reference,
                stage,
                new Visit(visitOn, Optional.of("Red"), Optional.of(1), Optional.empty()),
                installedOn,
                signedOn,
                corrects,
                owner(),
                new Site(address(), Optional.empty(), Optional.of(false)),
                heater(),
                new Trades(
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                new Compliance(
                        Optional.of("PC-100"), installedOn, Optional.of("EC-100"), installedOn),
                oldHeater,
                claims,
                new Payment(
                        Optional.of(Money.of("5500.00")),
                        coPayment,
                        Optional.of(BenefitForm.DISCOUNT),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                unread);
    }

    private Owner owner() {
        return new Owner(
                Optional.of("Marigold Teacup"),
                Optional.empty(),
                Optional.empty(),
                Optional.of(false),
                Optional.empty(),
                Optional.empty(),
                address(),
                Optional.empty());
    }

    private Address address() {
        return new Address(Optional.of("4 Heron Lane"), Optional.of("Ballan"), state, postcode);
    }

    private Heater heater() {
        return new Heater(
                product.map(Product::maker),
                product.map(Product::model),
                Optional.empty(),
                product,
                Serial.parse("DN-2231").toOptional(),
                List.of(),
                Optional.empty(),
                secondHand,
                complete,
                declarationsOn,
                Optional.empty(),
                Optional.empty());
    }

    private static OldHeater old(OldKind kind) {
        OldHeater bare = bare(kind);
        return new OldHeater(
                bare.kind(),
                Optional.of("Oldmake"),
                Optional.of("OM-250"),
                Optional.empty(),
                Optional.of("drained and cut"),
                Optional.of("scrap yard"),
                Optional.empty());
    }

    private static OldHeater bare(OldKind kind) {
        return new OldHeater(
                kind,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Claim claim(boolean claimed, Optional<Integer> zone, Optional<Integer> count) {
        return new Claim(claimed, Optional.empty(), zone, count, Optional.of(Money.of("600.00")));
    }

    private static Map<Field, Column> columns() {
        Map<Field, Column> columns = new HashMap<>();
        for (Field field : Field.values()) {
            int index = columns.size() + 1;
            columns.put(field, new Column(index, letters(index), field.label()));
        }
        return columns;
    }

    private static String letters(int index) {
        int before = (index - 1) / 26;
        return (before == 0 ? "" : letters(before)) + (char) ('A' + (index - 1) % 26);
    }
}
