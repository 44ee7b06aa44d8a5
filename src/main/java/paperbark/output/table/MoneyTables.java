package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.money;
import static paperbark.output.table.TableColumn.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import paperbark.offer.Standing;
import paperbark.output.BatchView;

/** The money blocks of the first sheet, which add up down and across. */
final class MoneyTables {
    private static final TableColumn WHAT = text("what", "What", 34);
    private static final List<Standing> COUNTING = List.of(Standing.DUE, Standing.BOOKED);

    private final BatchView view;
    private final BatchTables tables;
    private final GroupedSums<String> byStanding;
    private final GroupedSums<String> byKind;

    private MoneyTables(BatchView view, BatchTables tables) {
        this.view = view;
        this.tables = tables;
        byStanding = GroupedSums.byWord(tables.expected(), "standing");
        byKind = GstTotals.byKind(tables.gst());
    }

    static List<Table> of(BatchView view, BatchTables tables) {
        MoneyTables money = new MoneyTables(view, tables);
        return List.of(money.claims(), money.sales(), money.offers());
    }

    private Table claims() {
        List<List<TableCell>> rows = new ArrayList<>();
        rows.add(claims("Certificates at the offers' prices", "gross"));
        rows.add(claims("Less buyers' fees", "fee"));
        rows.add(claims("GST on top", "gst"));
        rows.add(paid());
        rows.add(claims("Of this to owners", "to-owner"));
        rows.add(claims("Of this GST on top, nobody's yet", "top-left"));
        rows.add(claims("Of this to the firm", "to-firm"));
        return new Table(
                "Money",
                "Money from buyers",
                List.of(
                        "Prices less fees and with GST on top are what buyers pay; owners, GST that is"
                                + " nobody's yet and the firm together have all of it.",
                        ClaimFacts.ON_TOP),
                List.of(
                        WHAT,
                        money("due", "Due, installed"),
                        money("booked", "Booked"),
                        money("all", "Together"),
                        money("held", "Held, apart")),
                rows,
                List.of());
    }

    private List<TableCell> claims(String label, String key) {
        return row(label, which -> "SUMIFS([Expected:" + key + "]," + which + ")", s -> of(key, s));
    }

    private List<TableCell> paid() {
        return row(
                "Buyers pay in all",
                which ->
                        "SUMIFS([Expected:gross],%1$s)-SUMIFS([Expected:fee],%1$s)+SUMIFS([Expected:gst],%1$s)"
                                .formatted(which),
                s -> of("gross", s).subtract(of("fee", s)).add(of("gst", s)));
    }

    private BigDecimal of(String key, Standing standing) {
        return byStanding.sum(standing.word(), key);
    }

    /** A line with a sum for each way in which claims stand. */
    private static List<TableCell> row(
            String label, UnaryOperator<String> formula, Function<Standing, BigDecimal> sum) {
        Function<Standing, TableCell> cell =
                s ->
                        derivedMoney(
                                formula.apply("[Expected:standing],\"" + s.word() + "\""),
                                sum.apply(s));
        List<TableCell> cells = new ArrayList<>();
        cells.add(text(label));
        COUNTING.forEach(s -> cells.add(cell.apply(s)));
        cells.add(
                derivedMoney(
                        "[due]+[booked]",
                        COUNTING.stream().map(sum).reduce(BigDecimal.ZERO, BigDecimal::add)));
        cells.add(cell.apply(Standing.HELD));
        return cells;
    }

    private Table sales() {
        List<List<TableCell>> rows = new ArrayList<>();
        rows.add(sales("Full price of all priced jobs", "full"));
        rows.add(sales("Less assigned by owners", "assigned"));
        rows.add(sales("Payable by owners", "payable"));
        rows.add(sales("GST, job by job", "gst"));
        rows.addAll(rounding());
        rows.add(sales("GST on buyers' pay beyond discounts", "more-gst"));
        rows.add(sales("Credit, with owners' tax invoices", "credit"));
        List<TableColumn> columns = new ArrayList<>();
        columns.add(WHAT);
        for (SaleState kind : SaleState.values()) {
            columns.add(money(key(kind), heading(kind)));
        }
        columns.add(money("all", "All jobs"));
        return new Table(
                "Sales",
                "Sales and GST",
                view.firm().gstRegistered()
                        ? List.of(GstTotals.CENTS)
                        : List.of("The firm is not registered for GST."),
                columns,
                rows,
                List.of());
    }

    private static String key(SaleState kind) {
        return "as-" + (char) ('a' + kind.ordinal());
    }

    private static String heading(SaleState kind) {
        return Character.toUpperCase(kind.word().charAt(0)) + kind.word().substring(1);
    }

    private List<TableCell> sales(String label, String key) {
        Table gst = tables.gst();
        List<TableCell> cells = new ArrayList<>();
        cells.add(text(label));
        for (SaleState kind : SaleState.values()) {
            cells.add(GstTotals.sum(byKind, key, kind));
        }
        cells.add(derivedMoney("SUM([Gst:" + key + "])", Totals.said(gst, key)));
        return cells;
    }

    /** With one rate for all jobs the total can be worked out the other way too. */
    private List<List<TableCell>> rounding() {
        OptionalInt divisor = GstTotals.divisor(view);
        if (divisor.isEmpty()) {
            return List.of();
        }
        Table gst = tables.gst();
        BigDecimal ofTotal = GstTotals.onTotal(Totals.said(gst, "full"), divisor.getAsInt());
        String formula = "ROUND(SUM([Gst:full])/" + divisor.getAsInt() + ",2)";
        return List.of(
                together("GST, worked out on the total", derivedMoney(formula, ofTotal)),
                together(
                        "Difference from rounding",
                        derivedMoney(
                                "ROUND(SUM([Gst:gst])-" + formula + ",2)",
                                Totals.said(gst, "gst").subtract(ofTotal))));
    }

    private static List<TableCell> together(String label, TableCell all) {
        List<TableCell> cells = new ArrayList<>();
        cells.add(text(label));
        for (int i = 0; i < SaleState.values().length; i++) {
            cells.add(TableCell.BLANK);
        }
        cells.add(all);
        return cells;
    }

    private Table offers() {
        return new Table(
                "Gains",
                "What the choice of offers brings",
                List.of(),
                List.of(WHAT, money("figure", "Figure")),
                List.of(
                        gain("Taken less runner-up, all claims", "difference"),
                        gain("Cost of fixed choices and policy", "cost"),
                        gain("Spread, best less last offer", "spread")),
                List.of());
    }

    private List<TableCell> gain(String label, String key) {
        return List.of(
                text(label),
                derivedMoney("SUM([Choices:" + key + "])", Totals.said(tables.choices(), key)));
    }
}
