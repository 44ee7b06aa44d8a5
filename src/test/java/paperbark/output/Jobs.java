package paperbark.output;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Entitlements;
import paperbark.finding.Finding;
import paperbark.job.BenefitForm;
import paperbark.job.Claim;
import paperbark.job.Compliance;
import paperbark.job.Field;
import paperbark.job.Heater;
import paperbark.job.Job;
import paperbark.job.Origin;
import paperbark.job.Owner;
import paperbark.job.Payment;
import paperbark.job.Site;
import paperbark.job.Stage;
import paperbark.job.Trades;
import paperbark.job.Visit;
import paperbark.offer.Expected;
import paperbark.offer.OwnerPrice;
import paperbark.sheet.Column;
import paperbark.value.Email;
import paperbark.value.Money;
import paperbark.value.Phone;
import paperbark.value.SchemeName;

/** Builds one invented job with its case file. */
public final class Jobs {
    /** The owner's telephone, which the index page must never show. */
    public static final String PHONE = "0491 570 156";

    private static final Map<Field, Column> COLUMNS =
            Map.of(
                    Field.JOB, new Column(1, "A", "Job no."),
                    Field.OWNER_PHONE, new Column(5, "E", "Phone"),
                    Field.TANK_SERIAL, new Column(8, "H", "Tank serial"));

    private final String reference;
    private final String owner;
    private final String suburb;
    private int row = 4;
    private Optional<LocalDate> installed = Optional.empty();
    private Visit visit =
            new Visit(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    private boolean gstRegistered = true;
    private Optional<OwnerPrice> price = Optional.empty();
    private Optional<Money> benefit = Optional.empty();
    private final Map<SchemeName, Integer> counts = new EnumMap<>(SchemeName.class);
    private final List<Expected> expected = new ArrayList<>();
    private final List<ToDo> toDo = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    /** A booked job that claims nothing. */
    public Jobs(String reference, String owner, String suburb) {
        this.reference = reference;
        this.owner = owner;
        this.suburb = suburb;
    }

    /** In that row of the register. */
    public Jobs row(int number) {
        row = number;
        return this;
    }

    /** Installed on that day. */
    public Jobs installed(LocalDate day) {
        installed = Optional.of(day);
        return this;
    }

    /** Visited on that day by that crew. */
    public Jobs visit(LocalDate day, String crew, int order) {
        visit =
                new Visit(
                        Optional.of(day), Optional.of(crew), Optional.of(order), Optional.empty());
        return this;
    }

    /** Claims STCs. */
    public Jobs stc(int count, String buyer, String pricePerCertificate) {
        return claim(SchemeName.STC, count, buyer, pricePerCertificate);
    }

    /** Claims VEECs. */
    public Jobs veec(int count, String buyer, String pricePerCertificate) {
        return claim(SchemeName.VEEC, count, buyer, pricePerCertificate);
    }

    private Jobs claim(SchemeName scheme, int count, String buyer, String price) {
        counts.put(scheme, count);
        expected.add(BatchViews.expected(scheme, buyer, count, price));
        return this;
    }

    /** Sold at that price by a firm registered for GST. */
    public Jobs price(String full, String assigned) {
        price = Optional.of(BatchViews.price(full, assigned, gstRegistered));
        return this;
    }

    /** Sold at that price by a firm that is not registered for GST. */
    public Jobs priceWithoutGst(String full, String assigned) {
        gstRegistered = false;
        return price(full, assigned);
    }

    /** The register says that its one claim takes as much off the price. */
    public Jobs discount(String benefit) {
        this.benefit = Optional.of(Money.of(benefit));
        return this;
    }

    /** Lacking these facts. */
    public Jobs toDo(ToDo... missing) {
        toDo.addAll(List.of(missing));
        return this;
    }

    /** With these findings. */
    public Jobs finding(Finding... noticed) {
        for (Finding finding : noticed) {
            findings.add(finding.forJob(reference));
        }
        return this;
    }

    /** All that is known of the job. */
    public CaseFile caseFile() {
        List<Entitlement> entitlements = new ArrayList<>();
        counts.forEach((s, n) -> entitlements.add(BatchViews.entitlement(s, n, installed)));
        List<Deadline> deadlines =
                entitlements.stream()
                        .filter(e -> e.lastDay().isPresent())
                        .map(
                                e ->
                                        BatchViews.deadline(
                                                "Create " + e.scheme().word() + "s",
                                                e.lastDay().get()))
                        .sorted(Comparator.comparing(Deadline::lastDay))
                        .toList();
        return new CaseFile(
                BatchViews.info(),
                BatchViews.firm(gstRegistered),
                job(),
                new Entitlements(entitlements),
                expected,
                expected.stream().map(BatchViews::comparison).toList(),
                price,
                List.of(),
                deadlines,
                toDo,
                findings,
                BatchViews.papers(List.copyOf(counts.keySet()), findings),
                reference.replaceAll("[^A-Za-z0-9-]", "_") + "-a1b2c3.pdf",
                Set.of(),
                List.of());
    }

    private Job job() {
        return new Job(
                new Origin(BatchViews.REGISTER, BatchViews.SHEET, row, COLUMNS, false, Set.of()),
                reference,
                installed.isPresent() ? Stage.INSTALLED : Stage.BOOKED,
                visit,
                installed,
                installed,
                Optional.empty(),
                new Owner(
                        Optional.of(owner),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(false),
                        Optional.of(new Phone(PHONE)),
                        Optional.of(new Email("owner@example.com")),
                        BatchViews.address("4 Heron Lane", suburb, "3342"),
                        Optional.empty()),
                new Site(
                        BatchViews.address("4 Heron Lane", suburb, "3342"),
                        Optional.empty(),
                        Optional.empty()),
                heater(),
                new Trades(
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                new Compliance(
                        Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty()),
                Optional.empty(),
                Map.of(
                        SchemeName.STC, claim(SchemeName.STC),
                        SchemeName.VEEC, claim(SchemeName.VEEC)),
                new Payment(
                        price.map(OwnerPrice::fullPrice),
                        Optional.<Money>empty(),
                        benefit.map(taken -> BenefitForm.DISCOUNT),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                Set.of());
    }

    private static Heater heater() {
        return new Heater(
                Optional.of("Ternlight"),
                Optional.of("TL-300 E30"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                false,
                true,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private Claim claim(SchemeName scheme) {
        return new Claim(
                counts.containsKey(scheme),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                benefit.filter(taken -> counts.containsKey(scheme)));
    }
}
