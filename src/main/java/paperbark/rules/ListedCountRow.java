package paperbark.rules;

import java.util.List;

/**
 * The number of VEECs that a published list gives for a product. Shipped empty; the firm enters
 * what it read.
 *
 * @param certificates whole VEECs for one product
 */
public record ListedCountRow(int certificates) {

    /**
     * What the count belongs to.
     *
     * @param maker as in the products table
     * @param model as in the products table
     * @param activity code such as {@code 1D}
     * @param climateZone 4 or 5
     */
    public record Key(String maker, String model, String activity, int climateZone) {
        String text() {
            return maker + "|" + model + "|" + activity + "|" + climateZone;
        }
    }

    static final TableLayout<Key, ListedCountRow> LAYOUT =
            TableLayout.of(
                    "veec/listed-counts.csv",
                    List.of("maker", "model", "activity", "climate_zone", "certificates"),
                    row -> new ListedCountRow(row.whole("certificates")),
                    Key::text);
}
