package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.derivedWhole;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import paperbark.value.Days;

/** One row a quarter and kind of job: the figures under the labels of the activity statement. */
final class QuartersTable {
    private static final Map<String, String> SUMS =
            Map.of(
                    "sales", "full",
                    "gst", "gst",
                    "later", "more-gst",
                    "credit", "credit");

    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("quarter", "Quarter", 22),
                    text("counted", "Counted as", 24),
                    whole("jobs", "Jobs", 9),
                    money("sales", "G1 Total sales"),
                    money("gst", "1A GST on sales"),
                    money("later", "1A later, when buyers pay"),
                    money("credit", "1B GST on purchases"));

    private QuartersTable() {}

    private record Group(LocalDate quarter, SaleState kind) {}

    /** The table over the rows of the GST table, the earliest quarter first. */
    static Table of(Table gst) {
        Map<LocalDate, Set<SaleState>> quarters = new TreeMap<>();
        GroupedSums<Group> sums =
                GroupedSums.of(
                        gst,
                        row -> {
                            Group group = group(gst, row);
                            quarters.computeIfAbsent(
                                            group.quarter(), q -> EnumSet.noneOf(SaleState.class))
                                    .add(group.kind());
                            return group;
                        });
        List<List<TableCell>> rows = new ArrayList<>();
        quarters.forEach(
                (first, kinds) ->
                        kinds.forEach(kind -> rows.add(row(sums, new Group(first, kind)))));
        return new Table(
                "Quarters",
                "GST by quarter",
                List.of(
                        "Labels of the activity statement. G1 and 1A on the day of installation:"
                                + " only what is installed is a sale; booked jobs are an"
                                + " outlook. A held claim puts off no GST on the price.",
                        "1A later: GST on what buyers pay beyond discounts, in the quarter in"
                                + " which they pay; the command quarters counts it then. 1B"
                                + " holds only what comes of assignments to the firm itself,"
                                + " once it has the owner's tax invoice; your other purchases"
                                + " are not known here. Which day counts for you, your"
                                + " accountant says."),
                COLUMNS,
                rows,
                List.of());
    }

    private static Group group(Table gst, List<TableCell> row) {
        LocalDate first =
                gst.value(row, "day") instanceof Value.Day day
                        ? Days.firstOfQuarter(day.day())
                        : LocalDate.MAX;
        return new Group(first, SaleState.of(gst.value(row, "counted").shown()));
    }

    private static List<TableCell> row(GroupedSums<Group> sums, Group group) {
        String which = "[Gst:quarter],[quarter],[Gst:counted],[counted]";
        return COLUMNS.stream()
                .map(
                        column ->
                                switch (column.key()) {
                                    case "quarter" -> text(GstTable.quarter(group.quarter()));
                                    case "counted" -> text(group.kind().word());
                                    case "jobs" ->
                                            derivedWhole(
                                                    "COUNTIFS(" + which + ")", sums.rows(group));
                                    default -> sum(sums, group, SUMS.get(column.key()), which);
                                })
                .toList();
    }

    private static TableCell sum(GroupedSums<Group> sums, Group group, String key, String which) {
        return derivedMoney("SUMIFS([Gst:" + key + "]," + which + ")", sums.sum(group, key));
    }
}
