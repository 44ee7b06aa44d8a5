package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.offer.OwnerPrice;
import paperbark.output.BatchView;
import paperbark.value.Rounding;

/** The totals of GST, reconciled both ways: from the jobs to the total, and from the total back. */
final class GstTotals {
    /** Why the two ways of working out the total differ by cents. */
    static final String CENTS =
            "Rounding difference: the GST of each job is rounded to the cent, half a cent up (GST Act"
                    + " s 9-90), so that the jobs added up may differ from the total rounded once by"
                    + " as much as half a cent a job. What the tax invoices say is the jobs' sum.";

    private GstTotals() {}

    /** One rate for all jobs, without which the total cannot be worked out on its own. */
    static OptionalInt divisor(BatchView view) {
        Set<Integer> divisors =
                view.cases().stream()
                        .flatMap(c -> c.price().stream())
                        .map(OwnerPrice::gstDivisor)
                        .collect(Collectors.toSet());
        return view.firm().gstRegistered() && divisors.size() == 1
                ? OptionalInt.of(divisors.iterator().next())
                : OptionalInt.empty();
    }

    /** GST worked out on the sum of all prices. */
    static BigDecimal onTotal(BigDecimal full, int divisor) {
        return full.divide(BigDecimal.valueOf(divisor), 2, Rounding.GST_ACT.mode());
    }

    static List<List<TableCell>> of(Table table, BatchView view) {
        List<List<TableCell>> rows = new ArrayList<>();
        Table total = Totals.ofMoney(table);
        rows.addAll(total.footers());
        GroupedSums<String> sums = byKind(table);
        for (SaleState kind : SaleState.values()) {
            if (sums.rows(kind.word()) > 0) {
                rows.add(ofKind(table, sums, kind));
            }
        }
        divisor(view).ifPresent(divisor -> rows.addAll(onTotal(table, total, divisor)));
        rows.add(
                row(
                        table,
                        "Full price less parts",
                        Map.of(
                                "full",
                                derivedMoney(
                                        "ROUND(SUM([Gst:full])-SUM([Gst:without])-SUM([Gst:gst]),2)",
                                        Totals.said(total, "full")
                                                .subtract(Totals.said(total, "without"))
                                                .subtract(Totals.said(total, "gst"))))));
        return rows;
    }

    /** The sum of all prices taken as one, and what that differs by from the jobs. */
    private static List<List<TableCell>> onTotal(Table table, Table total, int divisor) {
        List<List<TableCell>> rows = new ArrayList<>();
        BigDecimal full = Totals.said(total, "full");
        BigDecimal byJob = Totals.said(total, "gst");
        BigDecimal onTotal = onTotal(full, divisor);
        String formula = "ROUND(SUM([Gst:full])/" + divisor + ",2)";
        rows.add(
                row(
                        table,
                        "Worked out on the total",
                        Map.of(
                                "full", derivedMoney("SUM([Gst:full])", full),
                                "gst", derivedMoney(formula, onTotal),
                                "without",
                                        derivedMoney(
                                                "SUM([Gst:full])-" + formula,
                                                full.subtract(onTotal)))));
        rows.add(
                row(
                        table,
                        "Rounding difference",
                        Map.of(
                                "gst",
                                        derivedMoney(
                                                "ROUND(SUM([Gst:gst])-" + formula + ",2)",
                                                byJob.subtract(onTotal)),
                                "without",
                                        derivedMoney(
                                                "ROUND(SUM([Gst:without])-SUM([Gst:full])+"
                                                        + formula
                                                        + ",2)",
                                                onTotal.subtract(byJob)))));
        return rows;
    }

    private static List<TableCell> ofKind(Table table, GroupedSums<String> byKind, SaleState kind) {
        Map<String, TableCell> sums = new HashMap<>();
        for (TableColumn column : table.columns()) {
            if (column.kind() == Kind.MONEY) {
                sums.put(column.key(), sum(byKind, column.key(), kind));
            }
        }
        return row(table, "Of these " + kind.word(), sums);
    }

    /** The sums of the GST table, apart for each kind of jobs. */
    static GroupedSums<String> byKind(Table table) {
        return GroupedSums.byWord(table, "counted");
    }

    /** The sum of a column over the jobs of a kind. */
    static TableCell sum(GroupedSums<String> byKind, String key, SaleState kind) {
        return derivedMoney(
                "SUMIFS([Gst:%s],[Gst:counted],\"%s\")".formatted(key, kind.word()),
                byKind.sum(kind.word(), key));
    }

    private static List<TableCell> row(Table table, String label, Map<String, TableCell> cells) {
        return table.columns().stream()
                .map(
                        c ->
                                c.key().equals("job")
                                        ? text(label)
                                        : cells.getOrDefault(c.key(), TableCell.BLANK))
                .toList();
    }
}
