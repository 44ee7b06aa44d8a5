package paperbark.rules;

import java.math.BigDecimal;
import java.util.List;
import paperbark.rules.RuleRow.WrongCell;
import paperbark.value.State;

/**
 * The outermost points of a state, islands included: what lies outside of them is not in the state.
 * What lies within may be in a neighbouring one.
 *
 * @param north the northern edge, in degrees south of the equator
 * @param south the southern edge, likewise; the larger number
 * @param west the western edge, in degrees east of Greenwich
 * @param east the eastern edge, likewise; the larger number
 */
public record StateBoxRow(BigDecimal north, BigDecimal south, BigDecimal west, BigDecimal east) {
    static final TableLayout<State, StateBoxRow> LAYOUT =
            new TableLayout<>(
                    "au/state-boxes.csv",
                    List.of("state"),
                    List.of(
                            "north_edge_degrees_south",
                            "south_edge_degrees_south",
                            "west_edge_degrees_east",
                            "east_edge_degrees_east"),
                    List.of(),
                    StateBoxRow::read,
                    State::name);

    /**
     * Whether a place lies within the edges, which belong to it.
     *
     * @param degreesSouth of the equator; negative in the northern half
     * @param degreesEast of Greenwich; negative in the western half
     */
    public boolean holds(BigDecimal degreesSouth, BigDecimal degreesEast) {
        return isWithin(north, degreesSouth, south) && isWithin(west, degreesEast, east);
    }

    private static boolean isWithin(BigDecimal low, BigDecimal value, BigDecimal high) {
        return low.compareTo(value) <= 0 && value.compareTo(high) <= 0;
    }

    private static StateBoxRow read(RuleRow row) {
        if (State.parse(row.text("state")).toOptional().isEmpty()) {
            throw new WrongCell("\"" + row.text("state") + "\" is no state");
        }
        StateBoxRow box =
                new StateBoxRow(
                        row.decimal("north_edge_degrees_south"),
                        row.decimal("south_edge_degrees_south"),
                        row.decimal("west_edge_degrees_east"),
                        row.decimal("east_edge_degrees_east"));
        if (box.north.compareTo(box.south) >= 0 || box.west.compareTo(box.east) >= 0) {
            throw new WrongCell("an edge lies beyond the one opposite");
        }
        return box;
    }
}
