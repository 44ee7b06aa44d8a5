package paperbark.value;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ContactTest {

    // The numbers come from the ranges that the communications authority keeps for fiction.
    @ParameterizedTest
    @CsvSource({
        "0491 570 006, 0491 570 006",
        "0491570156, 0491 570 156",
        "+61 491 570 157, 0491 570 157",
        "03 5550 1234, (03) 5550 1234",
        "(08) 5550 1234, (08) 5550 1234",
        "1300 975 707, 1300 975 707",
        "13 00 00, 13 00 00"
    })
    void numbersAreShownOneWay(String typed, String shown) {
        assertThat(Phone.parse(typed).toOptional().map(Phone::full)).contains(shown);
    }

    @ParameterizedTest
    @ValueSource(strings = {"5550 1234", "0491 570", "ring the bell", "0000 000 000", ""})
    void otherTextIsNoNumber(String typed) {
        assertThat(Phone.parse(typed).toOptional()).isEmpty();
    }

    @Test
    void whatIsLoggedByMistakeGivesNothingAway() {
        assertThat(Phone.parse("0491 570 006").toOptional().orElseThrow()).hasToString("…006");
        assertThat(Email.parse("pat@example.com").toOptional().orElseThrow()).hasToString("…@…");
        assertThat(Bsb.parse("000-000").toOptional().orElseThrow()).hasToString("***-***");
        assertThat(AccountNumber.parse("00123").toOptional().orElseThrow()).hasToString("*****");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"pat@example", "pat.example.com", "pat@@example.com", "pat @example.com"})
    void otherTextIsNoAddress(String typed) {
        assertThat(Email.parse(typed).toOptional()).isEmpty();
    }

    @Test
    void leadingZerosOfBankNumbersCount() {
        assertThat(Bsb.parse("000 001").toOptional().map(Bsb::full)).contains("000-001");
        assertThat(AccountNumber.parse("000 123").toOptional().map(AccountNumber::full))
                .contains("000123");
        assertThat(Bsb.parse("1234567").toOptional()).isEmpty();
        assertThat(AccountNumber.parse("1234567890").toOptional()).isEmpty();
    }
}
