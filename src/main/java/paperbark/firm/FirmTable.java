package paperbark.firm;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.value.Abn;
import paperbark.value.AccountNumber;
import paperbark.value.Acn;
import paperbark.value.Address;
import paperbark.value.Email;
import paperbark.value.Money;
import paperbark.value.Parsed;
import paperbark.value.State;
import paperbark.value.WholeNumber;

/** The table of the firm itself: a fact a row. */
final class FirmTable {
    static final TableShape SHAPE = new TableShape("firm", List.of("fact", "value"), List.of());

    private static final String TIME_ZONE = "time zone";

    static final List<String> FACTS =
            List.of(
                    "name",
                    "abn",
                    "acn",
                    "gst registered",
                    "street",
                    "suburb",
                    "state",
                    "postcode",
                    "phone",
                    "after hours",
                    "email",
                    "workmanship years",
                    "claim costs",
                    "owners copies",
                    "fillable sheets",
                    "account name",
                    "bsb",
                    "account",
                    "offer policy",
                    "preferred buyer",
                    "preferred unless beaten by",
                    "cost of money",
                    "gst rounding",
                    "lower count",
                    TIME_ZONE);

    private static final String VALUE = "value";
    private static final BigDecimal HIGHEST_RATE = BigDecimal.valueOf(100);

    private final Map<String, TableRow> rows = new HashMap<>();

    private FirmTable() {}

    /** The firm; empty, with a stop, when its name or ABN is missing or wrong. */
    static Optional<Firm> read(OpenTable table, List<Finding> findings) {
        FirmTable facts = of(table);
        // Whoever asks for the day has read it by now; here it is only looked over.
        facts.zone();
        return facts.firm(table, findings);
    }

    /** The zone that the firm's clocks show: the one it names, or its state's. */
    static Optional<ZoneId> zone(OpenTable table) {
        return of(table).zone();
    }

    private Optional<ZoneId> zone() {
        return fact(TIME_ZONE, FirmTable::zone)
                .or(() -> fact("state", State::parse).map(FirmTable::zone));
    }

    private static Parsed<ZoneId> zone(String text) {
        return ZoneId.getAvailableZoneIds().contains(text.strip())
                ? Parsed.ok(ZoneId.of(text.strip()))
                : Parsed.bad(
                        "No time zone has this name.",
                        "Type it like Australia/Melbourne, or leave the row out for your state's.");
    }

    private static ZoneId zone(State state) {
        return ZoneId.of(
                "Australia/"
                        + switch (state) {
                            case NSW, ACT -> "Sydney";
                            case VIC -> "Melbourne";
                            case QLD -> "Brisbane";
                            case SA -> "Adelaide";
                            case WA -> "Perth";
                            case TAS -> "Hobart";
                            case NT -> "Darwin";
                        });
    }

    private static FirmTable of(OpenTable table) {
        FirmTable facts = new FirmTable();
        TakenNames names = new TakenNames();
        for (TableRow row : table.rows()) {
            row.neededText("fact")
                    .ifPresent(
                            fact -> {
                                names.take(plain(fact), row);
                                facts.add(plain(fact), row);
                            });
        }
        return facts;
    }

    private static String plain(String fact) {
        return TakenNames.key(fact.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", " "));
    }

    private void add(String fact, TableRow row) {
        if (!FACTS.contains(fact)) {
            row.wrong(
                    "fact",
                    "No fact of the firm has this name.",
                    "Name one of: " + String.join(", ", FACTS) + ".");
        } else if (row.isSound()) {
            rows.put(fact, row);
        }
    }

    private Optional<Firm> firm(OpenTable table, List<Finding> findings) {
        Optional<String> name = fact("name", Parsed::ok);
        Optional<Abn> abn = fact("abn", Abn::parse);
        if (name.isEmpty() || abn.isEmpty()) {
            findings.add(unnamed(table));
            return Optional.empty();
        }
        return Optional.of(
                new Firm(
                        name.get(),
                        abn.get(),
                        acn(abn.get()),
                        fact("gst registered", CellText::yesNo).orElse(false),
                        address(),
                        row("phone").flatMap(row -> row.phone(VALUE)),
                        row("after hours").flatMap(row -> row.phone(VALUE)),
                        fact("email", Email::parse),
                        fact("workmanship years", WholeNumber::parse),
                        fact("claim costs", Parsed::ok),
                        fact("owners copies", CellText::yesNo).orElse(false),
                        fact("fillable sheets", CellText::yesNo).orElse(false),
                        fact("account name", Parsed::ok),
                        bankRow("bsb").flatMap(row -> row.bsb(VALUE)),
                        bankRow("account")
                                .flatMap(row -> row.optional(VALUE, AccountNumber::parse)),
                        money()));
    }

    private MoneyPolicy money() {
        Optional<OfferPolicy> choice =
                fact("offer policy", CellText.oneOf(OfferPolicy.values(), OfferPolicy::word));
        Optional<String> preferred = fact("preferred buyer", Parsed::ok);
        if (choice.equals(Optional.of(OfferPolicy.PREFERRED)) && preferred.isEmpty()) {
            rows.get("offer policy")
                    .wrong(
                            VALUE,
                            "The preferred buyer is to be taken, but none is named.",
                            "Give the firm's table a row \"preferred buyer\".");
            choice = Optional.empty();
        }
        return new MoneyPolicy(
                choice.orElse(OfferPolicy.HIGHEST_NET),
                preferred,
                fact("preferred unless beaten by", FirmTable::notNegative).orElse(Money.ZERO),
                fact("cost of money", FirmTable::percent).orElse(BigDecimal.ZERO),
                fact("gst rounding", CellText.oneOf(GstRounding.values(), GstRounding::word))
                        .orElse(GstRounding.TOTAL_INVOICE),
                fact("lower count", CellText.oneOf(CountPolicy.values(), CountPolicy::word))
                        .orElse(CountPolicy.RULES));
    }

    private static Parsed<Money> notNegative(String text) {
        Parsed<Money> amount = Money.parse(text);
        return amount.toOptional().map(Money::isNegative).orElse(false)
                ? Parsed.bad("The amount is below zero.", "Type the amount without a minus.")
                : amount;
    }

    private static Parsed<BigDecimal> percent(String text) {
        Parsed<BigDecimal> number = CellText.decimal(text.replaceFirst(" ?%$", ""));
        return number.toOptional().map(n -> n.compareTo(HIGHEST_RATE) > 0).orElse(false)
                ? Parsed.bad(
                        "A cost of money above 100 % a year is a slip.",
                        "Type percent a year, such as 9.5.")
                : number;
    }

    private Address address() {
        return new Address(
                fact("street", Parsed::ok),
                fact("suburb", Parsed::ok),
                fact("state", State::parse),
                row("postcode").flatMap(row -> row.postcode(VALUE)));
    }

    private Optional<Acn> acn(Abn abn) {
        Optional<Acn> acn =
                row("acn").flatMap(row -> row.value(VALUE, FindingCode.ACN_WRONG, Acn::parse));
        if (acn.isPresent() && !abn.lastNine().equals(acn.get().digits())) {
            rows.get("acn")
                    .refuse(
                            VALUE,
                            FindingCode.ACN_WRONG,
                            "A company's ABN ends with its ACN, and this one does not.",
                            "Compare both numbers with the company's papers.");
            return Optional.empty();
        }
        return acn;
    }

    private <T> Optional<T> fact(String fact, Function<String, Parsed<T>> parse) {
        return row(fact).flatMap(row -> row.optional(VALUE, parse));
    }

    private Optional<TableRow> row(String fact) {
        return Optional.ofNullable(rows.get(fact));
    }

    private Optional<TableRow> bankRow(String fact) {
        return row(fact).map(row -> row.confidential(VALUE));
    }

    private static Finding unnamed(OpenTable table) {
        return Finding.of(
                        FindingCode.TABLE_ROW_WRONG,
                        table.place(),
                        "The firm's name or its ABN is missing or cannot be read.",
                        "Give the firm's table a row \"name\" and a row \"abn\" with its 11-digit ABN.")
                .as(Severity.STOP)
                .holding(Set.of(Concern.REGISTER));
    }
}
