package paperbark.output.table;

import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.List;
import paperbark.finding.RuleRef;
import paperbark.output.BatchView;

/** Every rule row that a figure of the batch rests on. */
public final class RulesTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("table", "Table", 28),
                    whole("line", "Line", 8),
                    text("source", "Source", 62),
                    text("pinpoint", "Where in the source", 34),
                    text("confidence", "How sure", 22));

    private RulesTable() {}

    /** The table of the batch. */
    public static Table of(BatchView view) {
        return new Table(
                "Rules",
                "Rules and sources",
                List.of(
                        "The rows of the rule tables that were used. Read the source before you rely on"
                                + " anything that is not marked as published."),
                COLUMNS,
                view.rules().stream().map(RulesTable::row).toList(),
                List.of());
    }

    private static List<TableCell> row(RuleRef rule) {
        return List.of(
                text(rule.table()),
                rule.row() > 0 ? TableCell.whole(rule.row()) : TableCell.BLANK,
                text(rule.source()),
                text(rule.pinpoint()),
                text(rule.sure()));
    }
}
