package paperbark.ledger;

import java.util.List;
import java.util.StringJoiner;
import org.apache.commons.codec.digest.DigestUtils;

/** The digests that entries are sealed with, worked out from what the entries tell. */
final class Seals {
    private static final String FIELD = "\u001f";

    private Seals() {}

    /**
     * The seal before the first entry is the office's own, so that no other ledger's entries fit.
     */
    static String beginning(LedgerId office) {
        return DigestUtils.sha256Hex(line(List.of(office.id(), office.madeAt())));
    }

    /** The digest over the rows of an entry, by the tables of its schema. */
    static String rows(EntryRecord entry) {
        // A command proves every row of the ledger before the machine has warmed to it.
        StringJoiner tables = new StringJoiner("\n\n");
        for (SealedTable table : SealedTable.of(entry.schema())) {
            StringJoiner rows = new StringJoiner("\n");
            for (List<String> row : entry.rows(table)) {
                rows.add(line(table.covered(row)));
            }
            tables.add(rows.toString());
        }
        return DigestUtils.sha256Hex(tables.toString());
    }

    /** The seal of an entry, upon the one before it. */
    static String of(EntryRecord entry) {
        return DigestUtils.sha256Hex(
                entry.before()
                        + "\n"
                        + line(
                                List.of(
                                        String.valueOf(entry.seq()),
                                        entry.kind(),
                                        entry.name(),
                                        entry.sourceName(),
                                        entry.sourceSha256(),
                                        entry.day(),
                                        entry.at(),
                                        entry.program(),
                                        entry.detailSha256(),
                                        entry.rowsSha256())));
    }

    private static String line(List<String> cells) {
        StringBuilder line = new StringBuilder();
        for (String cell : cells) {
            line.append(cell).append(FIELD);
        }
        return line.toString();
    }
}
