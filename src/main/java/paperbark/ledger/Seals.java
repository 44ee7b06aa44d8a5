package paperbark.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.List;
import java.util.stream.Collectors;
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
        RowsDigest digest = new RowsDigest();
        for (SealedTable table : SealedTable.of(entry.schema())) {
            digest.table();
            for (List<String> row : entry.rows(table)) {
                digest.row(line(table.covered(row)).getBytes(UTF_8));
            }
        }
        return digest.hex();
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

    /**
     * The words that let the database join cells as {@link #line} does, which takes a fraction of
     * the time of asking for each cell. A cell without a value leaves the whole row without one.
     */
    static String joined(List<String> columns) {
        return columns.stream()
                .map(column -> column + " || '" + FIELD + "'")
                .collect(Collectors.joining(" || "));
    }

    private static String line(List<String> cells) {
        StringBuilder line = new StringBuilder();
        for (String cell : cells) {
            line.append(cell).append(FIELD);
        }
        return line.toString();
    }
}
