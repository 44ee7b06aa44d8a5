package paperbark.rules;

import java.util.List;

/**
 * The climate zone of the Victorian scheme for a federal zone.
 *
 * @param zone 4 or 5
 */
public record ClimateZoneRow(int zone) {
    static final TableLayout<Integer, ClimateZoneRow> LAYOUT =
            TableLayout.of(
                    "veec/climate-zones.csv",
                    List.of("stc_zone", "climate_zone"),
                    row -> new ClimateZoneRow(row.whole("climate_zone")),
                    stcZone -> Integer.toString(stcZone));
}
