package paperbark.output.table;

import java.util.List;
import java.util.Optional;
import paperbark.output.BatchView;

/**
 * All tables of a batch.
 *
 * @param jobs one row a job
 * @param certificates one row a job and scheme
 * @param expected one row a claim with an offer
 * @param gst one row a job with a price
 * @param closingDates one row a closing date
 * @param findings one row a finding
 * @param rules one row a rule row used
 * @param reading how to read the others
 */
public record BatchTables(
        Table jobs,
        Table certificates,
        Table expected,
        Table gst,
        Table closingDates,
        Table findings,
        Table rules,
        Table reading) {

    /** The tables of the batch. */
    public static BatchTables of(BatchView view) {
        return new BatchTables(
                JobsTable.of(view),
                CertificatesTable.of(view),
                ExpectedTable.of(view),
                GstTable.of(view),
                DeadlinesTable.of(view),
                FindingsTable.of(view.findings(), finding -> Optional.empty()),
                RulesTable.of(view),
                ReadingTable.of());
    }

    /** From left to right as the sheets lie in a workbook. */
    public List<Table> inOrder() {
        return List.of(jobs, certificates, expected, gst, closingDates, findings, rules, reading);
    }
}
