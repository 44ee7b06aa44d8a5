package paperbark.output.table;

import java.util.List;
import java.util.Optional;
import paperbark.output.BatchView;

/**
 * All tables of a batch.
 *
 * @param jobs one row a job
 * @param certificates one row a job and scheme
 * @param choices one row a claim with its offers compared
 * @param offers one row an offer that a claim can take
 * @param switching one row a scheme and buyer
 * @param weeks one row a week with money due
 * @param expected one row a claim with an offer
 * @param gst one row a job with a price
 * @param quarters one row a quarter and kind of job
 * @param closingDates one row a closing date
 * @param received one row a claim that the ledger knows
 * @param debtors one row a buyer who owes
 * @param findings one row a finding
 * @param rules one row a rule row used
 * @param reading how to read the others
 */
public record BatchTables(
        Table jobs,
        Table certificates,
        Table choices,
        Table offers,
        Table switching,
        Table weeks,
        Table expected,
        Table gst,
        Table quarters,
        Table closingDates,
        Table received,
        Table debtors,
        Table findings,
        Table rules,
        Table reading) {

    /** The tables of the batch. */
    public static BatchTables of(BatchView view) {
        List<ComparedClaim> claims = ComparedClaim.of(view);
        Table gst = GstTable.of(view);
        Table received = ReceivedTable.of(view);
        return new BatchTables(
                JobsTable.of(view),
                CertificatesTable.of(view),
                ChoicesTable.of(claims),
                EveryOfferTable.of(view, claims),
                SwitchTable.of(claims),
                WeeksTable.of(view),
                ExpectedTable.of(view),
                gst,
                QuartersTable.of(gst),
                DeadlinesTable.of(view),
                received,
                DebtorsTable.of(view, received),
                FindingsTable.of(view.findings(), finding -> Optional.empty()),
                RulesTable.of(view),
                ReadingTable.of());
    }

    /** Those with a sheet of their own, from left to right. */
    public List<Table> inOrder() {
        return List.of(
                jobs,
                certificates,
                choices,
                offers,
                weeks,
                expected,
                gst,
                quarters,
                closingDates,
                received,
                debtors,
                findings,
                rules,
                reading);
    }
}
