package paperbark.sheet;

import java.util.Optional;
import paperbark.finding.FindingCode;

/**
 * Something wrong with a cell, not yet a finding because only the owner of the column knows whether
 * it matters. Fact and remedy never repeat what a cell holds: it may be an account number, and the
 * owner of the column knows that too.
 *
 * @param code what kind of problem
 * @param fact what is wrong, one sentence
 * @param remedy what to do, one sentence; empty only for a note
 * @param seen the value to show beside them, where it is not the cell's own text
 */
public record CellTrouble(FindingCode code, String fact, String remedy, Optional<String> seen) {

    /** A trouble beside which the cell's own text is shown. */
    public CellTrouble(FindingCode code, String fact, String remedy) {
        this(code, fact, remedy, Optional.empty());
    }
}
