package paperbark.output;

import java.util.ArrayList;
import java.util.List;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.firm.Firm;

/**
 * All that a page or workbook about a whole batch may know.
 *
 * @param info what all papers share
 * @param firm the installing firm
 * @param cases the jobs in the order of the register
 * @param findings every finding of the batch in reading order, those about files and tables too
 * @param rules every rule row used, each once
 * @param receivables what the ledger says of claims; empty where there is none
 */
public record BatchView(
        BatchInfo info,
        Firm firm,
        List<CaseFile> cases,
        List<Finding> findings,
        List<RuleRef> rules,
        List<Receivable> receivables) {

    /** How many jobs of the register are cancelled, and so have no case. */
    public long cancelled() {
        return cancelled(findings);
    }

    /** How many jobs are cancelled by these findings of a register. */
    public static int cancelled(List<Finding> findings) {
        return count(findings, FindingCode.JOB_CANCELLED);
    }

    private static int count(List<Finding> findings, FindingCode code) {
        return (int) findings.stream().filter(f -> f.code() == code).count();
    }

    /** How many rows of the register were taken for no job. */
    public long leftOut() {
        return leftOut(findings);
    }

    /** How many rows were taken for no job by these findings of a register. */
    public static int leftOut(List<Finding> findings) {
        return count(findings, FindingCode.ROW_NO_JOB);
    }

    /** The same batch with what was noticed since. */
    public BatchView with(List<Finding> more) {
        List<Finding> all = new ArrayList<>(findings);
        all.addAll(more);
        return more.isEmpty()
                ? this
                : new BatchView(info, firm, cases, Finding.inOrder(all), rules, receivables);
    }

    /** Keeps the lists from being changed. */
    public BatchView {
        cases = List.copyOf(cases);
        findings = List.copyOf(findings);
        rules = List.copyOf(rules);
        receivables = List.copyOf(receivables);
    }
}
