package paperbark.output.table;

import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableCell.whole;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.finding.Severity;
import paperbark.job.Job;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.value.SchemeName;

/** One row a job, in the order of the register. */
public final class JobsTable {
    private static final List<TableColumn> COLUMNS =
            Stream.of(
                            Stream.of(
                                    text("job", "Job", 11),
                                    text("status", "Status", 13),
                                    text("stage", "Stage", 11),
                                    text("owner", "Owner", 22),
                                    text("place", "Place", 20),
                                    text("crew", "Crew", 9),
                                    date("visit", "Visit"),
                                    date("installed", "Installed"),
                                    text("heater", "Heater", 21)),
                            Arrays.stream(SchemeName.values()).map(JobsTable::certificates),
                            Stream.of(
                                    whole("stops", "Stops", 9),
                                    whole("checks", "Checks", 10),
                                    whole("notes", "Notes", 9),
                                    whole("missing", "Missing", 10),
                                    text("pack", "Pack", 23),
                                    text("signed", "Signed papers", 30)))
                    .flatMap(columns -> columns)
                    .toList();

    private JobsTable() {}

    /** The table of the batch. */
    public static Table of(BatchView view) {
        Table table =
                new Table(
                        "Jobs",
                        "Jobs",
                        List.of(
                                "Every job of the register"
                                        + cancelled(view.cancelled())
                                        + ". Held: a paper is kept back until somebody"
                                        + " acts; see the sheet Findings. Certificates of held claims"
                                        + " are not counted here; they stand on the sheet Certificates."),
                        COLUMNS,
                        MadeRows.of(view.cases(), JobsTable::row),
                        List.of());
        return Totals.of(
                table,
                COLUMNS.stream()
                        .filter(c -> c.kind() == Kind.WHOLE)
                        .map(TableColumn::key)
                        .collect(Collectors.toSet()));
    }

    private static String cancelled(long count) {
        return count == 0 ? "" : " but the " + count + " cancelled, which the sheet Findings names";
    }

    private static List<TableCell> row(CaseFile file) {
        Job job = file.job();
        List<TableCell> cells = new ArrayList<>();
        Collections.addAll(
                cells,
                text(job.reference()),
                text(JobStatus.of(file).word()),
                text(job.stage().word()),
                text(job.owner().names()),
                text(job.site().address().locality()),
                text(job.visit().crew()),
                TableCell.of(Value.day(job.visit().on())),
                TableCell.of(Value.day(job.installedOn())),
                text(heater(job)));
        for (SchemeName scheme : SchemeName.values()) {
            cells.add(whole(ClaimFacts.certificates(file, scheme)));
        }
        Collections.addAll(
                cells,
                whole(count(file, Severity.STOP)),
                whole(count(file, Severity.CHECK)),
                whole(count(file, Severity.NOTE)),
                whole(file.toDo().size()),
                text(file.packFile()),
                text(signed(file)));
        return cells;
    }

    private static String signed(CaseFile file) {
        return file.papers().stream()
                .filter(p -> !p.signing().isEmpty())
                .map(p -> p.title() + ": " + p.signing())
                .collect(Collectors.joining("; "));
    }

    private static TableColumn certificates(SchemeName scheme) {
        return whole(scheme.key() + "s", scheme.word() + "s", scheme.word().length() + 5);
    }

    private static String heater(Job job) {
        return Stream.of(job.heater().makerName(), job.heater().model())
                .flatMap(Optional::stream)
                .collect(Collectors.joining(" "));
    }

    private static long count(CaseFile file, Severity severity) {
        return file.findings().stream().filter(f -> f.severity() == severity).count();
    }
}
