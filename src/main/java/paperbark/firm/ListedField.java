package paperbark.firm;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import paperbark.sheet.ColumnField;

/** Everything that a published list of models can say of one; each is a column of products. */
public enum ListedField implements ColumnField {
    MAKER("Maker", true),
    MODEL("Model", true),
    KIND("Kind", false),
    BOOST("Boost", false),
    LITRES("Litres", false),
    TUBES_OR_PANELS("Tubes or panels", false),
    ELIGIBLE_FROM("Eligible from", true),
    ELIGIBLE_TO("Eligible to", false),
    STCS_BASIS("STCs basis", false),
    STCS_ZONE_1("STCs zone 1", false),
    STCS_ZONE_2("STCs zone 2", false),
    STCS_ZONE_3("STCs zone 3", false),
    STCS_ZONE_4("STCs zone 4", false),
    STCS_ZONE_5("STCs zone 5", false);

    private final String label;
    private final boolean needed;

    ListedField(String label, boolean needed) {
        this.label = label;
        this.needed = needed;
    }

    /** Those that a newer list may change. */
    static List<ListedField> figures() {
        return Stream.of(values())
                .filter(f -> f == ELIGIBLE_TO || f.name().startsWith("STCS_"))
                .toList();
    }

    /** Its column in the table of products. */
    public String column() {
        return name().toLowerCase(Locale.ROOT);
    }

    @Override
    public String key() {
        return column().replace('_', '-');
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public boolean isNeeded() {
        return needed;
    }
}
