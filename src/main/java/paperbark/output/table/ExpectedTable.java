package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedDay;
import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.flag;
import static paperbark.output.table.TableCell.money;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.flag;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import paperbark.offer.Expected;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;

/** One row a claim that a buyer's offer was found for. */
public final class ExpectedTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("job", "Job", 12),
                    text("owner", "Owner", 22),
                    text("buyer", "Buyer", 22),
                    text("scheme", "Scheme", 10),
                    whole("certificates", "Certificates", 13),
                    new TableColumn("price", "Price each", Kind.PRICE, 12),
                    money("gross", "Gross"),
                    money("gst", "GST on top"),
                    money("fee", "Fee"),
                    money("net", "Buyer pays"),
                    money("to-owner", "To the owner"),
                    money("to-firm", "To the firm"),
                    date("due", "Due"),
                    date("week", "In the week from"),
                    flag("held", "Held", 8));

    /** A claim with its job. */
    private record Claim(CaseFile file, Expected expected) {}

    private ExpectedTable() {}

    /** The table of the batch. */
    public static Table of(BatchView view) {
        List<Claim> claims =
                view.cases().stream()
                        .flatMap(file -> file.expected().stream().map(e -> new Claim(file, e)))
                        .toList();
        Table table =
                new Table(
                        "Expected",
                        "Expected claims",
                        List.of(
                                "What buyers pay for certificates. Where the owner is paid, only the rest"
                                        + " is the firm's; below zero, the firm makes it good. Due: the"
                                        + " day of payment when the claim is lodged on the day of this"
                                        + " run. Held: the assignment is kept back, so nothing comes"
                                        + " until it is mended."),
                        COLUMNS,
                        MadeRows.of(claims, c -> row(c.file(), c.expected())),
                        List.of());
        return Totals.ofMoney(table);
    }

    /** The Monday of a day's week. */
    static LocalDate week(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    private static List<TableCell> row(CaseFile file, Expected expected) {
        return List.of(
                text(file.job().reference()),
                text(file.job().owner().names()),
                text(expected.buyer().name()),
                text(expected.scheme().word()),
                TableCell.whole(expected.certificates()),
                TableCell.of(new Value.Price(expected.offer().pricePerCertificate().amount())),
                derivedMoney("ROUND([certificates]*[price],2)", expected.gross()),
                money(expected.gst()),
                money(expected.fee()),
                derivedMoney("[gross]+[gst]-[fee]", expected.net()),
                money(expected.split().toOwner()),
                derivedMoney("[net]-[to-owner]", expected.split().toFirm()),
                TableCell.day(expected.due()),
                derivedDay("[due]-WEEKDAY([due],2)+1", week(expected.due())),
                flag(ClaimFacts.isHeld(file, expected.scheme())));
    }
}
