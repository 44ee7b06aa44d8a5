package paperbark.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.stream.Collectors;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Seals each entry with a digest over all its rows and the seal before it, so that a changed,
 * missing or added row is found. The database's own check finds torn pages, not changed values.
 */
final class Chain {
    private static final String FIELD = "\u001f";

    private final Sql sql;

    Chain(Sql sql) {
        this.sql = sql;
    }

    /** Seals the newest entry, whose rows are all there. */
    void seal(long seq) {
        String rows = rows(seq);
        sql.run("UPDATE entry SET rows_sha256 = ? WHERE seq = ?", rows, seq);
        sql.run("UPDATE entry SET chain_sha256 = ? WHERE seq = ?", link(seq, before(seq)), seq);
    }

    /** The seal that an entry is sealed upon. */
    String before(long seq) {
        return sql.first(
                        "SELECT chain_sha256 FROM entry WHERE seq = ?",
                        r -> r.getString(1),
                        seq - 1)
                .orElseGet(this::beginning);
    }

    /**
     * Recomputes every seal.
     *
     * @throws LedgerException naming the first entry that is not as it was written
     */
    void verify() {
        String before = beginning();
        long expected = 1;
        record Seal(long seq, String name, String rows, String chain) {}
        for (Seal seal :
                sql.list(
                        "SELECT seq, name, rows_sha256, chain_sha256 FROM entry ORDER BY seq",
                        r ->
                                new Seal(
                                        r.getLong(1),
                                        r.getString(2),
                                        r.getString(3),
                                        r.getString(4)))) {
            if (seal.seq() != expected
                    || !rows(seal.seq()).equals(seal.rows())
                    || !link(seal.seq(), before).equals(seal.chain())) {
                throw changed(seal.name());
            }
            before = seal.chain();
            expected++;
        }
        long strays =
                sql.number(
                        "SELECT count(*) FROM claim c LEFT JOIN withdrawal w ON w.claim = c.id"
                                + " WHERE (c.active = 1) = (w.claim IS NOT NULL)");
        strays +=
                sql.number(
                        "SELECT count(*) FROM serial s JOIN claim c ON c.id = s.claim"
                                + " WHERE s.active <> c.active");
        strays +=
                sql.number(
                        "SELECT count(*) FROM entry e LEFT JOIN progress p ON p.entry = e.seq"
                                + " WHERE (e.kind = 'batch') = (p.entry IS NULL)");
        if (strays > 0) {
            throw changed("what is active");
        }
    }

    /**
     * The seal before the first entry is the office's own, so that no other ledger's entries fit.
     */
    private String beginning() {
        return sql.first("SELECT id, made_at FROM office", Chain::line)
                .map(DigestUtils::sha256Hex)
                .orElseThrow(() -> changed("office"));
    }

    private LedgerException changed(String where) {
        return new LedgerException(
                "The ledger is not as it was written, at \"" + where + "\".", sql.remedy());
    }

    private String link(long seq, String before) {
        String entry =
                sql.first(
                                "SELECT seq, kind, name, source_name, source_sha256, day, at, program,"
                                        + " detail_sha256, rows_sha256 FROM entry WHERE seq = ?",
                                Chain::line,
                                seq)
                        .orElseThrow();
        return DigestUtils.sha256Hex(before + "\n" + entry);
    }

    private String rows(long seq) {
        String all =
                SealedTable.ALL.stream()
                        .map(
                                table ->
                                        sql.list(table.query(), Chain::line, seq).stream()
                                                .collect(Collectors.joining("\n")))
                        .collect(Collectors.joining("\n\n"));
        return DigestUtils.sha256Hex(all);
    }

    private static String line(ResultSet row) throws SQLException {
        StringBuilder line = new StringBuilder();
        for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
            line.append(row.getString(i)).append(FIELD);
        }
        return line.toString();
    }
}
