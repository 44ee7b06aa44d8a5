package paperbark.output.table;

import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableCell.whole;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.List;
import paperbark.finding.Severity;
import paperbark.firm.Product;
import paperbark.firm.SchemeName;
import paperbark.job.Job;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.value.Postcode;
import paperbark.value.State;

/** One row a job, in the order of the register. */
public final class JobsTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("job", "Job", 11),
                    text("status", "Status", 16),
                    text("stage", "Stage", 10),
                    text("owner", "Owner", 24),
                    text("suburb", "Suburb", 16),
                    text("state", "State", 7),
                    text("postcode", "Postcode", 10),
                    text("crew", "Crew", 10),
                    date("visit", "Visit"),
                    date("installed", "Installed"),
                    text("maker", "Maker", 13),
                    text("model", "Model", 15),
                    text("kind", "Kind", 20),
                    whole("stcs", "STCs", 7),
                    whole("veecs", "VEECs", 8),
                    whole("stops", "Stops", 8),
                    whole("checks", "Checks", 9),
                    whole("notes", "Notes", 8),
                    whole("missing", "Missing", 10),
                    text("pack", "Pack", 24));

    private JobsTable() {}

    /** The table of the batch. */
    public static Table of(BatchView view) {
        Table table =
                new Table(
                        "Jobs",
                        "Jobs",
                        List.of(
                                "Every job of the register. Held: a paper is kept back until somebody"
                                        + " acts; see the sheet Findings."),
                        COLUMNS,
                        view.cases().stream().map(JobsTable::row).toList(),
                        List.of());
        return table.withFooters(List.of(totals(table)));
    }

    private static List<TableCell> row(CaseFile file) {
        Job job = file.job();
        return List.of(
                text(job.reference()),
                text(JobStatus.of(file).word()),
                text(job.stage().word()),
                text(job.owner().name()),
                text(job.site().address().suburb()),
                text(job.site().address().state().map(State::name)),
                text(job.site().address().postcode().map(Postcode::digits)),
                text(job.visit().crew()),
                TableCell.of(Value.day(job.visit().on())),
                TableCell.of(Value.day(job.installedOn())),
                text(job.heater().makerName()),
                text(job.heater().model()),
                text(job.heater().product().map(Product::kind).map(k -> k.word())),
                whole(Claims.certificates(file, SchemeName.STC)),
                whole(Claims.certificates(file, SchemeName.VEEC)),
                whole(count(file, Severity.STOP)),
                whole(count(file, Severity.CHECK)),
                whole(count(file, Severity.NOTE)),
                whole(file.toDo().size()),
                text(file.packFile()));
    }

    private static long count(CaseFile file, Severity severity) {
        return file.findings().stream().filter(f -> f.severity() == severity).count();
    }

    private static List<TableCell> totals(Table table) {
        return table.columns().stream()
                .map(
                        column -> {
                            if (column.key().equals("job")) {
                                return text("Total");
                            }
                            return column.kind() == Kind.WHOLE
                                    ? TableCell.derivedWhole(
                                            "SUM([Jobs:" + column.key() + "])",
                                            table.sum(column.key()).longValueExact())
                                    : TableCell.BLANK;
                        })
                .toList();
    }
}
