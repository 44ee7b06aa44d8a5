package paperbark.ledger;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * All that an entry added to the ledger, as it was written there, so that the ledger can be made
 * anew from its entries.
 *
 * @param schema that of the ledger, from 1
 * @param seq its place in the order of work, from 1
 * @param kind batch, advice, forgetting or withdrawal
 * @param name of the batch, advice, forgetting or withdrawal
 * @param sourceName file name of the register or advice
 * @param sourceSha256 its hash
 * @param day day of the run
 * @param at moment of the run
 * @param program version of the program
 * @param detailSha256 hash of the batch's manifest; empty text for other entries, and while the
 *     manifest is not written yet
 * @param before the seal that this entry is sealed upon
 * @param rowsSha256 digest over the rows
 * @param rows the rows by table, each cell as text
 */
@RecordBuilder
public record EntryRecord(
        int schema,
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

    /** Keeps the rows from being changed; entries of the first schema did not name it. */
    public EntryRecord {
        schema = Math.max(1, schema);
        rows = Map.copyOf(rows);
    }

    /** The same entry with its manifest. */
    public EntryRecord withDetail(String sha256) {
        return EntryRecordBuilder.builder(this).detailSha256(sha256).build();
    }

    /** The same entry with the seal that it is sealed upon. */
    EntryRecord sealedUpon(String seal) {
        return EntryRecordBuilder.builder(this).before(seal).build();
    }

    /** Whether an earlier program wrote it. */
    public boolean hasOlderSchema() {
        return schema < Schema.VERSION;
    }

    /** The rows of a table; none where the entry's schema has no such table. */
    List<List<String>> rows(SealedTable table) {
        return rows.getOrDefault(table.name(), List.of());
    }

    /** Whether another adds the same rows after the same entries. */
    boolean addsTheSame(EntryRecord other) {
        return covered("").equals(other.covered(""));
    }

    /** Without what may be emptied, which the seals do not need. */
    private EntryRecord covered(String detail) {
        Map<String, List<List<String>>> covered = new TreeMap<>();
        for (SealedTable table : SealedTable.of(schema)) {
            covered.put(table.name(), rows(table).stream().map(table::covered).toList());
        }
        return EntryRecordBuilder.builder(this).detailSha256(detail).rows(covered).build();
    }

    /**
     * This entry and the same one found elsewhere as one: in the newer schema, and with everything
     * emptied that is empty in either.
     *
     * @return empty when they do not tell the same
     */
    public Optional<EntryRecord> merged(EntryRecord other) {
        if (schema != other.schema) {
            EntryRecord newer = schema > other.schema ? this : other;
            EntryRecord lifted = OlderEntry.lifted(schema > other.schema ? other : this, newer);
            // Its seals were made anew when the ledger was lifted.
            return newer.merged(
                    EntryRecordBuilder.builder(lifted)
                            .schema(newer.schema)
                            .before(newer.before)
                            .rowsSha256(newer.rowsSha256)
                            .build());
        }
        if (!covered(detailSha256).equals(other.covered(other.detailSha256))) {
            return Optional.empty();
        }
        SealedTable personal = SealedTable.personal(schema);
        boolean emptied = rows(personal).stream().anyMatch(personal::isEmptied);
        return Optional.of(emptied ? this : other);
    }
}
