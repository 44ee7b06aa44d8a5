package paperbark.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** The rules in force for other programs. */
public final class RulesJson {
    private RulesJson() {}

    /**
     * One JSON object: {@code asOf}, {@code withinDays}, and the rows {@code inForce}, {@code
     * lapsing} and {@code unconfirmed}, each with table, row, key, values, period, source,
     * pinpoint, confidence, the confidence in words as {@code sure}, day of the last look at the
     * source and note. What is not known is not there.
     */
    public static String of(RulesInForce rules) {
        ObjectNode root = FindingsJson.object();
        root.put("asOf", rules.asOf().toString());
        root.put("withinDays", rules.withinDays());
        rows(root.putArray("inForce"), rules.inForce());
        rows(root.putArray("lapsing"), rules.lapsing());
        rows(root.putArray("unconfirmed"), rules.unconfirmed());
        return FindingsJson.text(root);
    }

    private static void rows(ArrayNode array, List<RulesInForce.Row> rows) {
        for (RulesInForce.Row row : rows) {
            ObjectNode node = array.addObject();
            ExplanationJson.rule(node, row.ref());
            node.put("key", row.key());
            node.put("values", row.values());
            node.put("period", row.period());
            row.lastDay().ifPresent(day -> node.put("lastDay", day.toString()));
            node.put("goesOn", row.goesOn());
            node.put("beaten", row.beaten());
            row.confirmedOn().ifPresent(day -> node.put("confirmedOn", day.toString()));
            node.put("note", row.note());
        }
    }
}
