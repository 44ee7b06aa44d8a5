package paperbark.output;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Step;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.RuleRef;
import paperbark.firm.Buyer;
import paperbark.firm.Firm;
import paperbark.firm.MoneyPolicy;
import paperbark.firm.Offer;
import paperbark.firm.OfferTerms;
import paperbark.offer.Comparison;
import paperbark.offer.Expected;
import paperbark.offer.OwnerPrice;
import paperbark.offer.Quote;
import paperbark.offer.Split;
import paperbark.output.index.IndexPage;
import paperbark.output.index.IndexView;
import paperbark.value.Abn;
import paperbark.value.Address;
import paperbark.value.DateRange;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.Postcode;
import paperbark.value.Rounding;
import paperbark.value.SchemeName;
import paperbark.value.State;

/** Invented batches for tests of the workbooks and the index page. */
public final class BatchViews {
    /** The register of all batches made here. */
    public static final String REGISTER = "week-47.xlsx";

    /** Its sheet. */
    public static final String SHEET = "Week 47";

    /** The day of the run. */
    public static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private static final RuleRef DEEMING =
            new RuleRef(
                    "stc/years.csv",
                    18,
                    "Renewable Energy (Electricity) Regulations 2001",
                    "deeming period table",
                    "published",
                    "",
                    "");
    private static final RuleRef ZONES =
            new RuleRef("stc/zones.csv", 212, "Postcode zone list", "", "memory", "", "");
    private static final RuleRef LISTING =
            new RuleRef("products.csv", 4, "Sample product table", "", "demo", "", "");

    private BatchViews() {}

    /** The firm, registered for GST or not. */
    public static Firm firm(boolean gstRegistered) {
        return new Firm(
                "Saltmarsh Hot Water Pty Ltd",
                new Abn("99000000000"),
                Optional.empty(),
                gstRegistered,
                address("12 Samphire Track", "Ballan", "3342"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(5),
                Optional.empty(),
                false,
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                MoneyPolicy.USUAL);
    }

    /** A street address in Victoria. */
    public static Address address(String street, String suburb, String postcode) {
        return new Address(
                Optional.of(street),
                Optional.of(suburb),
                Optional.of(State.VIC),
                Optional.of(new Postcode(postcode)));
    }

    /** A certificate buyer. */
    public static Buyer buyer(String name) {
        return new Buyer(
                name,
                Optional.empty(),
                Map.of(),
                Address.UNKNOWN,
                Optional.empty(),
                Optional.empty(),
                Map.of(),
                Optional.empty(),
                false);
    }

    /** What all papers share. */
    public static BatchInfo info() {
        return new BatchInfo("2026-11-25-week-47", REGISTER, TODAY, "0.1.0");
    }

    /** A batch of the given jobs. */
    public static BatchView of(boolean gstRegistered, List<CaseFile> cases) {
        return of(gstRegistered, cases, List.of());
    }

    /** A batch of the given jobs with findings about files besides. */
    public static BatchView of(boolean gstRegistered, List<CaseFile> cases, List<Finding> others) {
        List<Finding> findings = new ArrayList<>(others);
        cases.forEach(c -> findings.addAll(c.findings()));
        List<RuleRef> rules =
                cases.stream()
                        .flatMap(c -> c.entitlements().all().stream())
                        .flatMap(e -> e.rules().stream())
                        .distinct()
                        .toList();
        return new BatchView(
                info(), firm(gstRegistered), cases, Finding.inOrder(findings), rules, List.of());
    }

    /** The index page of a batch that has its one print run. */
    public static String page(BatchView view) {
        return IndexPage.of(
                view,
                PrintRunFiles.of(view.cases().size()),
                List.of(
                        new IndexView.Workbook("summary.xlsx", "Summary (workbook)"),
                        new IndexView.Workbook(
                                "register-checked.xlsx", "Register with findings marked")),
                new IndexPage.Beside(Map.of(), Map.of()));
    }

    /** A handful of jobs: ready, booked, to be looked at, held, and one without a price. */
    public static BatchView week() {
        CaseFile ready =
                new Jobs("SB-1041", "Bill Example", "Ballan")
                        .row(4)
                        .installed(LocalDate.of(2026, 11, 20))
                        .stc(13, "Kestrel Certificates", "36.10")
                        .veec(22, "Pipit and Wren", "71.255")
                        .price("4400.00", "600.00")
                        .caseFile();
        CaseFile booked =
                new Jobs("SB-1042", "Maree Sample", "Gordon")
                        .row(5)
                        .visit(LocalDate.of(2026, 11, 27), "Heron", 2)
                        .stc(17, "Kestrel Certificates", "36.10")
                        .price("7700.00", "1000.00")
                        .discount("1000.00")
                        .toDo(
                                new ToDo("Tank serial", "installer", Optional.empty()),
                                new ToDo(
                                        "Plumbing compliance certificate number",
                                        "installer",
                                        Optional.of(LocalDate.of(2026, 12, 2))))
                        .caseFile();
        CaseFile look =
                new Jobs("SB-1043", "Fern Placeholder and Moss Placeholder", "Bacchus Marsh")
                        .row(6)
                        .installed(LocalDate.of(2025, 12, 8))
                        .stc(21, "Whimbrel Exchange", "35.95")
                        .price("5555.55", "754.95")
                        .finding(
                                Finding.of(
                                                FindingCode.CLAIM_CLOSING,
                                                cell(6, "Installed", "J6"),
                                                "The claim closes in 12 days.",
                                                "Lodge it this week.")
                                        .seeing("2025-12-08"),
                                Finding.of(
                                                FindingCode.PHONE_WRONG,
                                                cell(6, "Phone", "E6"),
                                                "No Australian telephone number has this form.",
                                                "Type the number with its area code, e.g. 03 5550"
                                                        + " 1234.")
                                        .seeing("5550 12"))
                        .caseFile();
        CaseFile held =
                new Jobs("SB-1044", "Dune Nobody", "Myrniong")
                        .row(7)
                        .installed(LocalDate.of(2026, 11, 18))
                        .stc(13, "Kestrel Certificates", "36.10")
                        .veec(18, "Pipit and Wren", "71.255")
                        .price("4950.00", "469.30")
                        .finding(twice())
                        .caseFile();
        CaseFile unpriced = new Jobs("SB-1045", "Reed Pretend", "Greendale").row(8).caseFile();
        return of(
                true,
                List.of(ready, booked, look, held, unpriced),
                List.of(
                        Finding.of(
                                FindingCode.COLUMN_UNKNOWN,
                                new Place.InColumn(REGISTER, SHEET, "Dog on site?", "L"),
                                "The column \"Dog on site?\" is not used.",
                                ""),
                        Finding.of(
                                FindingCode.TABLE_ROW_WRONG,
                                new Place.InRule("offers.csv", 6),
                                "The offer ends before it begins.",
                                "Correct the dates of the offer.")));
    }

    /** The stop of a serial claimed twice. */
    public static Finding twice() {
        return Finding.of(
                        FindingCode.SERIAL_TWICE,
                        cell(7, "Tank serial", "H7"),
                        "Two rows of the register name this serial.",
                        "Read the number off both tanks again.")
                .seeing("TD-2231")
                .by(LISTING)
                .alsoAt(List.of(cell(4, "Tank serial", "H4")));
    }

    /** A cell of the register. */
    public static Place cell(int row, String heading, String address) {
        return new Place.InCell(REGISTER, SHEET, row, heading, address);
    }

    static Expected expected(SchemeName scheme, String buyer, int count, String price) {
        ExactMoney each = new ExactMoney(new BigDecimal(price));
        Money gross = each.times(BigDecimal.valueOf(count)).round(Rounding.GST_ACT);
        Money fee = Money.of("15.00");
        Offer offer =
                new Offer(
                        buyer,
                        scheme,
                        DateRange.ALWAYS,
                        each,
                        fee,
                        Optional.empty(),
                        Optional.empty(),
                        14,
                        OfferTerms.PLAIN,
                        3);
        return new Expected(
                scheme,
                buyer(buyer),
                offer,
                count,
                gross,
                fee,
                Money.ZERO,
                gross.minus(fee),
                new Split(
                        Money.ZERO,
                        Money.ZERO,
                        gross.minus(fee),
                        Money.ZERO,
                        Money.ZERO,
                        Money.ZERO,
                        Money.ZERO),
                TODAY.plusDays(14),
                Optional.empty(),
                Optional.empty());
    }

    /** The offer taken and one that pays a dollar less for each certificate, a week sooner. */
    static Comparison comparison(Expected taken) {
        Offer o = taken.offer();
        Offer less =
                new Offer(
                        "Plover Partners",
                        o.scheme(),
                        DateRange.ALWAYS,
                        new ExactMoney(o.pricePerCertificate().amount().subtract(BigDecimal.ONE)),
                        Money.ZERO,
                        Optional.empty(),
                        Optional.of(50),
                        7,
                        OfferTerms.PLAIN,
                        4);
        Money gross =
                less.pricePerCertificate()
                        .times(BigDecimal.valueOf(taken.certificates()))
                        .round(Rounding.GST_ACT);
        Quote first = quote(o, taken.certificates(), taken.gross(), taken.fee());
        Quote second = quote(less, taken.certificates(), gross, Money.ZERO);
        boolean beaten = second.worth().compareTo(first.worth()) > 0;
        return new Comparison(
                taken.scheme(),
                taken.certificates(),
                beaten ? List.of(second, first) : List.of(first, second),
                Optional.of(first),
                Optional.of(second),
                beaten ? "fixed in the register" : "highest net",
                beaten,
                List.of());
    }

    private static Quote quote(Offer offer, int count, Money gross, Money fee) {
        Money net = gross.minus(fee);
        return new Quote(
                offer,
                count,
                gross,
                fee,
                Money.ZERO,
                new Split(
                        Money.ZERO,
                        Money.ZERO,
                        net,
                        Money.ZERO,
                        Money.ZERO,
                        Money.ZERO,
                        Money.ZERO),
                offer.paymentDays(),
                TODAY.plusDays(offer.paymentDays()),
                Money.ZERO,
                11);
    }

    static OwnerPrice price(String full, String assigned, boolean gstRegistered) {
        Money price = Money.of(full);
        Money gst =
                gstRegistered
                        ? new Money(
                                price.amount()
                                        .divide(BigDecimal.valueOf(11), 2, Rounding.GST_ACT.mode()))
                        : Money.ZERO;
        return new OwnerPrice(price, Map.of(SchemeName.STC, Money.of(assigned)), gst, 11);
    }

    static Entitlement entitlement(SchemeName scheme, int count, Optional<LocalDate> installed) {
        List<Step> steps =
                List.of(
                        new Step("Zone", "postcode 3342", "4", List.of(ZONES)),
                        new Step(
                                scheme.word() + "s for this job",
                                "27 x 5 / 10 = 13.5, fractions dropped",
                                Integer.toString(count),
                                scheme == SchemeName.STC
                                        ? List.of(DEEMING)
                                        : List.of(DEEMING, LISTING)));
        return new Entitlement(
                scheme,
                Optional.of(count),
                Optional.of(4),
                scheme == SchemeName.VEEC ? Optional.of("1D") : Optional.empty(),
                installed.map(day -> day.plusYears(1).minusDays(1)),
                installed.isEmpty(),
                steps);
    }

    static List<Paper> papers(List<SchemeName> schemes, List<Finding> findings) {
        return PaperKind.values().stream()
                .filter(kind -> kind.scheme().map(schemes::contains).orElse(true))
                .map(kind -> new Paper(kind, "default", blocking(kind, findings)))
                .toList();
    }

    private static List<Finding> blocking(PaperKind kind, List<Finding> findings) {
        return findings.stream()
                .filter(
                        f ->
                                f.holds().contains(Concern.JOB)
                                        || kind.concern()
                                                .filter(c -> f.holds().contains(c))
                                                .isPresent())
                .toList();
    }

    static Deadline deadline(String what, LocalDate day) {
        return new Deadline(what, day, day.toEpochDay() - TODAY.toEpochDay());
    }
}
