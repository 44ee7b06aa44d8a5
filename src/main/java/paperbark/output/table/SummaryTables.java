package paperbark.output.table;

import static paperbark.output.table.TableCell.derivedWhole;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
        List<Table> all = new ArrayList<>();
        all.add(summary.batch());
        all.add(summary.totals());
        all.addAll(MoneyTables.of(view, tables));
        all.add(summary.contents());
        all.add(ByBuyerTable.of(tables));
        all.add(tables.switching());
        return all;
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
        GroupedSums<String> jobs = GroupedSums.byWord(tables.jobs(), "status");
        for (JobStatus status : JobStatus.values()) {
            rows.add(counted("Jobs ", "[Jobs:status]", status.word(), jobs));
        }
        for (SchemeName scheme : SchemeName.values()) {
            rows.add(certificates(scheme, false));
            rows.add(certificates(scheme, true));
        }
        GroupedSums<String> findings = GroupedSums.byWord(tables.findings(), "severity");
        for (Severity severity : List.of(Severity.STOP, Severity.CHECK, Severity.NOTE)) {
            rows.add(counted("Findings: ", "[Findings:severity]", severity.word(), findings));
        }
        return new Table("Counts", "Counts", List.of(), FIGURES, rows, List.of());
    }

    private static List<TableCell> counted(
            String label, String column, String word, GroupedSums<String> groups) {
        String formula = "COUNTIF(" + column + ",\"" + word + "\")";
        return List.of(text(label + word), derivedWhole(formula, groups.rows(word)));
    }

    private List<TableCell> certificates(SchemeName scheme, boolean held) {
        return List.of(
                text(scheme.word() + (held ? "s held" : "s")),
                derivedWhole(
                        ClaimFacts.sumOfCertificates(scheme, held),
                        ClaimFacts.certificates(tables.certificates(), scheme, held)));
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
}
