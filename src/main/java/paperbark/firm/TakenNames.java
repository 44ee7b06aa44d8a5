package paperbark.firm;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import paperbark.value.NameKey;

/** Names compared whatever their case and spacing; each may be taken once. */
final class TakenNames {
    private final Map<String, TableRow> taken = new HashMap<>();

    /** The name as compared. */
    static String key(String name) {
        return NameKey.of(name);
    }

    /** What a maker's model goes by among the models of all makers. */
    static String model(String maker, String model) {
        return maker + "|" + model;
    }

    /** Takes the name for the row, with a finding on the row where another row has it already. */
    void take(String name, TableRow row) {
        TableRow earlier = taken.putIfAbsent(key(name), row);
        if (earlier != null) {
            row.wrongRow(
                    "Row " + earlier.number() + " has the same name, " + name + ".",
                    "Keep one row a name and remove the other.",
                    List.of(earlier.place()));
        }
    }
}
