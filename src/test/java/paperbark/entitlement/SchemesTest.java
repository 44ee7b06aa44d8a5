package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Products;
import paperbark.firm.SchemeName;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.Jobs;
import paperbark.rules.CountRounding;
import paperbark.rules.Rulebook;
import paperbark.value.State;

class SchemesTest {
    private static final Rulebook DEMO =
            Rulebook.load(Optional.of(Path.of("src/test/resources/demo-rules")));

    @Test
    void allClaimedSchemesAreWorkedOut() {
        Schemes.Assessed assessed = Schemes.assess(Jobs.installed().job(), DEMO, Found.TODAY);

        assertThat(assessed.entitlements().of(SchemeName.STC).orElseThrow().certificates())
                .contains(15);
        assertThat(assessed.entitlements().of(SchemeName.VEEC).orElseThrow().certificates())
                .contains(12);
        assertThat(assessed.findings()).isEmpty();
    }

    @Test
    void aStopOfOneSchemeLeavesTheOtherAlone() {
        Job job = Jobs.installed().withState(State.NSW).job();

        Schemes.Assessed assessed = Schemes.assess(job, DEMO, Found.TODAY);

        assertThat(assessed.entitlements().of(SchemeName.STC).orElseThrow().certificates())
                .contains(15);
        assertThat(assessed.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.VEEC_NOT_VICTORIA);
    }

    @Test
    void aPostcodeWithoutZoneHoldsThePapersOfBothSchemesAfterSorting() {
        Job job = Jobs.installed().withPostcode("3117").job();

        List<Finding> findings = Finding.inOrder(Schemes.assess(job, DEMO, Found.TODAY).findings());

        assertThat(findings).hasSize(2).allMatch(f -> f.code() == FindingCode.ZONE_MISSING);
    }

    @Test
    void aFurtherSchemeIsOneClass() {
        Scheme ten =
                new Scheme() {
                    @Override
                    public SchemeName name() {
                        return SchemeName.VEEC;
                    }

                    @Override
                    public Assessment assess(Job job, Rulebook rulebook, LocalDate today) {
                        Working working = new Working(name(), job);
                        working.step("Certificates", "ten for every job", "10");
                        working.report(
                                working.at(Field.MODEL, FindingCode.COUNT_TOO_LOW, "Ten.", ""));
                        return working.assessment(
                                new Entitlement(
                                        name(),
                                        Optional.of(10),
                                        Optional.empty(),
                                        Optional.empty(),
                                        Optional.of(today),
                                        false,
                                        working.steps()));
                    }
                };

        Schemes.Assessed assessed =
                new Schemes(List.of(new StcScheme(), ten))
                        .ask(Jobs.installed().job(), DEMO, Found.TODAY);

        assertThat(assessed.entitlements().all())
                .extracting(e -> e.certificates().orElseThrow())
                .containsExactly(15, 10);
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
                                "\\(([\\d.]+) - ([\\d.]+) x ([\\d.]+) - ([\\d.]+) x ([\\d.]+)\\)"
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
