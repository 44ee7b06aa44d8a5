package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.rules.Rulebook;
import paperbark.value.Parsed;
import paperbark.value.Postcode;
import paperbark.value.SchemeName;
import paperbark.value.State;

class WhatIfTest {
    private static final FirmTables TABLES =
            FirmTablesReader.read(Path.of("input-samples/tables")).result().orElseThrow();
    private static final Rulebook RULES = Rulebook.load(Optional.empty());

    @Test
    void wordsAreSplitAtCommasButValuesKeepTheirOwn() {
        WhatIf whatIf =
                parsed("date=4 Jan 2027, old=solar, electric boost", "Postcode = 3350,state=vic");

        assertThat(whatIf.day()).contains(LocalDate.of(2027, 1, 4));
        assertThat(whatIf.old()).contains(OldKind.SOLAR_ELECTRIC);
        assertThat(whatIf.postcode()).contains(new Postcode("3350"));
        assertThat(whatIf.state()).contains(State.VIC);
        assertThat(whatIf.isEmpty()).isFalse();
    }

    @Test
    void noWordsSupposeNothing() {
        assertThat(parsed().isEmpty()).isTrue();
    }

    @Test
    void allDaysOfAnInstalledJobMoveTogether() {
        Job real =
                Jobs.installed()
                        .withInstalledOn("2026-11-20")
                        .withSignedOn("2026-11-23")
                        .withOldRemovedOn("2026-11-21")
                        .withDeclarationsOn("2026-11-19")
                        .job();

        Job job = supposed(real, "date=2027-01-01");

        assertThat(job.installedOn()).contains(LocalDate.of(2027, 1, 1));
        assertThat(job.signedOn()).contains(LocalDate.of(2027, 1, 4));
        assertThat(job.oldHeater().flatMap(OldHeater::removedOn))
                .contains(LocalDate.of(2027, 1, 2));
        assertThat(job.heater().declarationsOn()).contains(LocalDate.of(2026, 12, 31));
    }

    @Test
    void theDayOfABookedJobIsThatOfTheVisit() {
        Job job = supposed(Jobs.booked().job(), "date=2027-01-01");

        assertThat(job.visit().on()).contains(LocalDate.of(2027, 1, 1));
        assertThat(job.installedOn()).isEmpty();
        assertThat(job.origin().from(Field.VISIT_DATE)).isEqualTo("as supposed");
    }

    @Test
    void aJobWithoutADayGetsOne() {
        Job job = supposed(Jobs.installed().withoutDays().job(), "date=2027-01-01");

        assertThat(job.ruleDay()).contains(LocalDate.of(2027, 1, 1));
    }

    @Test
    void aCellThatCouldNotBeReadCountsAsReadOnceItsFactIsSupposed() {
        Job real = Jobs.installed().withUnread(Field.SITE_POSTCODE, Field.BSB).job();

        assertThat(supposed(real, "postcode=3350").unread()).containsExactly(Field.BSB);
    }

    @Test
    void theStateFollowsThePostcodeUnlessItFitsOrIsSupposedToo() {
        Job real = Jobs.installed().withPostcode("3342").withState(State.VIC).job();

        assertThat(state(supposed(real, "postcode=2640"))).contains(State.NSW);
        assertThat(state(supposed(real, "postcode=3350"))).contains(State.VIC);
        assertThat(state(supposed(real, "postcode=2640,state=SA"))).contains(State.SA);
    }

    @Test
    void whatTheRegisterSaysOfTheRealFactsIsLeftOut() {
        Job real = Jobs.installed().withCount(SchemeName.STC, 14).job();

        Job job = supposed(real, "postcode=3350");

        assertThat(job.claim(SchemeName.STC).declaredCount()).isEmpty();
        assertThat(job.claim(SchemeName.STC).claimed()).isTrue();
        assertThat(real.claim(SchemeName.STC).declaredCount()).contains(14);
    }

    @Test
    void aHeaterThatIsSupposedTakesItsMakerAlong() {
        Job job = supposed(Jobs.installed().job(), "model=tl-e30-315");

        assertThat(job.heater().makerName()).contains("Ternlight");
        assertThat(job.heater().product().orElseThrow().model()).isEqualTo("TL-E30-315");
        assertThat(job.origin().supposed()).containsExactlyInAnyOrder(Field.MAKER, Field.MODEL);
    }

    @Test
    void supposingNothingChangesNoFact() {
        Job real = Jobs.installed().withInstalledOn("2026-11-20").job();

        Job job = supposed(real);

        assertThat(job.origin()).isEqualTo(real.origin());
        assertThat(job.heater()).isEqualTo(real.heater());
        assertThat(job.site()).isEqualTo(real.site());
        assertThat(job.oldHeater()).isEqualTo(real.oldHeater());
    }

    private static Optional<State> state(Job job) {
        return job.site().address().state();
    }

    private static Job supposed(Job job, String... words) {
        Parsed<Job> supposed = SupposedJob.of(job, parsed(words), TABLES, RULES);
        return supposed.toOptional().orElseThrow(() -> new AssertionError(supposed));
    }

    private static WhatIf parsed(String... words) {
        Parsed<WhatIf> parsed = WhatIf.parse(List.of(words));
        return parsed.toOptional().orElseThrow(() -> new AssertionError(parsed));
    }
}
