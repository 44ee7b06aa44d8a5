package paperbark.output.table;

import static paperbark.output.table.EveryOfferTable.worthOf;
import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableCell.whole;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.offer.Comparison;
import paperbark.offer.LeftOut;
import paperbark.offer.Quote;
import paperbark.value.Money;

/** One row a claim: the offer taken, the runner-up and what lies between them. */
public final class ChoicesTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("job", "Job", 10),
                    text("owner", "Owner", 16),
                    text("scheme", "Scheme", 10),
                    whole("certificates", "Certificates", 14),
                    text("how", "Chosen because", 14),
                    text("buyer", "Buyer taken", 16),
                    whole("line", "Its line", 6),
                    dollars("worth", "Worth to the firm"),
                    text("next", "Runner-up", 16),
                    whole("next-line", "Its line there", 8),
                    dollars("next-worth", "Worth of runner-up"),
                    dollars("difference", "Difference"),
                    whole("best-line", "Line of best", 6),
                    dollars("cost", "Best is worth more by"),
                    whole("last-line", "Line of last", 6),
                    dollars("spread", "Best less last"),
                    text("left-out", "Left out", 36));

    private ChoicesTable() {}

    /** The table of the batch. */
    static Table of(List<ComparedClaim> claims) {
        Table table =
                new Table(
                        "Choices",
                        "Offers compared",
                        List.of(
                                "Every claim that is not held, with the offers in force on the day of this run. Lines are"
                                        + " those of the sheet Every offer. Best is worth more by: what a"
                                        + " buyer fixed in the register, or the firm's policy, costs."),
                        COLUMNS,
                        MadeRows.of(claims, ChoicesTable::row),
                        List.of());
        return Totals.ofMoney(table);
    }

    private static List<TableCell> row(ComparedClaim claim) {
        Comparison comparison = claim.comparison();
        Optional<Quote> taken = comparison.chosen();
        Optional<Quote> next = comparison.runnerUp();
        boolean any = !comparison.ranked().isEmpty();
        return List.of(
                text(claim.file().job().reference()),
                text(claim.file().job().owner().names()),
                text(comparison.scheme().word()),
                whole(comparison.certificates()),
                text(taken.isPresent() ? comparison.how() : "no offer can be taken"),
                text(taken.map(q -> q.offer().buyer())),
                line(claim, taken),
                worth("line", taken),
                text(next.map(q -> q.offer().buyer())),
                line(claim, next),
                worth("next-line", next),
                comparison
                        .difference()
                        .map(d -> derivedMoney("[worth]-[next-worth]", d))
                        .orElse(TableCell.BLANK),
                any ? whole(claim.firstLine()) : TableCell.BLANK,
                taken.isPresent()
                        ? derivedMoney(worthOf("best-line") + "-[worth]", comparison.costOfChoice())
                        : TableCell.BLANK,
                any ? whole(claim.lastLine()) : TableCell.BLANK,
                any
                        ? derivedMoney(
                                worthOf("best-line") + "-" + worthOf("last-line"),
                                spread(comparison.ranked()))
                        : TableCell.BLANK,
                text(leftOut(comparison)));
    }

    /** Narrow, so that the sheet can still be read on paper. */
    private static TableColumn dollars(String key, String heading) {
        return new TableColumn(key, heading, Kind.MONEY, 12);
    }

    private static TableCell line(ComparedClaim claim, Optional<Quote> quote) {
        return quote.map(q -> whole(claim.lineOf(q))).orElse(TableCell.BLANK);
    }

    private static TableCell worth(String line, Optional<Quote> quote) {
        return quote.map(q -> derivedMoney(worthOf(line), q.worth())).orElse(TableCell.BLANK);
    }

    private static Money spread(List<Quote> ranked) {
        return ranked.get(0).worth().minus(ranked.get(ranked.size() - 1).worth());
    }

    private static String leftOut(Comparison comparison) {
        return comparison.leftOut().stream()
                .filter(LeftOut::inForce)
                .map(LeftOut::inWords)
                .collect(Collectors.joining("; "));
    }
}
