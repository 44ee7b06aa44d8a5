package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class JobNumbersTest {
    private static final String ASKED = "job,,HW-*";

    @Test
    void aListWithoutNumbersGetsThemInTheFormThatTheFirmWants() {
        assertThat(numbers("Job,Site street\n,4 Teaspoon Lane\n,6 Teaspoon Lane"))
                .hasSize(2)
                .doesNotHaveDuplicates()
                .allMatch(number -> number.matches("HW-[3-9A-Y]{7}"));
    }

    @Test
    void aNumberStaysWhenRowsMoveAndOtherFactsAreCorrected() {
        String first = numbers("Job,Owner,Site street,Tank serial\n,Ann,4 Teaspoon Lane,").get(0);
        List<String> later =
                numbers(
                        "Job,Owner,Site street,Tank serial\n"
                                + ",Bob,6 Teaspoon Lane,TD-1002\n,Ann Example,4  teaspoon lane,TD-1001");
        assertThat(later.get(1)).isEqualTo(first);
    }

    @Test
    void twoHeatersAtOneSiteAreToldApartByTheirSerialsWhateverTheirOrder() {
        List<String> one = numbers("Job,Tank serial,Plumber\n,TD-1001,\n,TD-1002,");
        List<String> other = numbers("Job,Tank serial,Plumber\n,TD-1002,\n,TD-1001,");
        assertThat(one).doesNotHaveDuplicates();
        assertThat(other).containsExactly(one.get(1), one.get(0));
    }

    @Test
    void aNumberOfTheFirmsOwnIsKept() {
        assertThat(numbers("Job,Site street\nK-7,4 Teaspoon Lane\n,6 Teaspoon Lane").get(0))
                .isEqualTo("K-7");
    }

    @Test
    void aRowOfWhichNeitherSiteNorSerialIsKnownHasNoNumber() {
        Register.Result read = Register.read(ASKED, "Job,Site street\n,");
        assertThat(read.jobs()).isEmpty();
        assertThat(read.codes()).contains("job-unnamed");
    }

    @Test
    void ourOwnNumbersAreKnownByTheirForm() {
        JobNumbers numbers = new JobNumbers("HW-*");
        assertThat(numbers.isLike(numbers(("Job,Plumber\n,")).get(0))).isTrue();
        assertThat(numbers.isLike("HW-12")).isFalse();
        assertThat(numbers.isLike("SB-1234567")).isFalse();
    }

    private static List<String> numbers(String csv) {
        return Register.read(ASKED, csv).jobs().stream().map(Job::reference).toList();
    }
}
