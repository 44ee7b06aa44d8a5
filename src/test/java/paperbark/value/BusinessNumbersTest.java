package paperbark.value;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BusinessNumbersTest {

    // Source: the Business Register's usual example, and numbers in the documentation of a large
    // accounting program.
    @ParameterizedTest
    @ValueSource(
            strings = {
                "51 824 753 556",
                "53 004 085 616",
                "83 914 571 673",
                "11223491505",
                "20561300000",
                "31010111200",
                "90000100000",
                "60231941111",
                "65118220001"
            })
    void publishedNumbersAreAccepted(String number) {
        assertThat(Abn.parse(number).toOptional()).isPresent();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "11223493504",
                "10 000 000 000",
                "10 246 946 050",
                "00 000 000 000",
                "5182475355",
                "518247535566",
                "51 824 753 55X",
                "５１824753556",
                ""
            })
    void otherNumbersAreRefused(String number) {
        assertThat(Abn.parse(number).toOptional()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"51-824-753-556", "51.824.753.556", " 51824753556 "})
    void hyphensDotsAndSpacesDoNotCount(String number) {
        assertThat(Abn.parse(number).toOptional().map(Abn::toString)).contains("51 824 753 556");
    }

    @Property
    void noSingleWrongDigitPasses(
            @ForAll @IntRange(min = 0, max = 10) int place,
            @ForAll @IntRange(min = 1, max = 9) int change) {
        StringBuilder wrong = new StringBuilder("51824753556");
        int digit = (wrong.charAt(place) - '0' + change) % 10;
        wrong.setCharAt(place, (char) ('0' + digit));
        assertThat(Abn.parse(wrong.toString()).toOptional()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"004 085 616", "000 000 019", "010 499 966"})
    void companyNumbersAreAccepted(String number) {
        assertThat(Acn.parse(number).toOptional().map(Acn::toString)).contains(number);
    }

    @ParameterizedTest
    @ValueSource(strings = {"004 085 617", "000 000 000", "12345678", "1234567890", "00408561６"})
    void otherCompanyNumbersAreRefused(String number) {
        assertThat(Acn.parse(number).toOptional()).isEmpty();
    }
}
