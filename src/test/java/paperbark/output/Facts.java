package paperbark.output;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Step;
import paperbark.finding.RuleRef;
import paperbark.firm.Buyer;
import paperbark.firm.Firm;
import paperbark.firm.Licence;
import paperbark.firm.Maker;
import paperbark.firm.MoneyPolicy;
import paperbark.firm.Offer;
import paperbark.firm.OfferTerms;
import paperbark.firm.Person;
import paperbark.firm.Product;
import paperbark.firm.Seller;
import paperbark.firm.StatePaper;
import paperbark.job.BenefitForm;
import paperbark.job.Claim;
import paperbark.job.Heater;
import paperbark.job.OldHeater;
import paperbark.job.OldKind;
import paperbark.job.Owner;
import paperbark.job.Payment;
import paperbark.job.Trades;
import paperbark.offer.Expected;
import paperbark.offer.Split;
import paperbark.value.Abn;
import paperbark.value.AccountNumber;
import paperbark.value.Acn;
import paperbark.value.Address;
import paperbark.value.Boost;
import paperbark.value.Bsb;
import paperbark.value.DateRange;
import paperbark.value.Email;
import paperbark.value.ExactMoney;
import paperbark.value.HeaterKind;
import paperbark.value.Money;
import paperbark.value.Phone;
import paperbark.value.Postcode;
import paperbark.value.SchemeName;
import paperbark.value.Serial;
import paperbark.value.State;
import paperbark.value.Trade;

/** People, firms and heaters that do not exist, for made-up jobs. */
final class Facts {
    private Facts() {}

    static Firm firm() {
        return new Firm(
                "Saltmarsh Hot Water Pty Ltd",
                Abn.parse("99 000 000 000").toOptional().orElseThrow(),
                Acn.parse("000 000 019").toOptional(),
                true,
                address("12 Samphire Street", "Ballan", State.VIC, "3342"),
                Phone.parse("03 5550 1234").toOptional(),
                Phone.parse("0491 570 006").toOptional(),
                Email.parse("office@example.com").toOptional(),
                Optional.of(6),
                Optional.of("Our visit costs you nothing."),
                false,
                false,
                Optional.of("Saltmarsh Hot Water"),
                Bsb.parse("000-000").toOptional(),
                AccountNumber.parse("1234567").toOptional(),
                MoneyPolicy.USUAL);
    }

    static Owner owner(String name) {
        return new Owner(
                Optional.of(name),
                none(),
                none(),
                Optional.of(false),
                Phone.parse("0491 570 156").toOptional(),
                Email.parse("owner@example.com").toOptional(),
                address("PO Box 9", "Bacchus Marsh", State.VIC, "3340"),
                Optional.empty());
    }

    static Heater heater(Product product) {
        return new Heater(
                Optional.of(product.maker()),
                Optional.of(product.model()),
                Optional.of(maker(product.maker(), Optional.of("ternlight"))),
                Optional.of(product),
                Serial.parse("TL-300-004417").toOptional(),
                Stream.of("EV-22-81003", "EV-22-81004")
                        .map(s -> Serial.parse(s).toOptional().orElseThrow())
                        .toList(),
                none(),
                false,
                true,
                none(),
                none(),
                none());
    }

    static Product tubes() {
        return new Product(
                "Ternlight",
                "TL-300-EV44",
                HeaterKind.SOLAR_TUBES,
                Boost.ELECTRIC,
                300,
                44,
                List.of(),
                none(),
                none(),
                Optional.of(7),
                Optional.of(10),
                Optional.of(2));
    }

    static Product heatPump() {
        return new Product(
                "Dunlin",
                "DHP-270",
                HeaterKind.HEAT_PUMP,
                Boost.ELECTRIC,
                270,
                0,
                List.of(),
                none(),
                none(),
                Optional.of(5),
                Optional.of(5),
                Optional.of(2));
    }

    static Maker maker(String name, Optional<String> variant) {
        return new Maker(
                name,
                address("88 Tern Parade", "Sunshine", State.VIC, "3020"),
                Phone.parse("03 7010 4321").toOptional(),
                Email.parse("warranty@example.com").toOptional(),
                Optional.of("We pay the post of the part."),
                variant,
                Optional.empty());
    }

    static Trades trades(State state) {
        Person electrician =
                new Person(
                        "Cordelia Sparkwhistle",
                        Phone.parse("0491 570 158").toOptional(),
                        List.of(
                                new Licence(
                                        Trade.ELECTRICAL,
                                        "A-77120",
                                        Optional.of("A"),
                                        state,
                                        DateRange.ALWAYS)));
        return new Trades(
                Optional.of(plumber(state)),
                plumber(state).licences().stream().findFirst(),
                Optional.of(electrician),
                electrician.licences().stream().findFirst(),
                Optional.of(
                        new Seller(
                                "Saltmarsh Hot Water Pty Ltd",
                                address("12 Samphire Street", "Ballan", State.VIC, "3342"),
                                Phone.parse("03 5550 1234").toOptional())));
    }

    static Person plumber(State state) {
        return new Person(
                "Fergus Pipewhittle",
                Phone.parse("0491 570 157").toOptional(),
                List.of(
                        new Licence(
                                Trade.PLUMBING,
                                "L-40881",
                                Optional.empty(),
                                state,
                                DateRange.ALWAYS)));
    }

    static OldHeater oldHeater() {
        return new OldHeater(
                OldKind.ELECTRIC_STORAGE,
                Optional.of("Wattlefield"),
                Optional.of("WF-250"),
                Optional.of("8830012"),
                Optional.of("cut open with a saw and crushed"),
                Optional.of("scrap yard, receipt 5521"),
                Optional.of(CaseFiles.INSTALLED));
    }

    static Claim claim(Buyer buyer, int count, String benefit) {
        return new Claim(
                true,
                Optional.of(buyer),
                none(),
                Optional.of(count),
                Optional.of(Money.of(benefit)));
    }

    static Payment payment() {
        return new Payment(
                Optional.of(Money.of("5890.00")),
                Optional.of(Money.of("4210.00")),
                Optional.of(BenefitForm.DISCOUNT),
                Optional.of("W Quokkaby"),
                Bsb.parse("000-000").toOptional(),
                AccountNumber.parse("987654321").toOptional());
    }

    static Buyer kestrel() {
        return buyer("Kestrel Certificates", Map.of(SchemeName.STC, "kestrel"));
    }

    static Buyer pipit() {
        return buyer("Pipit and Wren", Map.of());
    }

    private static Buyer buyer(String name, Map<SchemeName, String> forms) {
        return new Buyer(
                name,
                none(),
                Map.of(SchemeName.STC, "RA-00017", SchemeName.VEEC, "AP-00017"),
                address("3 Feather Court", "Geelong", State.VIC, "3220"),
                Phone.parse("03 7010 1111").toOptional(),
                Email.parse("papers@example.com").toOptional(),
                forms,
                Optional.empty(),
                false);
    }

    static Expected expected(SchemeName scheme, Buyer buyer, int count, String gross) {
        Offer offer =
                new Offer(
                        buyer.name(),
                        scheme,
                        DateRange.ALWAYS,
                        new ExactMoney(new BigDecimal("37.5")),
                        Money.of("10.00"),
                        none(),
                        none(),
                        14,
                        OfferTerms.PLAIN,
                        3);
        return new Expected(
                scheme,
                buyer,
                offer,
                count,
                Money.of(gross),
                Money.of("10.00"),
                Money.ZERO,
                Money.of(gross).minus(Money.of("10.00")),
                new Split(
                        Money.ZERO,
                        Money.ZERO,
                        Money.of(gross).minus(Money.of("10.00")),
                        Money.ZERO,
                        Money.ZERO,
                        Money.ZERO,
                        Money.ZERO),
                LocalDate.of(2026, 12, 9),
                none(),
                none());
    }

    static Expected veecExpected() {
        return expected(SchemeName.VEEC, pipit(), 25, "1875.00");
    }

    static Entitlement stc(boolean provisional) {
        RuleRef years =
                new RuleRef(
                        "stc/years.csv",
                        5,
                        "Renewable Energy (Electricity) Regulations 2001",
                        "reg 19BF",
                        "derived",
                        "",
                        "");
        RuleRef listing =
                new RuleRef("products.csv", 7, "The firm's products table", "", "demo", "", "");
        return new Entitlement(
                SchemeName.STC,
                Optional.of(13),
                Optional.of(4),
                none(),
                Optional.of(LocalDate.of(2027, 11, 17)),
                provisional,
                List.of(
                        new Step("Zone", "postcode 3342, solar", "4", List.of(years)),
                        new Step("STCs on the ten-year basis", "zone 4", "27", List.of(listing)),
                        new Step(
                                "STCs for this job",
                                "27 x 5 / 10 = 13.5, fractions dropped",
                                "13",
                                List.of(years))));
    }

    static Entitlement veec() {
        RuleRef table =
                new RuleRef(
                        "veec/abatement.csv", 2, "Made-up abatement table", "1C", "demo", "", "");
        return new Entitlement(
                SchemeName.VEEC,
                Optional.of(25),
                Optional.of(4),
                Optional.of("1C"),
                Optional.of(LocalDate.of(2027, 6, 30)),
                false,
                List.of(
                        new Step("Activity", "electric storage replaced by solar", "1C", List.of()),
                        new Step(
                                "Reduction in tonnes",
                                "0.393 x (80 - 1.2 x 9.1 - 2.6 x 0.4) = 26.7",
                                "25",
                                List.of(table))));
    }

    static List<StatePaper> statePapers() {
        return List.of(
                new StatePaper(
                        State.VIC,
                        Trade.PLUMBING,
                        "Compliance certificate",
                        0,
                        5,
                        false,
                        "Building Act 1993 s 221ZH"),
                new StatePaper(
                        State.VIC,
                        Trade.ELECTRICAL,
                        "Certificate of electrical safety",
                        0,
                        30,
                        false,
                        "Energy Safe Victoria"));
    }

    static Address address(String street, String suburb, State state, String postcode) {
        return new Address(
                Optional.of(street),
                Optional.of(suburb),
                Optional.of(state),
                Optional.of(new Postcode(postcode)));
    }

    private static <T> Optional<T> none() {
        return Optional.empty();
    }
}
