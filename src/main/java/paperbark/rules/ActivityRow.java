package paperbark.rules;

import java.util.List;

/**
 * The Victorian activity of a pair of old and new heater.
 *
 * @param code such as {@code 1D}
 */
public record ActivityRow(String code) {
    /** The words for old heaters. */
    public static final List<String> OLD_KINDS =
            List.of(
                    "electric-storage",
                    "electric-instant",
                    "gas-storage",
                    "gas-instant",
                    "solar-electric",
                    "solar-gas",
                    "heat-pump",
                    "solid-fuel");

    /** The words for new heaters. */
    public static final List<String> NEW_KINDS =
            List.of("solar-electric", "solar-gas", "heat-pump");

    /**
     * What decides the activity.
     *
     * @param oldKind one of {@link #OLD_KINDS}
     * @param newKind one of {@link #NEW_KINDS}
     */
    public record Key(String oldKind, String newKind) {
        String text() {
            return oldKind + "|" + newKind;
        }
    }

    static final TableLayout<Key, ActivityRow> LAYOUT =
            TableLayout.of(
                    "veec/activities.csv",
                    List.of("old_kind", "new_kind", "activity"),
                    ActivityRow::read,
                    Key::text);

    private static ActivityRow read(RuleRow row) {
        row.word("old_kind", OLD_KINDS);
        row.word("new_kind", NEW_KINDS);
        return new ActivityRow(row.text("activity"));
    }
}
