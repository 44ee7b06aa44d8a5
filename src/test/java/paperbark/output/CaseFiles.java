package paperbark.output;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Entitlements;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.firm.Firm;
import paperbark.firm.MoneyPolicy;
import paperbark.firm.Product;
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
import paperbark.offer.OwnerPrice;
import paperbark.sheet.Column;
import paperbark.value.Abn;
import paperbark.value.Address;
import paperbark.value.Money;
import paperbark.value.SchemeName;
import paperbark.value.State;

/** Made-up jobs for tests of paper: one with everything, one booked, one with hardly a fact. */
public final class CaseFiles {
    public static final LocalDate PREPARED = LocalDate.of(2026, 11, 25);
    public static final LocalDate INSTALLED = LocalDate.of(2026, 11, 18);

    private static final BatchInfo BATCH =
            new BatchInfo("2026-W48-a", "week-48.xlsx", PREPARED, "0.1.0");
    private static final Origin ORIGIN =
            new Origin(
                    "week-48.xlsx",
                    "Week 48",
                    14,
                    Map.of(Field.TANK_SERIAL, new Column(6, "F", "Tank no.")),
                    false,
                    Set.of());

    private CaseFiles() {}

    /** A Victorian solar job with every fact, both schemes claimed and findings of two kinds. */
    public static CaseFile installedSolar() {
        Product product = Facts.tubes();
        Job job =
                new Job(
                        ORIGIN,
                        "SB-1032",
                        Stage.INSTALLED,
                        new Visit(
                                Optional.of(INSTALLED),
                                Optional.of("Heron"),
                                Optional.of(2),
                                none()),
                        Optional.of(INSTALLED),
                        Optional.of(INSTALLED),
                        none(),
                        Facts.owner("Wilhelmina Quokkaby"),
                        new Site(
                                Facts.address("4 Heron Lane", "Ballan", State.VIC, "3342"),
                                Optional.of("north roof, behind the shed"),
                                Optional.of(false)),
                        Facts.heater(product),
                        Facts.trades(State.VIC),
                        new Compliance(
                                Optional.of("PC-770031"),
                                Optional.of(INSTALLED),
                                Optional.of("ES-552210"),
                                Optional.of(INSTALLED)),
                        Optional.of(Facts.oldHeater()),
                        Map.of(
                                SchemeName.STC, Facts.claim(Facts.kestrel(), 13, "480.00"),
                                SchemeName.VEEC, Facts.claim(Facts.pipit(), 25, "1200.00")),
                        Facts.payment(),
                        Set.of());
        return new CaseFile(
                BATCH,
                Facts.firm(),
                job,
                new Entitlements(List.of(Facts.stc(false), Facts.veec())),
                List.of(
                        Facts.expected(SchemeName.STC, Facts.kestrel(), 13, "487.50"),
                        Facts.veecExpected()),
                List.of(),
                Optional.of(
                        new OwnerPrice(
                                Money.of("5890.00"),
                                Map.of(
                                        SchemeName.STC, Money.of("480.00"),
                                        SchemeName.VEEC, Money.of("1200.00")),
                                Money.of("535.45"),
                                11)),
                Facts.statePapers(),
                List.of(
                        new Deadline("Lodge the plumbing compliance certificate", day(23), -2),
                        new Deadline("Create STCs", LocalDate.of(2027, 11, 17), 357)),
                List.of(
                        new ToDo("Copy of the photographs", "office", Optional.empty()),
                        new ToDo("Signature on the STC assignment", "owner", Optional.empty())),
                List.of(checkFinding(), note()),
                papers(
                        List.of(),
                        "ternlight",
                        "kestrel",
                        PaperKind.values().toArray(PaperKind[]::new)),
                "packs/SB-1032.pdf",
                Set.of(),
                List.of());
    }

    /** A booked heat pump job: nothing but the booking is known, and VEECs are held by a stop. */
    public static CaseFile bookedHeatPump() {
        Job job =
                new Job(
                        ORIGIN,
                        "SB-1040",
                        Stage.BOOKED,
                        new Visit(
                                Optional.of(day(30)),
                                Optional.of("Egret"),
                                Optional.of(1),
                                Optional.of("Gate sticks.")),
                        none(),
                        none(),
                        none(),
                        Facts.owner("Barnaby Tumblegum"),
                        new Site(
                                Facts.address("Lot 7 Lake Track", "Albury", State.NSW, "2640"),
                                none(),
                                none()),
                        new Heater(
                                Optional.of("Dunlin"),
                                Optional.of("DHP-270"),
                                Optional.of(Facts.maker("Dunlin", Optional.empty())),
                                Optional.of(Facts.heatPump()),
                                none(),
                                List.of(),
                                none(),
                                false,
                                true,
                                none(),
                                none(),
                                none()),
                        new Trades(
                                Optional.of(Facts.plumber(State.NSW)),
                                Facts.plumber(State.NSW).licences().stream().findFirst(),
                                none(),
                                none(),
                                none()),
                        new Compliance(none(), none(), none(), none()),
                        none(),
                        Map.of(SchemeName.STC, new Claim(true, none(), none(), none(), none())),
                        new Payment(none(), none(), none(), none(), none(), none()),
                        Set.of());
        return new CaseFile(
                BATCH,
                Facts.firm(),
                job,
                new Entitlements(List.of(Facts.stc(true))),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(new ToDo("Tank serial", "installer", Optional.empty())),
                List.of(),
                papers(
                        List.of(),
                        "default",
                        "default",
                        PaperKind.COVER,
                        PaperKind.SITE_SHEET,
                        PaperKind.WARRANTY,
                        PaperKind.of(SchemeName.STC),
                        PaperKind.WORKING,
                        PaperKind.OLD_HEATER,
                        PaperKind.HANDOVER),
                "packs/SB-1040.pdf",
                Set.of(),
                List.of());
    }

    /** A job of which only the number is known, with every paper and nothing to put on it. */
    public static CaseFile bare() {
        Job job =
                new Job(
                        ORIGIN,
                        "SB-1099",
                        Stage.BOOKED,
                        new Visit(none(), none(), none(), none()),
                        none(),
                        none(),
                        none(),
                        new Owner(
                                none(),
                                none(),
                                none(),
                                none(),
                                none(),
                                none(),
                                Address.UNKNOWN,
                                Optional.empty()),
                        new Site(Address.UNKNOWN, none(), none()),
                        new Heater(
                                none(), none(), none(), none(), none(), List.of(), none(), false,
                                true, none(), none(), none()),
                        new Trades(none(), none(), none(), none(), none()),
                        new Compliance(none(), none(), none(), none()),
                        none(),
                        Map.of(),
                        new Payment(none(), none(), none(), none(), none(), none()),
                        Set.of());
        Firm firm =
                new Firm(
                        "Saltmarsh Hot Water Pty Ltd",
                        Abn.parse("99 000 000 000").toOptional().orElseThrow(),
                        none(),
                        false,
                        Address.UNKNOWN,
                        none(),
                        none(),
                        none(),
                        none(),
                        none(),
                        false,
                        false,
                        none(),
                        none(),
                        none(),
                        MoneyPolicy.USUAL);
        return new CaseFile(
                BATCH,
                firm,
                job,
                new Entitlements(
                        List.of(
                                new Entitlement(
                                        SchemeName.STC,
                                        none(),
                                        none(),
                                        none(),
                                        none(),
                                        true,
                                        List.of()))),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                papers(
                        List.of(),
                        "default",
                        "default",
                        PaperKind.values().toArray(PaperKind[]::new)),
                "packs/SB-1099.pdf",
                Set.of(),
                List.of());
    }

    /** The same case with another owner's name. */
    public static CaseFile withOwner(CaseFile c, String name) {
        Job j = c.job();
        return with(
                c,
                new Job(
                        j.origin(),
                        j.reference(),
                        j.stage(),
                        j.visit(),
                        j.installedOn(),
                        j.signedOn(),
                        j.corrects(),
                        Facts.owner(name),
                        j.site(),
                        j.heater(),
                        j.trades(),
                        j.compliance(),
                        j.oldHeater(),
                        j.claims(),
                        j.payment(),
                        j.unread()),
                c.papers());
    }

    /** The same case with only the given papers. */
    public static CaseFile withPapers(CaseFile c, Paper... papers) {
        return with(c, c.job(), List.of(papers));
    }

    private static CaseFile with(CaseFile c, Job job, List<Paper> papers) {
        return new CaseFile(
                c.batch(),
                c.firm(),
                job,
                c.entitlements(),
                c.expected(),
                c.comparisons(),
                c.price(),
                c.statePapers(),
                c.deadlines(),
                c.toDo(),
                c.findings(),
                papers,
                c.packFile(),
                c.withBuyer(),
                List.of());
    }

    /** A stop that holds papers. */
    public static Finding stop() {
        return Finding.of(
                        FindingCode.SERIAL_TWICE,
                        ORIGIN.cell(Field.TANK_SERIAL),
                        "The tank serial \"TL-300-004417\" was already claimed for job SB-0988.",
                        "Read the number off the tank again, or mark the row as a correction.")
                .forJob("SB-1032")
                .seeing("TL-300-004417");
    }

    private static Finding checkFinding() {
        return Finding.of(
                        FindingCode.POSTCODE_OF_OTHER_STATE,
                        ORIGIN.wholeRow(),
                        "Postcode 3342 belongs to Victoria, but the row says NSW.",
                        "Correct the postcode or the state.")
                .as(Severity.CHECK)
                .forJob("SB-1032");
    }

    private static Finding note() {
        return Finding.of(FindingCode.KEEP_UNTIL, ORIGIN.wholeRow(), "Keep until 2031.", "")
                .forJob("SB-1032");
    }

    private static List<Paper> papers(
            List<Finding> stops, String warranty, String stc, PaperKind... kinds) {
        return Stream.of(kinds)
                .map(
                        k ->
                                new Paper(
                                        k,
                                        k == PaperKind.WARRANTY
                                                ? warranty
                                                : k == PaperKind.of(SchemeName.STC)
                                                        ? stc
                                                        : "default",
                                        stops))
                .toList();
    }

    private static <T> Optional<T> none() {
        return Optional.empty();
    }

    private static LocalDate day(int ofNovember) {
        return LocalDate.of(2026, 11, ofNovember);
    }
}
