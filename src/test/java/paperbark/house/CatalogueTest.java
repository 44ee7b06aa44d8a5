package paperbark.house;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;

class CatalogueTest {

    @ParameterizedTest
    @EnumSource(FindingCode.class)
    void everyCodeSaysWhyItMattersInOneSentence(FindingCode code) {
        assertThat(code.why())
                .matches("[A-Z].*[a-z0-9]\\.")
                .doesNotContainIgnoringCase("invalid", "illegal", "please");
        assertThat(code.code()).matches("[a-z0-9-]+");
    }

    @ParameterizedTest
    @EnumSource(FindingCode.class)
    void onlyStopsHoldPapers(FindingCode code) {
        assertThat(code.holds().isEmpty() || code.severity() == Severity.STOP).isTrue();
    }
}
