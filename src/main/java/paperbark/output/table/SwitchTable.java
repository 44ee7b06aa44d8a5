package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.derivedWhole;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import paperbark.offer.Quote;
import paperbark.value.SchemeName;

/** One row a scheme and buyer: what giving the whole week to that buyer would bring. */
final class SwitchTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("scheme", "Scheme", 34),
                    text("buyer", "Buyer", 30),
                    whole("claims", "Claims it takes", 15),
                    whole("others", "Claims it does not take", 15),
                    money("worth", "Worth, all to this buyer"),
                    money("as-taken", "The same claims as taken"),
                    money("switching", "Switching brings"));

    /** What a buyer would bring for a scheme. */
    private static final class Sum {
        private long claims;
        private BigDecimal worth = BigDecimal.ZERO.setScale(2);
        private BigDecimal asTaken = BigDecimal.ZERO.setScale(2);

        private void add(ComparedClaim claim, Quote quote) {
            claims++;
            worth = worth.add(quote.worth().amount());
            asTaken =
                    asTaken.add(
                            claim.comparison()
                                    .chosen()
                                    .map(c -> c.worth().amount())
                                    .orElse(BigDecimal.ZERO));
        }
    }

    private SwitchTable() {}

    static Table of(List<ComparedClaim> claims) {
        List<List<TableCell>> rows = new ArrayList<>();
        for (SchemeName scheme : SchemeName.values()) {
            List<ComparedClaim> wanted =
                    claims.stream().filter(c -> c.comparison().scheme() == scheme).toList();
            sums(wanted).forEach((buyer, sum) -> rows.add(row(scheme, buyer, sum, wanted.size())));
        }
        return new Table(
                "Switching",
                "What switching the whole week to one buyer would bring",
                List.of(),
                COLUMNS,
                rows,
                List.of());
    }

    private static TreeMap<String, Sum> sums(List<ComparedClaim> claims) {
        TreeMap<String, Sum> sums = new TreeMap<>();
        for (ComparedClaim claim : claims) {
            for (ComparedClaim.Line line : claim.lines()) {
                if (line.isBestOfItsBuyer()) {
                    sums.computeIfAbsent(line.quote().offer().buyer(), b -> new Sum())
                            .add(claim, line.quote());
                }
            }
        }
        return sums;
    }

    private static List<TableCell> row(SchemeName scheme, String buyer, Sum sum, long all) {
        String which =
                "[Offers:scheme],[scheme],[Offers:first],\"yes\",[Offers:buyer],"
                        + SumifsName.like(buyer, "[buyer]");
        return List.of(
                text(scheme.word()),
                text(buyer),
                derivedWhole("COUNTIFS(" + which + ")", sum.claims),
                derivedWhole("COUNTIFS([Choices:scheme],[scheme])-[claims]", all - sum.claims),
                derivedMoney("SUMIFS([Offers:worth]," + which + ")", sum.worth),
                derivedMoney("SUMIFS([Offers:as-taken]," + which + ")", sum.asTaken),
                derivedMoney("[worth]-[as-taken]", sum.worth.subtract(sum.asTaken)));
    }
}
