package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.firm.CountPolicy;
import paperbark.job.Jobs;
import paperbark.value.SchemeName;

class KeepUntilTest {

    // Source of 5 and 6 years: keep_years in stc/limits.csv and veec/conditions.csv.
    @Test
    void theYearsRunFromTheLastDayOnWhichAnyJobOfTheBatchCanBeCreated() {
        List<Finding> notes =
                notes(
                        Jobs.installed().withInstalledOn("2026-11-18"),
                        Jobs.installed().withInstalledOn("2026-11-20"));

        assertThat(notes)
                .extracting(Finding::fact)
                .containsExactly(
                        "STCs of this register can be created until 20 Nov 2027, and their papers are kept 5 years from then, until 20 Nov 2032.",
                        "VEECs of this register can be created until 30 Jun 2027, and their papers are kept 6 years from then, until 30 Jun 2033.");
        assertThat(notes).allMatch(f -> f.severity() == Severity.NOTE && f.rule().isPresent());
    }

    @Test
    void aSchemeWithoutAnInstalledClaimGetsNoNote() {
        assertThat(notes(Jobs.installed().withoutClaim(SchemeName.STC)))
                .extracting(Finding::fact)
                .singleElement()
                .asString()
                .startsWith("VEECs");
        assertThat(notes(Jobs.booked())).isEmpty();
    }

    private static List<Finding> notes(Jobs... jobs) {
        List<Entitlements> batch =
                List.of(jobs).stream()
                        .map(
                                j ->
                                        Schemes.assess(
                                                j.job(),
                                                Found.SHIPPED,
                                                Found.TODAY,
                                                CountPolicy.RULES))
                        .map(Schemes.Assessed::entitlements)
                        .toList();
        return KeepUntil.of("week.xlsx", batch, Found.SHIPPED);
    }
}
