package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.firm.CountPolicy;
import paperbark.job.Jobs;

class RulesInUseTest {
    private final List<RuleRef> used =
            RulesInUse.of(
                    List.of(
                            entitlements(Jobs.installed()),
                            entitlements(Jobs.installed().withPostcode("3350"))));

    private static Entitlements entitlements(Jobs jobs) {
        return Schemes.assess(jobs.job(), Found.SHIPPED, Found.TODAY, CountPolicy.RULES)
                .entitlements();
    }

    @Test
    void rowsOfAllJobsAreListedOnceInOrder() {
        assertThat(used).doesNotHaveDuplicates();
        assertThat(used.stream().filter(r -> r.table().equals("stc/zones.csv"))).hasSize(2);
        assertThat(used.get(0).table()).isEqualTo("products");
    }

    @Test
    void rowsConfirmedWithinAYearAreNotOld() {
        assertThat(RulesInUse.old(used, Found.SHIPPED, LocalDate.of(2027, 11, 25))).isEmpty();
    }

    @Test
    void rowsConfirmedLongerAgoGiveOneNotePerTable() {
        List<Finding> notes = RulesInUse.old(used, Found.SHIPPED, LocalDate.of(2027, 11, 26));

        assertThat(notes).allMatch(f -> f.code() == FindingCode.RULE_OLD);
        assertThat(notes)
                .extracting(f -> f.place().file())
                .containsExactly(
                        "stc/limits.csv",
                        "stc/years.csv",
                        "stc/zones.csv",
                        "veec/activities.csv",
                        "veec/climate-zones.csv",
                        "veec/conditions.csv");
        assertThat(notes.get(0).fact())
                .isEqualTo("The row was last compared with its source on 25 Nov 2026.");
    }
}
