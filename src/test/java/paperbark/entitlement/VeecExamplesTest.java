package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import paperbark.firm.Products;
import paperbark.job.Jobs;
import paperbark.job.OldKind;
import paperbark.rules.Overlay;
import paperbark.rules.Rulebook;

class VeecExamplesTest {
    @TempDir Path folder;

    @ParameterizedTest(name = "{0} {1} to {2}: {8} t gives {9} ({10})")
    @CsvFileSource(resources = "/cases/veec/examples.csv", numLinesToSkip = 1)
    void anExampleComesOutAsItsSourceSays(
            LocalDate day,
            String old,
            String replacement,
            String abatement,
            String sef,
            String aef,
            String bs,
            String be,
            String activity,
            String tonnes,
            int count) {
        Rulebook rules =
                Overlay.in(folder)
                        .factors(
                                "2025-02-01,,%s,4,%s,%s,%s,,"
                                        .formatted(activity, abatement, sef, aef))
                        .load();
        Products product = replacement.equals("heat-pump") ? Products.heatPump() : Products.solar();
        Jobs jobs =
                Jobs.installed()
                        .withInstalledOn(day)
                        .withOldHeater(oldKind(old))
                        .withProduct(product.withEnergies(bs, be));

        Found found = Found.of(new VeecScheme(), jobs.job(), rules, day);

        assertThat(found.entitlement().activity()).contains(activity);
        assertThat(found.step(VeecScheme.TONNES).result()).isEqualTo(tonnes + " t");
        assertThat(found.count()).contains(count);
    }

    private static OldKind oldKind(String word) {
        return OldKind.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
