package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.value.State;

/** Places known from memory, to a tenth of a degree, lie where they should. */
class StateBoxesTest {
    private static final RuleTable<State, StateBoxRow> TABLE =
            Rulebook.load(Optional.empty()).stateBoxes();

    @ParameterizedTest
    @CsvSource({
        "38.2, 144.4, VIC",
        "37.6, 144.2, NSW VIC",
        "34.2, 142.1, VIC NSW",
        "33.9, 151.2, NSW",
        "31.5, 159.1, NSW",
        "36.1, 146.9, VIC NSW",
        "35.3, 149.1, NSW ACT VIC",
        "27.5, 153.0, QLD",
        "10.6, 142.2, QLD",
        "34.9, 138.6, SA",
        "32.0, 115.9, WA",
        "42.9, 147.3, TAS",
        "39.9, 143.9, TAS",
        "12.5, 130.8, NT",
        "23.7, 133.9, NT",
        "-48.1, 11.6, ''",
        "36.8, 174.8, ''"
    })
    void aPlaceLiesInTheBoxesOf(BigDecimal south, BigDecimal east, String states) {
        List<State> expected =
                Arrays.stream(states.split(" "))
                        .filter(s -> !s.isEmpty())
                        .map(State::valueOf)
                        .toList();
        assertThat(Arrays.stream(State.values()).filter(s -> box(s).holds(south, east)))
                .containsExactlyInAnyOrderElementsOf(expected);
    }

    @Test
    void edgesBelongToTheBox() {
        StateBoxRow tasmania = box(State.TAS);
        assertThat(tasmania.holds(new BigDecimal("39.1"), new BigDecimal("143.7"))).isTrue();
        assertThat(tasmania.holds(new BigDecimal("39.09"), new BigDecimal("143.7"))).isFalse();
        assertThat(tasmania.holds(new BigDecimal("43.8"), new BigDecimal("148.6"))).isTrue();
        assertThat(tasmania.holds(new BigDecimal("43.8"), new BigDecimal("148.61"))).isFalse();
    }

    private static StateBoxRow box(State state) {
        return TABLE.on(LocalDate.of(2026, 11, 23), state).orElseThrow().row();
    }
}
