package paperbark.output.table;

import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.Deadline;
import paperbark.value.Days;

/** Every closing date of the batch, the nearest first. */
public final class DeadlinesTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    date("last-day", "Last day"),
                    whole("days-left", "Days left", 13),
                    text("what", "What", 44),
                    text("job", "Job", 13),
                    text("owner", "Owner", 30),
                    text("suburb", "Suburb", 22));

    /**
     * A closing date with its job.
     *
     * @param file the job
     * @param deadline the closing date
     */
    public record Due(CaseFile file, Deadline deadline) {}

    private DeadlinesTable() {}

    /** The closing dates of the batch, the nearest first. */
    public static List<Due> due(BatchView view) {
        return view.cases().stream()
                .flatMap(file -> file.deadlines().stream().map(d -> new Due(file, d)))
                .sorted(Comparator.comparing(d -> d.deadline().lastDay()))
                .toList();
    }

    /** The table of the batch. */
    public static Table of(BatchView view) {
        LocalDate today = view.info().preparedOn();
        return new Table(
                "ClosingDates",
                "Closing dates",
                List.of(
                        "Days left count from "
                                + Days.show(today)
                                + ", the day of this run. A number below zero is past."),
                COLUMNS,
                MadeRows.of(due(view), d -> row(d, today)),
                List.of());
    }

    /** A day as formulas write it. */
    static String formula(LocalDate day) {
        return "DATE(%d,%d,%d)".formatted(day.getYear(), day.getMonthValue(), day.getDayOfMonth());
    }

    private static List<TableCell> row(Due due, LocalDate today) {
        Deadline deadline = due.deadline();
        return List.of(
                TableCell.day(deadline.lastDay()),
                TableCell.derivedWhole("[last-day]-" + formula(today), deadline.daysLeft()),
                text(deadline.what()),
                text(due.file().job().reference()),
                text(due.file().job().owner().names()),
                text(due.file().job().site().address().suburb()));
    }
}
