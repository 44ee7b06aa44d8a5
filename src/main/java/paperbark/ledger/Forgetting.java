package paperbark.ledger;

import java.security.MessageDigest;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.codec.binary.Hex;
import org.apache.commons.codec.digest.DigestUtils;

/** Empties what the ledger holds of persons, within a transaction that the caller holds. */
final class Forgetting {
    private static final String FORGOTTEN =
            "EXISTS (SELECT 1 FROM forgotten f WHERE f.job_key = personal.job_key"
                    + " AND f.version = personal.version)";

    private final Sql sql;

    Forgetting(Sql sql) {
        this.sql = sql;
    }

    /** Enters that a job is forgotten, every version of it that is not yet. */
    void enter(String jobKey, LocalDate day, Instant at, String program) {
        long seq = sql.number("SELECT max(seq) FROM entry") + 1;
        sql.run(
                "INSERT INTO entry VALUES (?, 'forgetting', ?, '', '', ?, ?, ?, '', '', '')",
                seq,
                "forgetting-" + seq,
                day.toString(),
                at.toString(),
                program);
        List<Long> versions =
                sql.list(
                        "SELECT version FROM personal WHERE job_key = ? AND NOT "
                                + FORGOTTEN
                                + " ORDER BY version",
                        r -> r.getLong(1),
                        jobKey);
        versions.forEach(v -> sql.run("INSERT INTO forgotten VALUES (?, ?, ?)", seq, jobKey, v));
        empty();
        new Chain(sql).seal(seq);
    }

    /** Empties what is to be forgotten and is not empty yet. */
    void empty() {
        sql.run(
                "UPDATE personal SET "
                        + emptied(SealedTable.PERSONAL, ", ")
                        + " WHERE salt <> '' AND "
                        + FORGOTTEN);
    }

    /**
     * Proves that everything is as it was sealed, or emptied because it was forgotten.
     *
     * @param personal the table as the ledger's schema has it
     * @throws LedgerException when it is not
     */
    void prove(SealedTable personal) {
        if (sql.number(
                        "SELECT count(*) FROM personal WHERE coalesce("
                                + emptied(personal, " AND ")
                                + ", 1 = 0) <> ("
                                + FORGOTTEN
                                + ")")
                > 0) {
            throw sql.changed("what is forgotten");
        }
        MessageDigest digest = DigestUtils.getSha256Digest();
        sql.each(
                personal.saidQuery(),
                r -> {
                    byte[] said = r.getBytes(1);
                    if (said == null
                            || !Hex.encodeHexString(digest.digest(said)).equals(r.getString(2))) {
                        throw sql.changed("what is personal");
                    }
                });
    }

    private static String emptied(SealedTable personal, String between) {
        return personal.open().stream()
                .map(column -> column + " = ''")
                .collect(Collectors.joining(between));
    }
}
