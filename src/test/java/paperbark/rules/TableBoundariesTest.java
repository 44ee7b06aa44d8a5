package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import paperbark.finding.RuleRef;

/** The day before, the first, the last and the day after, of every row of every shipped table. */
class TableBoundariesTest {
    private static final Rulebook RULES = Rulebook.load(Optional.empty());

    @TestFactory
    Stream<DynamicTest> everyRowSpeaksFromItsFirstToItsLastDay() {
        return RULES.all().stream()
                .filter(t -> !t.rows().isEmpty())
                .map(
                        t ->
                                DynamicTest.dynamicTest(
                                        t.name(), () -> t.rows().forEach(r -> speaks(t, r))));
    }

    private static void speaks(RuleTable<?, ?> table, RuleRow row) {
        for (String key : List.of(row.key().first(), row.key().last())) {
            row.inForce()
                    .from()
                    .ifPresent(
                            first -> {
                                assertThat(ref(table, first, key)).contains(row.ref());
                                assertThat(ref(table, first.minusDays(1), key))
                                        .isNotEqualTo(Optional.of(row.ref()));
                            });
            row.inForce()
                    .to()
                    .ifPresent(
                            last -> {
                                assertThat(ref(table, last, key)).contains(row.ref());
                                assertThat(ref(table, last.plusDays(1), key))
                                        .isNotEqualTo(Optional.of(row.ref()));
                            });
        }
    }

    private static Optional<RuleRef> ref(RuleTable<?, ?> table, LocalDate day, String key) {
        return table.speaking(day, key).map(e -> e.raw().ref());
    }

    @Test
    void everyRangeOfPostcodesSpeaksFromItsFirstToItsLast() {
        LocalDate day = LocalDate.of(2026, 11, 20);
        for (RuleTable<?, ?> table : List.of(RULES.zones(), RULES.postcodeStates())) {
            for (RuleRow row : table.rows()) {
                int first = Integer.parseInt(row.key().first());
                int last = Integer.parseInt(row.key().last());
                assertThat(ref(table, day, postcode(first))).contains(row.ref());
                assertThat(ref(table, day, postcode(last))).contains(row.ref());
                assertThat(ref(table, day, postcode(first - 1)))
                        .isNotEqualTo(Optional.of(row.ref()));
                assertThat(ref(table, day, postcode(last + 1)))
                        .isNotEqualTo(Optional.of(row.ref()));
            }
        }
    }

    private static String postcode(int number) {
        return "%04d".formatted(number);
    }

    @Test
    void theYearsFallByOneEachYearToNone() {
        for (int year = 2022; year <= 2030; year++) {
            assertThat(years(LocalDate.of(year, 1, 1))).isEqualTo(2031 - year);
            assertThat(years(LocalDate.of(year, 12, 31))).isEqualTo(2031 - year);
        }
        assertThat(years(LocalDate.of(2031, 1, 1))).isZero();
        assertThat(years(LocalDate.of(2001, 4, 1))).isEqualTo(10);
    }

    private static int years(LocalDate day) {
        return RULES.years().on(day, Unkeyed.ALL).orElseThrow().row().years();
    }
}
