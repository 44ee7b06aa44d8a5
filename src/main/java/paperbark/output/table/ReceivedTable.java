package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.derivedWhole;
import static paperbark.output.table.TableCell.money;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import paperbark.output.BatchView;
import paperbark.output.Receivable;
import paperbark.value.Days;
import paperbark.value.Money;

/** One row a claim that the ledger knows: what has come, and how long the rest is overdue. */
public final class ReceivedTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("job", "Job", 13),
                    text("scheme", "Scheme", 11),
                    text("buyer", "Buyer", 26),
                    whole("certificates", "Certificates", 14),
                    money("expected", "Expected"),
                    date("due", "Due"),
                    money("received", "Received"),
                    money("open", "Still open"),
                    money("over", "More than expected"),
                    whole("overdue", "Days overdue", 11),
                    text("state", "State", 22),
                    date("closing", "Closing date"),
                    whole("days-left", "Days to closing", 12));

    private ReceivedTable() {}

    /** The table of the batch. */
    public static Table of(BatchView view) {
        LocalDate today = view.info().preparedOn();
        String note =
                view.receivables().isEmpty()
                        ? "Nothing is known here yet: no ledger of earlier claims went into this run."
                        : "Days count from " + Days.show(today) + ", the day of this run.";
        Table table =
                new Table(
                        "Received",
                        "Received and overdue",
                        List.of(note),
                        COLUMNS,
                        MadeRows.of(view.receivables(), r -> row(r, today)),
                        List.of());
        return Totals.ofMoney(table);
    }

    private static List<TableCell> row(Receivable claim, LocalDate today) {
        Money open = claim.open();
        long late = ChronoUnit.DAYS.between(claim.due(), today);
        String day = DeadlinesTable.formula(today);
        return List.of(
                text(claim.job()),
                text(claim.scheme().word()),
                text(claim.buyer().isEmpty() ? ClaimFacts.NO_BUYER : claim.buyer()),
                TableCell.whole(claim.certificates()),
                money(claim.expected()),
                TableCell.day(claim.due()),
                money(claim.received()),
                derivedMoney("MAX(0,[expected]-[received])", open),
                derivedMoney("MAX(0,[received]-[expected])", claim.over()),
                derivedWhole(
                        "IF(ROUND([open],2)>0,MAX(0," + day + "-[due]),0)",
                        open.isZero() ? 0 : Math.max(0, late)),
                text(claim.state()),
                TableCell.of(Value.day(claim.closing())),
                claim.closing()
                        .map(
                                last ->
                                        derivedWhole(
                                                "[closing]-" + day,
                                                ChronoUnit.DAYS.between(today, last)))
                        .orElse(TableCell.BLANK));
    }
}
