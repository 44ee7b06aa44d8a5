package paperbark.cli;

import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import paperbark.answer.RulesInForce;
import paperbark.answer.RulesInForce.Row;
import paperbark.finding.RuleRef;
import paperbark.value.Days;

/** Tells the rules in force on the terminal, within 100 characters. */
final class RuleText {
    // The zones and the states of all postcodes would drown the rest.
    private static final int SHOWN_OF_A_TABLE = 20;
    private static final Columns ROW = new Columns(34, 32, 28);
    private static final Columns BELOW = new Columns(92);

    private final PrintWriter out;
    private final boolean all;

    /** Tells every row, or of long tables only how many there are. */
    RuleText(PrintWriter out, boolean all) {
        this.out = out;
        this.all = all;
    }

    /** Source and pinpoint. */
    static String source(RuleRef rule) {
        return rule.pinpoint().isEmpty() ? rule.source() : rule.source() + ", " + rule.pinpoint();
    }

    void print(RulesInForce rules) {
        section("Rules in force on " + Days.show(rules.asOf()), rules.inForce());
        section(
                "Lapsing within %d days, to %s"
                        .formatted(
                                rules.withinDays(),
                                Days.show(rules.asOf().plusDays(rules.withinDays()))),
                rules.lapsing());
        section(
                "Not confirmed for %d months".formatted(RulesInForce.OLD_AFTER_MONTHS),
                rules.unconfirmed());
    }

    private void section(String heading, List<Row> rows) {
        lines("", new Columns(98).row(heading + ": " + counted(rows.size()) + bySureness(rows)));
        out.println();
        Map<String, List<Row>> tables =
                rows.stream()
                        .collect(
                                Collectors.groupingBy(
                                        row -> row.line().ref().table(),
                                        LinkedHashMap::new,
                                        Collectors.toList()));
        tables.forEach(this::table);
    }

    private static String counted(int rows) {
        return rows == 0 ? "none" : rows == 1 ? "1 row" : rows + " rows";
    }

    private static String bySureness(List<Row> rows) {
        Map<String, Long> counts =
                rows.stream()
                        .collect(
                                Collectors.groupingBy(
                                        row -> row.line().ref().sure(),
                                        LinkedHashMap::new,
                                        Collectors.counting()));
        return counts.entrySet().stream()
                .map(e -> e.getValue() + " " + e.getKey())
                .reduce((a, b) -> a + "; " + b)
                .map(words -> " (" + words + ")")
                .orElse("");
    }

    private void table(String name, List<Row> rows) {
        out.println(name);
        if (rows.size() > SHOWN_OF_A_TABLE && !all) {
            out.println("  %s; --table %s shows them".formatted(counted(rows.size()), name));
        } else {
            rows.forEach(this::row);
        }
        out.println();
    }

    private void row(Row row) {
        String values = row.line().values().isEmpty() ? "no value" : row.line().values();
        lines(
                "  ",
                ROW.row(
                        row.line().key().isEmpty() ? "-" : row.line().key(),
                        values,
                        row.line().inForce().toString()));
        RuleRef ref = row.line().ref();
        String confirmed =
                row.line()
                        .confirmedOn()
                        .map(day -> "confirmed " + Days.show(day))
                        .orElse("not confirmed");
        String below =
                "row %d: %s; %s; %s".formatted(ref.row(), source(ref), ref.sure(), confirmed);
        lines("      ", BELOW.row(below));
        if (row.line().values().isEmpty() && !row.line().note().isEmpty()) {
            lines("      ", BELOW.row("why there is no value: " + row.line().note()));
        }
        if (row.beaten()) {
            lines("      ", BELOW.row("the firm's row for the same key wins"));
        }
        if (row.lastDay().isPresent()) {
            String next = row.goesOn() ? "a further row begins" : "no further row begins";
            lines("      ", BELOW.row(next + " the day after"));
        }
    }

    private void lines(String indent, List<String> lines) {
        lines.forEach(line -> out.println(indent + line));
    }
}
