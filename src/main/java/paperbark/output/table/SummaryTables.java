package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedMoney;
import static paperbark.output.table.TableCell.derivedWhole;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import paperbark.finding.Severity;
import paperbark.output.BatchView;
import paperbark.value.SchemeName;

/** The first sheet: what the batch is, its counts and totals, and money by scheme and buyer. */
public final class SummaryTables {
    private static final List<TableColumn> FACTS =
            List.of(text("what", "What", 34), text("fact", "Fact", 30));
    private static final List<TableColumn> FIGURES =
            List.of(text("what", "What", 34), whole("figure", "Figure", 30));

    private final BatchView view;
    private final BatchTables tables;

    private SummaryTables(BatchView view, BatchTables tables) {
        this.view = view;
        this.tables = tables;
    }

    /** The tables from top to bottom. */
    public static List<Table> of(BatchView view, BatchTables tables) {
        SummaryTables summary = new SummaryTables(view, tables);
        return List.of(
                summary.batch(),
                summary.totals(),
                summary.money(),
                summary.contents(),
                ByBuyerTable.of(tables),
                tables.switching());
    }

    private Table batch() {
        return new Table(
                "Batch",
                "Summary of the batch",
                List.of(),
                FACTS,
                List.of(
                        List.of(text("Firm"), text(view.firm().name())),
                        List.of(text("ABN"), text(view.firm().abn().toString())),
                        List.of(text("Register"), text(view.info().register())),
                        List.of(text("Batch"), text(view.info().id())),
                        List.of(text("Prepared on"), TableCell.day(view.info().preparedOn())),
                        List.of(text("Prepared by"), text("Paperbark " + view.info().program()))),
                List.of());
    }

    private Table totals() {
        List<List<TableCell>> rows = new ArrayList<>();
        rows.add(
                List.of(
                        text("Jobs"),
                        derivedWhole("COUNTA([Jobs:job])", tables.jobs().rows().size())));
        for (JobStatus status : JobStatus.values()) {
            rows.add(counted("Jobs " + status.word(), tables.jobs(), "status", status.word()));
        }
        for (SchemeName scheme : SchemeName.values()) {
            rows.add(certificates(scheme, false));
            rows.add(certificates(scheme, true));
        }
        for (Severity severity : List.of(Severity.STOP, Severity.CHECK, Severity.NOTE)) {
            rows.add(
                    counted(
                            "Findings: " + severity.word(),
                            tables.findings(),
                            "severity",
                            severity.word()));
        }
        return new Table("Counts", "Counts", List.of(), FIGURES, rows, List.of());
    }

    private static List<TableCell> counted(String label, Table table, String key, String word) {
        String formula = "COUNTIF([" + table.name() + ":" + key + "],\"" + word + "\")";
        return List.of(text(label), derivedWhole(formula, table.count(key, word)));
    }

    private List<TableCell> certificates(SchemeName scheme, boolean heldOnly) {
        Table table = tables.certificates();
        Predicate<List<TableCell>> wanted = shows(table, "scheme", scheme.word());
        String formula =
                "SUMIFS([Certificates:certificates],[Certificates:scheme],\""
                        + scheme.word()
                        + "\"";
        if (heldOnly) {
            wanted = wanted.and(shows(table, "held", "yes"));
            formula += ",[Certificates:held],\"yes\"";
        }
        return List.of(
                text(scheme.word() + (heldOnly ? "s of these held" : "s")),
                derivedWhole(formula + ")", table.sum("certificates", wanted).longValueExact()));
    }

    private Table money() {
        Table expected = tables.expected();
        List<List<TableCell>> rows = new ArrayList<>();
        rows.add(sum("Expected from buyers, gross", "Expected", "gross", expected));
        rows.add(sum("Buyers' fees", "Expected", "fee", expected));
        rows.add(sum("Expected from buyers, net", "Expected", "net", expected));
        rows.add(sum("Of this to owners", "Expected", "to-owner", expected));
        rows.add(sum("Of this to the firm", "Expected", "to-firm", expected));
        rows.add(
                List.of(
                        text("The firm's part held"),
                        derivedMoney(
                                "SUMIFS([Expected:to-firm],[Expected:held],\"yes\")",
                                expected.sum("to-firm", shows(expected, "held", "yes"))
                                        .setScale(2))));
        rows.addAll(offers());
        rows.addAll(gst());
        return new Table("Money", "Money", notRegistered(), FIGURES, rows, List.of());
    }

    private List<List<TableCell>> gst() {
        Table gst = tables.gst();
        BigDecimal byJob = Totals.said(gst, "gst");
        // With one rate for all jobs the total can be worked out the other way too.
        OptionalInt divisor = GstTotals.divisor(view);
        BigDecimal ofTotal =
                divisor.isPresent()
                        ? GstTotals.onTotal(Totals.said(gst, "full"), divisor.getAsInt())
                        : byJob;
        String formula =
                divisor.isPresent()
                        ? "ROUND(SUM([Gst:full])/" + divisor.getAsInt() + ",2)"
                        : "SUM([Gst:gst])";
        return List.of(
                sum("Full price of all priced jobs", "Gst", "full", gst),
                sum("Assigned by owners", "Gst", "assigned", gst),
                sum("Payable by owners", "Gst", "payable", gst),
                sum("GST, job by job", "Gst", "gst", gst),
                List.of(text("GST, worked out on the total"), derivedMoney(formula, ofTotal)),
                List.of(
                        text("Difference from rounding"),
                        derivedMoney(
                                "ROUND(SUM([Gst:gst])-" + formula + ",2)",
                                byJob.subtract(ofTotal))),
                sum("GST on buyers' pay beyond discounts", "Gst", "more-gst", gst),
                sum("Credit, with owners' tax invoices", "Gst", "credit", gst));
    }

    private List<List<TableCell>> offers() {
        return List.of(
                sum("Taken less runner-up, all claims", "Choices", "difference", tables.choices()),
                sum("Cost of fixed choices and policy", "Choices", "cost", tables.choices()),
                sum("Spread, best less last offer", "Choices", "spread", tables.choices()));
    }

    private List<String> notRegistered() {
        return view.firm().gstRegistered()
                ? List.of()
                : List.of("The firm is not registered for GST.");
    }

    private static List<TableCell> sum(String label, String name, String key, Table table) {
        return List.of(
                text(label),
                derivedMoney("SUM([" + name + ":" + key + "])", Totals.said(table, key)));
    }

    private Table contents() {
        List<List<TableCell>> rows =
                tables.inOrder().stream()
                        .map(
                                table ->
                                        List.of(
                                                text(table.title())
                                                        .linkedTo(
                                                                Optional.of(
                                                                        "'"
                                                                                + table.title()
                                                                                + "'!A1")),
                                                TableCell.whole(table.rows().size())))
                        .toList();
        return new Table(
                "Contents",
                "The other sheets",
                List.of(),
                List.of(text("sheet", "Sheet", 34), whole("rows", "Rows", 30)),
                rows,
                List.of());
    }

    private static Predicate<List<TableCell>> shows(Table table, String key, String word) {
        return row -> table.value(row, key).shown().equals(word);
    }
}
