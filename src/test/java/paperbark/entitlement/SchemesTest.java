package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.firm.CountPolicy;
import paperbark.firm.Products;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.job.Jobs;
import paperbark.rules.CountRounding;
import paperbark.rules.Dated;
import paperbark.rules.GstRow;
import paperbark.rules.RecordRule;
import paperbark.rules.Rulebook;
import paperbark.rules.Setting;
import paperbark.rules.Unkeyed;
import paperbark.value.Days;
import paperbark.value.SchemeName;
import paperbark.value.State;

class SchemesTest {
    private static final Rulebook DEMO =
            Rulebook.load(Optional.of(Path.of("src/test/resources/demo-rules")));

    @Test
    void allClaimedSchemesAreWorkedOut() {
        Schemes.Assessed assessed =
                Schemes.assess(Jobs.installed().job(), DEMO, Found.TODAY, CountPolicy.RULES);

        assertThat(assessed.entitlements().of(SchemeName.STC).orElseThrow().certificates())
                .contains(15);
        assertThat(assessed.entitlements().of(SchemeName.VEEC).orElseThrow().certificates())
                .contains(12);
        assertThat(assessed.findings()).isEmpty();
    }

    @Test
    void aLowerNumberOfTheRegisterIsClaimedWhereTheFirmWantsItAndToldEitherWay() {
        Job job = Jobs.installed().withCount(SchemeName.STC, 14).job();

        Schemes.Assessed rules = Schemes.assess(job, DEMO, Found.TODAY, CountPolicy.RULES);
        Schemes.Assessed register = Schemes.assess(job, DEMO, Found.TODAY, CountPolicy.REGISTER);

        Entitlement fifteen = rules.entitlements().of(SchemeName.STC).orElseThrow();
        assertThat(fifteen.certificates()).contains(15);
        assertThat(fifteen.isFromRegister()).isFalse();
        Entitlement fourteen = register.entitlements().of(SchemeName.STC).orElseThrow();
        assertThat(fourteen.certificates()).contains(14);
        assertThat(fourteen.isFromRegister()).isTrue();
        assertThat(fourteen.steps().get(fourteen.steps().size() - 1).working())
                .contains("the rules give 15");
        assertThat(rules.findings()).isEqualTo(register.findings());
        assertThat(rules.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.COUNT_TOO_LOW);
    }

    @Test
    void aHigherNumberOfTheRegisterIsNeverClaimed() {
        Job job = Jobs.installed().withCount(SchemeName.STC, 16).job();

        Schemes.Assessed register = Schemes.assess(job, DEMO, Found.TODAY, CountPolicy.REGISTER);

        assertThat(register.entitlements().of(SchemeName.STC).orElseThrow().certificates())
                .contains(15);
    }

    @Test
    void theRegistersNumberStandsInWhereNoneCanBeWorkedOutAndSaysSo() {
        Jobs jobs = Jobs.installed().withCount(SchemeName.VEEC, 11);

        Schemes.Assessed assessed =
                Schemes.assess(jobs.job(), Found.SHIPPED, Found.TODAY, CountPolicy.RULES);

        Entitlement veecs = assessed.entitlements().of(SchemeName.VEEC).orElseThrow();
        assertThat(veecs.certificates()).contains(11);
        assertThat(veecs.isFromRegister()).isTrue();
        assertThat(assessed.findings())
                .extracting(Finding::code)
                .contains(FindingCode.VEEC_TABLE_MISSING, FindingCode.COUNT_UNPROVED);
    }

    @Test
    void aStoppedClaimGetsNoNumberFromTheRegister() {
        Jobs jobs = Jobs.installed().withCount(SchemeName.VEEC, 11).withState(State.NSW);

        Schemes.Assessed assessed =
                Schemes.assess(jobs.job(), DEMO, Found.TODAY, CountPolicy.RULES);

        assertThat(assessed.entitlements().of(SchemeName.VEEC).orElseThrow().certificates())
                .isEmpty();
    }

    @Test
    void aStopOfOneSchemeLeavesTheOtherAlone() {
        Job job = Jobs.installed().withState(State.NSW).job();

        Schemes.Assessed assessed = Schemes.assess(job, DEMO, Found.TODAY, CountPolicy.RULES);

        assertThat(assessed.entitlements().of(SchemeName.STC).orElseThrow().certificates())
                .contains(15);
        assertThat(assessed.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.VEEC_NOT_VICTORIA);
    }

    @Test
    void aPostcodeWithoutZoneHoldsThePapersOfBothSchemesAfterSorting() {
        Job job = Jobs.installed().withPostcode("3117").job();

        List<Finding> findings =
                Finding.inOrder(
                        Schemes.assess(job, DEMO, Found.TODAY, CountPolicy.RULES).findings());

        assertThat(findings).hasSize(2).allMatch(f -> f.code() == FindingCode.ZONE_MISSING);
    }

    @Test
    void aFurtherSchemeIsOneClass() {
        Schemes.Assessed assessed = withTenths(Jobs.installed().job());

        assertThat(assessed.entitlements().all())
                .extracting(e -> e.certificates().orElseThrow())
                .containsExactly(15, 500);
        Entitlement tenths = assessed.entitlements().all().get(1);
        assertThat(tenths.lastDay()).contains(LocalDate.of(2027, 5, 20));
        assertThat(tenths.steps())
                .extracting(Step::working)
                .containsExactly(
                        "%s: $5,500.00 / 11".formatted(Jobs.cell(Field.FULL_PRICE)),
                        "20 Nov 2026 + 6 months");
        assertThat(tenths.rules()).extracting(RuleRef::table).containsExactly("gst.csv");
        assertThat(assessed.findings()).isEmpty();
    }

    @Test
    void aGapInTheTableOfAFurtherSchemeHoldsItsPaperAlone() {
        Job job = Jobs.installed().withInstalledOn("2026-11-20").withVisitOn("2026-11-20").job();
        Job before = Jobs.installed().withInstalledOn("2000-06-30").job();

        assertThat(withTenths(job).findings()).isEmpty();
        Finding stop =
                withTenths(before).findings().stream()
                        .filter(f -> f.fact().contains("gst.csv"))
                        .findFirst()
                        .orElseThrow();

        assertThat(stop.code()).isEqualTo(FindingCode.RULE_MISSING);
        assertThat(stop.holds()).containsExactly(Concern.claim(SchemeName.VEEC));
        assertThat(stop.job()).contains("SB-1032");
    }

    @Test
    void aFurtherSchemeSaysNothingOfAJobThatDoesNotClaim() {
        Schemes.Assessed assessed =
                withTenths(Jobs.installed().withoutClaim(SchemeName.VEEC).job());

        assertThat(assessed.entitlements().all())
                .extracting(Entitlement::scheme)
                .containsExactly(SchemeName.STC);
    }

    /** What a developer adds: every name of a scheme has all that DEVELOPERS.md asks for. */
    @ParameterizedTest
    @EnumSource(SchemeName.class)
    void everySchemeHasItsClassTablesColumnsAndPaper(SchemeName name) {
        String word = name.key();

        assertThat(Schemes.KNOWN.all()).extracting(Scheme::name).containsOnlyOnce(name);
        assertThat(Path.of("src/main/resources/rules", word)).isNotEmptyDirectory();
        assertThat(Path.of("templates", word, "default.ftlh")).isRegularFile();
        assertThat(Field.values())
                .extracting(Field::key)
                .contains(word + "-claim", word + "-buyer", word + "-count", word + "-benefit");
    }

    private static Schemes.Assessed withTenths(Job job) {
        return new Schemes(List.of(new StcScheme(), new PriceScheme()))
                .ask(job, DEMO, Found.TODAY, CountPolicy.RULES);
    }

    /**
     * A scheme that nobody has: a certificate for every dollar of GST in the price, by the table of
     * the GST, created within six months. It borrows a name, for names are the law's.
     */
    private static final class PriceScheme implements Scheme {
        @Override
        public SchemeName name() {
            return SchemeName.VEEC;
        }

        @Override
        public Assessment assess(Job job, Rulebook rulebook, LocalDate today) {
            if (!job.claim(name()).claimed()) {
                return Assessment.NONE;
            }
            Working working = new Working(name(), job);
            LocalDate day = job.ruleDay().orElseThrow();
            Optional<Integer> count =
                    working.rule(rulebook.gst(), day, Unkeyed.ALL).map(row -> count(working, row));
            return working.assessment(
                    new Entitlement(
                            name(),
                            count,
                            Optional.empty(),
                            Optional.empty(),
                            closing(day, rulebook).map(date -> date.tell(today, working)),
                            !working.isInstalled(),
                            working.steps()));
        }

        @Override
        public Set<JobFact> hangsOn() {
            return ClaimBasis.of(name(), Field.FULL_PRICE);
        }

        @Override
        public Optional<ClosingDate> closing(LocalDate done, Rulebook rulebook) {
            return rulebook.gst()
                    .on(done, Unkeyed.ALL)
                    .map(
                            row ->
                                    new ClosingDate(
                                            name(),
                                            done.plusMonths(6),
                                            done.plusMonths(5),
                                            Days.show(done) + " + 6 months",
                                            row.ref()));
        }

        @Override
        public Optional<Dated<Setting>> keepYears(LocalDate created, Rulebook rulebook) {
            return rulebook.records().on(created, RecordRule.TAX_KEEP_YEARS);
        }

        private static int count(Working working, Dated<GstRow> row) {
            BigDecimal price = working.job().payment().fullPrice().orElseThrow().amount();
            int divisor = row.row().priceDivisor();
            int count = price.intValueExact() / divisor;
            working.step(
                    "Certificates for this job",
                    "%s: %s / %d"
                            .formatted(
                                    working.from(Field.FULL_PRICE),
                                    working.job().payment().fullPrice().orElseThrow(),
                                    divisor),
                    Integer.toString(count),
                    row.ref());
            return count;
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 27, 30, 33, 99})
    void aClerkCanRedoTheStcSumFromTheWorking(int listed) {
        Found found = Found.stc(Jobs.installed().withProduct(Products.heatPump().withStcs(listed)));
        Matcher sum =
                Pattern.compile("(\\d+) x (\\d+) / (\\d+) = ([\\d.]+).*")
                        .matcher(found.step(StcScheme.COUNT).working());

        assertThat(sum.matches()).isTrue();
        BigDecimal product = number(sum, 1).multiply(number(sum, 2));
        assertThat(product.divide(number(sum, 3))).isEqualByComparingTo(number(sum, 4));
        assertThat(found.step(StcScheme.COUNT).result())
                .isEqualTo(CountRounding.DOWN.whole(number(sum, 4)) + "")
                .isEqualTo(found.count().orElseThrow().toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"3.0", "4", "5.25", "6"})
    void aClerkCanRedoTheVeecSumFromTheWorking(String bs) {
        Job job = Jobs.installed().withProduct(Products.heatPump().withEnergies(bs, "0.35")).job();
        Found found = Found.of(new VeecScheme(), job, DEMO, Found.TODAY);
        Matcher sum =
                Pattern.compile(
                                "\\(abatement - SEF x Bs - AEF x Be\\) x EEF = "
                                        + "\\(([\\d.]+) - ([\\d.]+) x ([\\d.]+) - ([\\d.]+) x ([\\d.]+)\\)"
                                        + " x ([\\d.]+) = ([\\d.]+)")
                        .matcher(found.step(VeecScheme.TONNES).working());

        assertThat(sum.matches()).isTrue();
        BigDecimal tonnes =
                number(sum, 1)
                        .subtract(number(sum, 2).multiply(number(sum, 3)))
                        .subtract(number(sum, 4).multiply(number(sum, 5)))
                        .multiply(number(sum, 6));
        assertThat(tonnes).isEqualByComparingTo(number(sum, 7));
        assertThat(found.step(VeecScheme.COUNT).result())
                .isEqualTo(CountRounding.HALF_UP.whole(tonnes) + "");
    }

    private static BigDecimal number(Matcher sum, int group) {
        return new BigDecimal(sum.group(group));
    }
}
