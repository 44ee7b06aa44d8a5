package paperbark.rules;

import java.util.List;

/**
 * The share of a price with GST that is GST.
 *
 * @param priceDivisor 11 means one eleventh
 */
public record GstRow(int priceDivisor) {
    static final TableLayout<Unkeyed, GstRow> LAYOUT =
            TableLayout.of("gst.csv", List.of("price_divisor"), GstRow::read, Unkeyed::text);

    private static GstRow read(RuleRow row) {
        int divisor = row.whole("price_divisor");
        if (divisor < 2) {
            throw new RuleRow.WrongCell("price_divisor is less than 2");
        }
        return new GstRow(divisor);
    }
}
