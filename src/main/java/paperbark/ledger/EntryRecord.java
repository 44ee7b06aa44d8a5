package paperbark.ledger;

import java.util.List;
import java.util.Map;

/**
 * All that an entry added to the ledger, as it was written there, so that the ledger can be made
 * anew from its entries.
 *
 * @param seq its place in the order of work, from 1
 * @param kind batch or advice
 * @param name of the batch or advice
 * @param sourceName file name of the register or advice
 * @param sourceSha256 its hash
 * @param day day of the run
 * @param at moment of the run
 * @param program version of the program
 * @param detailSha256 hash of the batch's manifest; empty text for an advice, and while the
 *     manifest is not written yet
 * @param before the seal that this entry is sealed upon
 * @param rowsSha256 digest over the rows
 * @param rows the rows by table, each cell as text
 */
public record EntryRecord(
        long seq,
        String kind,
        String name,
        String sourceName,
        String sourceSha256,
        String day,
        String at,
        String program,
        String detailSha256,
        String before,
        String rowsSha256,
        Map<String, List<List<String>>> rows) {

    /** Keeps the rows from being changed. */
    public EntryRecord {
        rows = Map.copyOf(rows);
    }

    /** The same entry with its manifest. */
    public EntryRecord withDetail(String sha256) {
        return new EntryRecord(
                seq,
                kind,
                name,
                sourceName,
                sourceSha256,
                day,
                at,
                program,
                sha256,
                before,
                rowsSha256,
                rows);
    }

    /** Whether another adds the same rows after the same entries. */
    boolean addsTheSame(EntryRecord other) {
        return withDetail("").equals(other.withDetail(""));
    }
}
