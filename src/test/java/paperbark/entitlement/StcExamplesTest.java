package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import paperbark.firm.Products;
import paperbark.job.Job;
import paperbark.job.Jobs;
import paperbark.rules.Rulebook;
import paperbark.value.SchemeName;

class StcExamplesTest {
    private static final Rulebook RULES = Rulebook.load(Optional.empty());

    @ParameterizedTest(name = "{0} {1} {2}: {3} gives {5} ({6})")
    @CsvFileSource(resources = "/cases/stc/examples.csv", numLinesToSkip = 1)
    void anExampleComesOutAsItsSourceSays(
            LocalDate day, String technology, String postcode, int listed, int zone, int count) {
        Products product = technology.equals("solar") ? Products.solar() : Products.heatPump();
        Job job =
                Jobs.installed()
                        .withoutClaim(SchemeName.VEEC)
                        .withInstalledOn(day)
                        .withPostcode(postcode)
                        .withProduct(product.withStcs(listed))
                        .job();

        Entitlement stc = new StcScheme().assess(job, RULES, day).entitlement().orElseThrow();

        assertThat(stc.zone()).contains(zone);
        assertThat(stc.certificates()).contains(count);
    }
}
