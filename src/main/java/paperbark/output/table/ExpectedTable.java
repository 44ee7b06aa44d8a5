package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedDay;
import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.money;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import paperbark.offer.Expected;
import paperbark.offer.Split;
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
                    dollars("gross", "Gross"),
                    dollars("fee", "Fee"),
                    dollars("net", "Buyer pays"),
                    dollars("to-owner", "To the owner"),
                    dollars("of-top", "Of that from GST on top"),
                    dollars("to-firm", "To the firm"),
                    dollars("beyond", "Beyond the discount"),
                    dollars("firm-gst", "GST on that"),
                    dollars("gst", "GST on top"),
                    dollars("top-left", "Of that nobody's yet"),
                    date("due", "Due"),
                    date("week", "In the week from"),
                    text("standing", "Stands", 10));

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
                                        + " until it is mended, and it is summed apart.",
                                ClaimFacts.ON_TOP,
                                "Beyond the discount: below zero where the buyer pays the firm less."
                                        + " GST on that: "
                                        + GstTable.RULE),
                        COLUMNS,
                        MadeRows.of(claims, c -> row(c.file(), c.expected())),
                        List.of());
        GroupedSums<Boolean> sums = GroupedSums.of(table, row -> ClaimFacts.isHeld(table, row));
        return table.withFooters(List.of(total(table, sums, false), total(table, sums, true)));
    }

    /** The sums of all claims but the held, or of these alone. */
    private static List<TableCell> total(Table table, GroupedSums<Boolean> sums, boolean held) {
        return table.columns().stream()
                .map(
                        column -> {
                            if (column.key().equals("job")) {
                                return text(held ? "Held" : "Total");
                            }
                            return column.kind() == Kind.MONEY
                                    ? sum(sums, column.key(), held)
                                    : TableCell.BLANK;
                        })
                .toList();
    }

    private static TableCell sum(GroupedSums<Boolean> sums, String key, boolean held) {
        return derivedMoney(
                "SUMIFS([Expected:%s],%s)".formatted(key, ClaimFacts.standing("Expected", held)),
                sums.sum(held, key));
    }

    /** The Monday of a day's week. */
    static LocalDate week(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    /** Narrow, since there are many. */
    private static TableColumn dollars(String key, String heading) {
        return new TableColumn(key, heading, Kind.MONEY, 12);
    }

    private static List<TableCell> row(CaseFile file, Expected expected) {
        Split split = expected.split();
        return List.of(
                text(file.job().reference()),
                text(file.job().owner().names()),
                text(expected.buyer().name()),
                text(expected.scheme().word()),
                TableCell.whole(expected.certificates()),
                TableCell.of(new Value.Price(expected.offer().pricePerCertificate().amount())),
                derivedMoney("ROUND([certificates]*[price],2)", expected.gross()),
                money(expected.fee()),
                derivedMoney("[gross]-[fee]", expected.net()),
                money(split.toOwner()),
                money(split.ofTop()),
                derivedMoney("[net]-[to-owner]+[of-top]", split.toFirm()),
                money(split.beyond()),
                money(split.firmGst()),
                money(expected.gst()),
                derivedMoney("[gst]-[of-top]", expected.topLeft()),
                TableCell.day(expected.due()),
                derivedDay("[due]-WEEKDAY([due],2)+1", week(expected.due())),
                text(file.standing(expected.scheme()).word()));
    }
}
