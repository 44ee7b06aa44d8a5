package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SerialLengthTest {

    @ParameterizedTest
    @CsvSource({"T[0-9]{2}-[0-9]{6}, 10", "[0-9]{16}, 16", "AB\\d{4}, 6", "[A-Z]\\.[^0]{3}, 5"})
    void aSimpleFormTellsHowManySignsASerialHas(String form, int signs) {
        assertThat(SerialLength.of(Pattern.compile(form))).isEqualTo(Optional.of(signs));
    }

    @ParameterizedTest
    @ValueSource(strings = {"[0-9]+", "A?[0-9]{4}", "(A|BC)[0-9]", "[0-9]{3,5}", "A|BC", "\\bA1"})
    void aFormOfSerialsOfSeveralLengthsTellsNothing(String form) {
        assertThat(SerialLength.of(Pattern.compile(form))).isEmpty();
    }

    @Test
    void moreSignsThanARowOfCellsHoldsAreWrittenIntoABox() {
        assertThat(SerialLength.of(Pattern.compile("[0-9]{40}"))).isEmpty();
    }
}
