package paperbark.value;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SmallValuesTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1234|$1,234.00",
                "1,234.5|$1,234.50",
                "$ 7,700.00|$7,700.00",
                "(150.00)|-$150.00",
                "\u2212 5|",
                "-5.00|-$5.00",
                "0|$0.00"
            })
    void amountsAreReadAsOfficesTypeThem(String typed, String shown) {
        assertThat(Money.parse(typed).toOptional().map(Money::toString))
                .isEqualTo(Optional.ofNullable(shown));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1.234,56",
                "12,34",
                "1,23,456",
                "1.005",
                "about 5",
                "",
                "1e3",
                "--5",
                "(-5)"
            })
    void aCommaIsNeverGuessed(String typed) {
        assertThat(Money.parse(typed).toOptional()).isEmpty();
    }

    @Property
    void printedAmountsReadBack(
            @ForAll @LongRange(min = -99_999_999, max = 99_999_999) long cents) {
        Money money = new Money(BigDecimal.valueOf(cents, 2));
        assertThat(Money.parse(money.toString()).toOptional()).contains(money);
    }

    @Test
    void moneyHasTwoDecimals() {
        assertThatThrownBy(() -> new Money(new BigDecimal("1.5")))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Money.of("1.005")).isInstanceOf(ArithmeticException.class);
    }

    @ParameterizedTest
    @CsvSource({"-0.01, true, false", "0.00, false, true", "0.01, false, false"})
    void nothingIsNeitherLessThanNothingNorSomething(
            String dollars, boolean negative, boolean zero) {
        assertThat(Money.of(dollars).isNegative()).isEqualTo(negative);
        assertThat(Money.of(dollars).isZero()).isEqualTo(zero);
    }

    // Source: GST Act s 9-90, half a cent goes up; 10 % of 1.05 and 1.15 are the cases that
    // floating point gets wrong.
    @ParameterizedTest
    @CsvSource({"1.05, 0.11", "1.15, 0.12", "1.04, 0.10"})
    void halfACentGoesUp(String price, String tenth) {
        Money rounded =
                new ExactMoney(new BigDecimal(price))
                        .times(new BigDecimal("0.1"))
                        .round(Rounding.GST_ACT);
        assertThat(rounded).isEqualTo(Money.of(tenth));
    }

    @ParameterizedTest
    @CsvSource({
        "2026-11-20",
        "20/11/2026",
        "20-11-2026",
        "20.11.2026",
        "20 Nov 2026",
        "20 November 2026",
        "'Fri, 20 Nov 2026'",
        "20-nov-2026"
    })
    void daysAreReadInTheAustralianOrder(String typed) {
        assertThat(Days.parse(typed).toOptional()).contains(LocalDate.of(2026, 11, 20));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "31/02/2026",
                "31/11/2026",
                "11/20/2026",
                "20/11/26",
                "29/02/2027",
                "soon",
                ""
            })
    void daysThatDoNotExistAreRefused(String typed) {
        assertThat(Days.parse(typed).toOptional()).isEmpty();
    }

    @Test
    void aYearOfTwoDigitsIsNamedAsSuch() {
        assertThat(((Parsed.Bad<LocalDate>) Days.parse("20/11/26")).fact()).contains("two digits");
        assertThat(((Parsed.Bad<LocalDate>) Days.parse("31/11/2026")).fact()).contains("calendar");
    }

    @Test
    void serialsAreComparedWithoutSpacesHyphensAndCase() {
        Serial a = Serial.parse("td-22 31a").toOptional().orElseThrow();
        Serial b = Serial.parse("TD2231A").toOptional().orElseThrow();
        assertThat(a.key()).isEqualTo(b.key());
        assertThat(a.seen()).isEqualTo("td-22 31a");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"1.23E+15", "1.23457e+15", "7E+12", "", "ab", "see photo", "TBA", "n/a"})
    void whatIsNoSerialIsRefused(String typed) {
        assertThat(Serial.parse(typed).toOptional()).isEmpty();
    }

    @Test
    void aSerialWithAnEInTheMiddleIsFine() {
        assertThat(Serial.parse("2E10").toOptional()).isPresent();
    }

    @ParameterizedTest
    @CsvSource({"vic, VIC", "Victoria, VIC", "N.S.W., NSW", "northern territory, NT"})
    void statesAreReadByAnyName(String typed, State state) {
        assertThat(State.parse(typed).toOptional()).contains(state);
    }

    @ParameterizedTest
    @ValueSource(strings = {"800", "0000", "33420", "VIC3"})
    void aPostcodeHasFourDigits(String typed) {
        assertThat(Postcode.parse(typed).toOptional()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-1", "+1", "1.5", "1 000", "12 L", "1e3", "1000000", "\u0661"})
    void aWholeNumberIsDigitsAlone(String typed) {
        assertThat(WholeNumber.parse("0").toOptional()).contains(0);
        assertThat(WholeNumber.parse("0999999").toOptional()).isEmpty();
        assertThat(WholeNumber.parse("999999").toOptional()).contains(999_999);
        assertThat(WholeNumber.parse(typed)).isInstanceOf(Parsed.Bad.class);
    }

    @Test
    void aRangeHoldsBothItsEnds() {
        DateRange range =
                new DateRange(
                        Optional.of(LocalDate.of(2026, 1, 1)),
                        Optional.of(LocalDate.of(2026, 6, 30)));
        assertThat(range.contains(LocalDate.of(2026, 1, 1))).isTrue();
        assertThat(range.contains(LocalDate.of(2026, 6, 30))).isTrue();
        assertThat(range.contains(LocalDate.of(2025, 12, 31))).isFalse();
        assertThat(range.contains(LocalDate.of(2026, 7, 1))).isFalse();
        assertThat(range).hasToString("1 Jan 2026 to 30 Jun 2026");
    }

    @Test
    void rangesThatTouchOverlap() {
        DateRange first = new DateRange(Optional.empty(), Optional.of(LocalDate.of(2026, 6, 30)));
        DateRange second = new DateRange(Optional.of(LocalDate.of(2026, 6, 30)), Optional.empty());
        DateRange third = new DateRange(Optional.of(LocalDate.of(2026, 7, 1)), Optional.empty());
        assertThat(first.overlaps(second)).isTrue();
        assertThat(first.overlaps(third)).isFalse();
        assertThat(third.overlaps(first)).isFalse();
    }

    @Test
    void theNearestNameIsOfferedOnlyWhenNear() {
        assertThat(Nearest.to("Ternligt 24", List.of("Ternlight 24", "Ternlight 30")))
                .contains("Ternlight 24");
        assertThat(Nearest.to("Boiler", List.of("Ternlight 24"))).isEmpty();
    }
}
