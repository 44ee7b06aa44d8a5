package paperbark.rules;

import java.util.List;
import java.util.Optional;
import paperbark.value.Postcode;

/**
 * The federal zones of a postcode. They depend on the technology.
 *
 * @param solar zone of solar heaters, 1 to 4; empty where the table names none
 * @param heatPump zone of heat pumps, 1 to 5; empty where the table names none
 */
public record ZoneRow(Optional<Integer> solar, Optional<Integer> heatPump) {
    static final TableLayout<Postcode, ZoneRow> LAYOUT =
            new TableLayout<>(
                    "stc/zones.csv",
                    List.of("postcode_from", "postcode_to"),
                    List.of("solar_zone", "heat_pump_zone"),
                    List.of("solar_zone", "heat_pump_zone"),
                    ZoneRow::read,
                    Postcode::digits);

    /** The zone of the technology. */
    public Optional<Integer> zone(boolean isSolar) {
        return isSolar ? solar : heatPump;
    }

    private static ZoneRow read(RuleRow row) {
        Optional<Integer> solar = row.wholeOrBlank("solar_zone");
        Optional<Integer> heatPump = row.wholeOrBlank("heat_pump_zone");
        if (solar.filter(z -> z < 1 || z > 4).isPresent()) {
            throw new RuleRow.WrongCell("solar_zone is not 1 to 4");
        }
        if (heatPump.filter(z -> z < 1 || z > 5).isPresent()) {
            throw new RuleRow.WrongCell("heat_pump_zone is not 1 to 5");
        }
        return new ZoneRow(solar, heatPump);
    }
}
