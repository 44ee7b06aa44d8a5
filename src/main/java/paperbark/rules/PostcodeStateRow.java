package paperbark.rules;

import java.util.List;
import java.util.stream.Stream;
import paperbark.rules.RuleRow.WrongCell;
import paperbark.value.Postcode;
import paperbark.value.State;

/**
 * In which states a postcode lies. A state in the register is never overwritten by it.
 *
 * @param states the usual one first; several where the postcode crosses a border
 * @param street whether a heater can stand there; otherwise it is for post office boxes
 */
public record PostcodeStateRow(List<State> states, boolean street) {
    static final TableLayout<Postcode, PostcodeStateRow> LAYOUT =
            new TableLayout<>(
                    "au/postcode-states.csv",
                    List.of("postcode_from", "postcode_to"),
                    List.of("states", "use"),
                    List.of(),
                    PostcodeStateRow::read,
                    Postcode::digits);

    /** Keeps the states from being changed. */
    public PostcodeStateRow {
        states = List.copyOf(states);
    }

    private static PostcodeStateRow read(RuleRow row) {
        List<State> states =
                Stream.of(row.text("states").split(" ")).map(PostcodeStateRow::state).toList();
        boolean street = row.word("use", List.of("street", "box")).equals("street");
        return new PostcodeStateRow(states, street);
    }

    private static State state(String word) {
        return State.parse(word)
                .toOptional()
                .orElseThrow(() -> new WrongCell("\"" + word + "\" is no state"));
    }
}
