package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import paperbark.entitlement.Entitlements;
import paperbark.firm.Firm;
import paperbark.firm.MoneyPolicy;
import paperbark.job.BenefitForm;
import paperbark.job.Claim;
import paperbark.job.Job;
import paperbark.job.JobBuilder;
import paperbark.job.Owner;
import paperbark.job.Payment;
import paperbark.job.Site;
import paperbark.offer.OwnerPrice;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.PaperPlan;
import paperbark.value.Money;
import paperbark.value.SchemeName;

class BenefitPageTest {
    private static final CaseFile SOLAR = CaseFiles.installedSolar();

    @Test
    void theFullPriceLessEachAssignmentIsWhatIsPayable() {
        assertThat(page(SOLAR))
                .containsSubsequence(
                        "Full price of heater and installation, with GST",
                        "$5,890.00",
                        "13 small-scale technology certificates (STCs) to",
                        "−$480.00",
                        "25 Victorian energy efficiency certificates",
                        "−$1,200.00",
                        "Amount payable by the owner",
                        "$4,210.00",
                        "GST included in the full price: $535.45.")
                .contains("The owner is not registered for GST")
                .contains("This page is no tax invoice.");
    }

    // $4,210.00 / 11 would be the GST if certificates lowered it.
    @Test
    void certificatesAreNotSetOffAgainstGst() {
        assertThat(page(SOLAR)).doesNotContain("382.73");
    }

    @Test
    void aFirmThatIsNotRegisteredShowsNoGst() {
        String page = page(with(SOLAR, unregistered(SOLAR.firm()), SOLAR.job()));

        assertThat(page)
                .contains("is not registered for GST. The price includes none.")
                .doesNotContain("535.45")
                .doesNotContain("GST included");
    }

    @Test
    void anOwnerWhoIsPaidPaysTheFullPrice() {
        Job job = paid(SOLAR.job(), BenefitForm.PAYMENT);
        String page =
                page(
                        with(
                                SOLAR,
                                SOLAR.firm(),
                                job,
                                new OwnerPrice(
                                        Money.of("5890"), Map.of(), Money.of("535.45"), 11)));

        assertThat(page)
                .containsSubsequence("Amount payable by the owner", "$5,890.00", "$480.00")
                .contains("paid to the owner's account")
                .doesNotContain("−$480.00");
    }

    // 480 / 11 = 43.636..., 1,200 / 11 = 109.0909...
    @Test
    void anOwnerInBusinessIsAskedForTheirTaxInvoice() {
        assertThat(page(with(SOLAR, SOLAR.firm(), inBusiness(SOLAR.job()))))
                .contains("$43.64 for the STCs and $109.09 for the VEECs")
                .contains(
                        "Please give your tax invoice for it to whoever takes the certificates: Kestrel"
                                + " Certificates for the STCs, Pipit and Wren for the VEECs.")
                .doesNotContain("no GST");
    }

    @Test
    void nothingIsTakenOffForAClaimThatGivesNothing() {
        Map<SchemeName, Claim> claims = new EnumMap<>(SOLAR.job().claims());
        claims.computeIfPresent(
                SchemeName.STC,
                (scheme, c) ->
                        new Claim(
                                c.claimed(),
                                c.buyer(),
                                c.declaredZone(),
                                c.declaredCount(),
                                Optional.of(Money.ZERO)));
        Job job = JobBuilder.builder(SOLAR.job()).claims(claims).build();

        assertThat(page(with(SOLAR, SOLAR.firm(), job)))
                .containsSubsequence("(STCs) to", "$0.00", "−$1,200.00")
                .doesNotContain("−$0.00");
    }

    @Test
    void itIsMadeOnlyForAClaimWithAPrice() {
        assertThat(kinds(SOLAR.job())).contains(PaperKind.BENEFIT);
        assertThat(kinds(paid(SOLAR.job(), Optional.empty(), Optional.empty())))
                .doesNotContain(PaperKind.BENEFIT);
        assertThat(kinds(CaseFiles.bare().job())).doesNotContain(PaperKind.BENEFIT);
    }

    private static List<PaperKind> kinds(Job job) {
        return PaperPlan.of(
                        job,
                        new Entitlements(List.of()),
                        List.of(),
                        List.of(),
                        new PaperPlan.Extras(false, false))
                .stream()
                .map(Paper::kind)
                .toList();
    }

    private static String page(CaseFile file) {
        Paper paper = new Paper(PaperKind.BENEFIT, "default", List.of());
        Pack pack = new Packs(Optional.empty()).make(CaseFiles.withPapers(file, paper), List.of());
        assertThat(pack.findings()).isEmpty();
        return PdfText.of(pack, PaperKind.BENEFIT).replaceAll("\\s+", " ");
    }

    private static CaseFile with(CaseFile c, Firm firm, Job job) {
        return with(c, firm, job, c.price().orElseThrow());
    }

    private static CaseFile with(CaseFile c, Firm firm, Job job, OwnerPrice price) {
        return new CaseFile(
                c.batch(),
                firm,
                job,
                c.entitlements(),
                c.expected(),
                c.comparisons(),
                Optional.of(price),
                c.statePapers(),
                c.deadlines(),
                c.toDo(),
                List.of(),
                c.papers(),
                c.packFile(),
                c.withBuyer(),
                List.of());
    }

    private static Firm unregistered(Firm f) {
        return new Firm(
                f.name(),
                f.abn(),
                f.acn(),
                false,
                f.address(),
                f.phone(),
                f.afterHours(),
                f.email(),
                f.workmanshipYears(),
                f.claimCosts(),
                f.ownersCopies(),
                f.fillable(),
                f.accountName(),
                f.bsb(),
                f.account(),
                MoneyPolicy.USUAL);
    }

    private static Job paid(Job j, BenefitForm form) {
        return paid(j, j.payment().fullPrice(), Optional.of(form));
    }

    private static Job paid(Job j, Optional<Money> full, Optional<BenefitForm> form) {
        Payment p = j.payment();
        return with(
                j,
                j.owner(),
                j.site(),
                new Payment(full, p.coPayment(), form, p.accountName(), p.bsb(), p.account()));
    }

    private static Job inBusiness(Job j) {
        Owner o = j.owner();
        return with(
                j,
                new Owner(
                        o.name(),
                        o.contact(),
                        o.abn(),
                        Optional.of(true),
                        o.phone(),
                        o.email(),
                        o.postal(),
                        Optional.empty()),
                new Site(j.site().address(), j.site().position(), Optional.of(true)),
                j.payment());
    }

    private static Job with(Job j, Owner owner, Site site, Payment payment) {
        return new Job(
                j.origin(),
                j.reference(),
                j.stage(),
                j.visit(),
                j.installedOn(),
                j.signedOn(),
                j.corrects(),
                owner,
                site,
                j.heater(),
                j.trades(),
                j.compliance(),
                j.oldHeater(),
                j.claims(),
                payment,
                j.unread());
    }
}
